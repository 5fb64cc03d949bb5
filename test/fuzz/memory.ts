import { getHeapCodeStatistics } from 'node:v8';

/**
 * Edits after which no more memory may be wanted than by then, but for a tenth. What is held goes by the boats at hand, up and
 * down by nearly as much: so many edits are averaged.
 */
const SETTLED = 10_000;
const WINDOW = 500;
/** Edits between two looks. */
const LOOK = 50;

/** MB. */
interface Memory {
  /** What the program holds: the heap but for what the machine has translated of the program itself. */
  readonly held: number;
  /** That, which grows for long: the faster half of it is made only of what has run often, in the end of nearly all. */
  readonly code: number;
  /** All that the system has given to the process. */
  readonly resident: number;
}

/** Watches the memory while edits go on: the least of each few hundred edits, after garbage is collected where Node lets us. */
export interface MemoryWatch {
  /** After each edit. */
  look(edits: number): void;
  /** The memory in the stretch after the settled edit, and in the later one that wanted most; null where it did not come so far. */
  growth(): { readonly settled: Memory; readonly most: Memory } | null;
}

export function watchMemory(): MemoryWatch {
  const windows: Memory[] = [];
  return {
    look(edits) {
      if (edits % LOOK !== 0) return;
      // Only with `node --expose-gc`.
      globalThis.gc?.();
      const now = memoryNow();
      const i = Math.floor(edits / WINDOW);
      windows[i] = each(Math.min, windows[i] ?? now, now);
    },
    growth() {
      const size = SETTLED / WINDOW;
      const whole = Math.floor(windows.length / size);
      const stretches = Array.from({ length: whole }, (_, i) => mean(windows.slice(i * size, (i + 1) * size)));
      const [, settled, ...later] = stretches;
      if (!settled || later.length === 0) return null;
      return { settled, most: later.reduce((one, other) => each(Math.max, one, other)) };
    },
  };
}

export function memoryNow(): Memory {
  const megabytes = (bytes: number): number => bytes / 1024 / 1024;
  const { heapUsed, rss } = process.memoryUsage();
  const code = getHeapCodeStatistics().code_and_metadata_size;
  return { held: megabytes(heapUsed - code), code: megabytes(code), resident: megabytes(rss) };
}

const each = (choose: (a: number, b: number) => number, one: Memory, other: Memory): Memory => ({
  held: choose(one.held, other.held),
  code: choose(one.code, other.code),
  resident: choose(one.resident, other.resident),
});

function mean(windows: readonly Memory[]): Memory {
  const sum = windows.reduce((one, other) => each((a, b) => a + b, one, other));
  return each(a => a / windows.length, sum, sum);
}
