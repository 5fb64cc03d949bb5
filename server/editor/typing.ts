import type { Clock } from './clock.ts';

/** A change so soon after the one before it is typing, ms. A lone change is told of at once, whatever it costs. */
const TYPING = 250;

/** Which files are being typed in. */
export interface Typing {
  /** A file was changed now. */
  changed(uri: string): void;
  /** Its last change came soon after the one before. */
  isGoingOn(uri: string): boolean;
  forget(uri: string): void;
}

export function createTyping(clock: Clock): Typing {
  const changes = new Map<string, { readonly at: number; readonly isTyping: boolean }>();
  return {
    changed(uri) {
      const at = clock.now();
      const before = changes.get(uri)?.at ?? Number.NEGATIVE_INFINITY;
      changes.set(uri, { at, isTyping: at - before < TYPING });
    },
    isGoingOn: uri => changes.get(uri)?.isTyping ?? false,
    forget: uri => void changes.delete(uri),
  };
}
