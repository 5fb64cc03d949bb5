/** A stretch of something of which only the scale is open: normal about its middle. */
export interface ScaleStretch {
  readonly middle: number;
  readonly sigma: number;
}

/**
 * A quantity that is as likely between 1 and 2 as between 10 and 20 (Jeffreys's prior for a scale, cut off at both ends; from
 * memory), as normal pieces of equal share, each two standard deviations from the next: they add up to a curve that is even
 * within 2 %.
 */
export function scaleLike(least: number, most: number, ratio: number): readonly ScaleStretch[] {
  const count = Math.max(1, Math.ceil(Math.log(most / least) / Math.log(ratio)));
  const step = (most / least) ** (1 / count);
  return Array.from({ length: count }, (_, i) => {
    const middle = least * step ** (i + 0.5);
    return { middle, sigma: (middle * (step - 1)) / 2 };
  });
}
