/** Keeps the day on the phone, so that nothing is lost when it sleeps or the page is closed. */
import type { PoolDay } from '../../server/core/poolside/day.ts';

/** What is used of the browser's storage. */
export interface Drawer {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

interface KeptDay {
  readonly day: PoolDay;
  /** When it was last changed, ms: of two the later one counts. */
  readonly at: number;
}

export interface Keeper {
  /** The day as it was left; null for none. */
  readonly kept: () => KeptDay | null;
  /** False where the browser keeps nothing once the page is closed. */
  readonly keep: (kept: KeptDay) => boolean;
}

/**
 * Keeps the day in two drawers: `lasting`, which outlives the page, and `passing`, which is at hand when the page is loaded
 * anew. (A busy browser was seen to load a page anew before what it had just put into its local storage was there.) Both may
 * throw: a browser may forbid a page to keep anything. A day belongs to a boat of this name and text.
 */
export function createKeeper(lasting: () => Drawer, passing: () => Drawer, name: string, text: string): Keeper {
  const key = `trimwright poolside ${name} ${fingerprint(text)}`;
  const found = (open: () => Drawer): KeptDay | null => {
    try {
      const kept: unknown = JSON.parse(open().getItem(key) ?? 'null');
      return isKept(kept) ? kept : null;
    } catch {
      return null;
    }
  };
  const put = (open: () => Drawer, value: string): boolean => {
    try {
      open().setItem(key, value);
      return true;
    } catch {
      return false;
    }
  };
  return {
    kept() {
      const [one, other] = [found(lasting), found(passing)];
      return one && other ? (one.at >= other.at ? one : other) : (one ?? other);
    },
    keep(kept) {
      const value = JSON.stringify(kept);
      put(passing, value);
      return put(lasting, value);
    },
  };
}

/** What is used of the history of the page's window. */
interface Pages {
  readonly state: unknown;
  replaceState(state: unknown, unused: string): void;
}

/** The page's own entry in the history of its window: written at once, gone with the window. */
export const historyDrawer = (history: Pages): Drawer => ({
  getItem(key) {
    const { state } = history;
    const value = typeof state === 'object' && state !== null && key in state ? state[key as keyof typeof state] : null;
    return typeof value === 'string' ? value : null;
  },
  setItem: (key, value) => history.replaceState({ [key]: value }, ''),
});

/** FNV-1a in 32 bits (Fowler, Noll and Vo; from memory): tells one text from another, and no more is asked. */
function fingerprint(text: string): string {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return sum.toString(16);
}

const isKept = (kept: unknown): kept is KeptDay =>
  typeof kept === 'object' &&
  kept !== null &&
  'at' in kept &&
  typeof kept.at === 'number' &&
  'day' in kept &&
  isDay(kept.day);

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
