/** Edits after which no more memory may be wanted than by then, but for a tenth. */
const SETTLED = 10_000;
const WINDOW = 500;

/** Watches the memory while edits go on: the least of each few hundred edits, after garbage is collected where Node lets us. */
export interface MemoryWatch {
  /** After each edit. */
  look(edits: number): void;
  /** The memory by the settled edit and the most after it, MB; null where it did not come so far. */
  growth(): { readonly settled: number; readonly most: number } | null;
}

export function watchMemory(): MemoryWatch {
  const windows: number[] = [];
  return {
    look(edits) {
      if (edits % 50 !== 0) return;
      // Only with `node --expose-gc`.
      globalThis.gc?.();
      const now = process.memoryUsage().heapUsed / 1024 / 1024;
      const i = Math.floor(edits / WINDOW);
      windows[i] = Math.min(windows[i] ?? now, now);
    },
    growth() {
      const at = SETTLED / WINDOW;
      if (windows.length <= at + 1) return null;
      return { settled: windows[at]!, most: Math.max(...windows.slice(at + 1)) };
    },
  };
}
