/** Keeps the day on the phone, so that nothing is lost when it sleeps or the page is closed. */
import type { PoolDay } from '../../server/core/poolside/day.ts';

/** What is used of the browser's storage. */
export interface Drawer {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

export interface Keeper {
  /** The day as it was left; null for none. */
  readonly kept: () => PoolDay | null;
  /** False where the browser keeps nothing. */
  readonly keep: (day: PoolDay) => boolean;
}

/** `open` may throw: a browser may forbid a page to keep anything. A day belongs to a boat of this name and text. */
export function createKeeper(open: () => Drawer, name: string, text: string): Keeper {
  const key = `trimwright poolside ${name} ${fingerprint(text)}`;
  return {
    kept() {
      try {
        const day: unknown = JSON.parse(open().getItem(key) ?? 'null');
        return isDay(day) ? day : null;
      } catch {
        return null;
      }
    },
    keep(day) {
      try {
        open().setItem(key, JSON.stringify(day));
        return true;
      } catch {
        return false;
      }
    },
  };
}

/** FNV-1a in 32 bits (Fowler, Noll and Vo; from memory): tells one text from another, and no more is asked. */
function fingerprint(text: string): string {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return sum.toString(16);
}

/** Written by this page, or an older one. */
const isDay = (day: unknown): day is PoolDay =>
  typeof day === 'object' &&
  day !== null &&
  'aboard' in day &&
  Array.isArray(day.aboard) &&
  'closed' in day &&
  Array.isArray(day.closed) &&
  'open' in day &&
  typeof day.open === 'object' &&
  day.open !== null &&
  'surfaced' in day.open &&
  'submerged' in day.open;
