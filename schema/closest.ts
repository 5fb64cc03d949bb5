/**
 * The candidate that `word` was most likely meant to be, or null when none is near. Case does not count; one slip is
 * forgiven in a word of two to four letters, two up to seven, three beyond. Of equally near ones the first wins.
 */
export function closest(word: string, candidates: readonly string[]): string | null {
  const wanted = fold(word);
  let best: string | null = null;
  let least = slipsForgiven(wanted.length) + 1;
  for (const candidate of candidates) {
    const folded = fold(candidate);
    // A letter too many or too few is a slip each.
    if (Math.abs(folded.length - wanted.length) >= least) continue;
    const slips = slipsBetween(wanted, folded);
    if (slips < least) {
      best = candidate;
      least = slips;
    }
  }
  return best;
}

const fold = (word: string): string => word.trim().toLowerCase().replace(/\s+/g, ' ');

const slipsForgiven = (length: number): number => (length < 2 ? 0 : length < 5 ? 1 : length < 8 ? 2 : 3);

/** Letters added, left out, changed or swapped with their neighbour between two words (optimal string alignment). */
export function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let fewest = Math.min(changed, last[j]! + 1, row[j - 1]! + 1);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (isSwap) fewest = Math.min(fewest, beforeLast[j - 2]! + 1);
      row.push(fewest);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
