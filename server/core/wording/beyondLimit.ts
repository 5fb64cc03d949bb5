/** Digits added at most: beyond them a figure and its limit are the same on any tape or scale. */
const MOST_FINER = 4;

/**
 * A figure that breaks its limit, with as many digits as it takes to read so: not "0.5° bow up, limit 0.5°" but
 * "0.53° bow up". `show` writes the figure with digits added, `limit` is the limit as written beside it.
 */
export function beyondLimit(show: (finer: number) => string, limit: string, way: 'over' | 'under' = 'over'): string {
  for (let finer = 0; finer < MOST_FINER; finer++) {
    const figure = show(finer);
    if (readsBeyond(figure, limit, way)) return figure;
  }
  return show(MOST_FINER);
}

/** Compares what is written, not what is meant; figures in different units need no more digits. */
function readsBeyond(figure: string, limit: string, way: 'over' | 'under'): boolean {
  const [shown, bound] = [sizeOf(figure), sizeOf(limit)];
  if (Number.isNaN(shown)) return false;
  return unitOf(figure) !== unitOf(limit) || (way === 'over' ? shown > bound : shown < bound);
}

/** The number that a text begins with: "1.5 mm", "3 1/16 in", and of pounds with ounces the ounces in all. */
function sizeOf(text: string): number {
  const [, pounds, rest] = /^([\d.]+) lb(?: ([\d.]+) oz)?/.exec(text) ?? [];
  if (pounds !== undefined) return Number(pounds) * 16 + Number(rest ?? 0);
  const [, whole, top, bottom] = /^(?:(\d+) )?(\d+)\/(\d+)/.exec(text) ?? [];
  return top === undefined ? Number.parseFloat(text) : Number(whole ?? 0) + Number(top) / Number(bottom);
}

const unitOf = (text: string): string => /^[-\d./ ]+(lb|\S*)/.exec(text)?.[1]?.replace('lb', 'oz') ?? '';
