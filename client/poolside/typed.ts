/** Figures as fingers type and tap them: pure functions. */

/** A figure as it is typed: "88", "88,5", "2 1/4", "-1.5"; null for what is none. */
export function typedFigure(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  const decimal = /^-?(?:\d+(?:\.\d*)?|\.\d+)$/.exec(plain);
  if (decimal) return Number(plain);
  const [, sign, whole, top, bottom] = /^(-?)(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(plain) ?? [];
  if (top === undefined || Number(bottom) === 0) return null;
  const size = Number(whole ?? 0) + Number(top) / Number(bottom);
  return sign === '-' ? -size : size;
}

/** A figure as it is shown: inches by the sixteenth where it lies on one. */
export function shownFigure(size: number, unit: string): string {
  const sixteenths = Math.round(size * 16);
  if (unit !== 'in' || Math.abs(size * 16 - sixteenths) > 1e-6) return String(Number(size.toFixed(4)));
  const [whole, rest] = [Math.floor(sixteenths / 16), sixteenths % 16];
  const part =
    rest % 8 === 0
      ? `${rest / 8}/2`
      : rest % 4 === 0
        ? `${rest / 4}/4`
        : rest % 2 === 0
          ? `${rest / 2}/8`
          : `${rest}/16`;
  return [...(whole > 0 || rest === 0 ? [whole] : []), ...(rest > 0 ? [part] : [])].join(' ');
}

export interface Stepper {
  readonly step: number;
  readonly most: number | null;
}

/** The next figure on a step, up or down, never below nothing; the first tap begins at what is expected. */
export function stepped(size: number | null, expected: number | null, by: 1 | -1, { step, most }: Stepper): number {
  if (size === null) return Math.min(expected ?? 0, most ?? Number.POSITIVE_INFINITY);
  const steps = size / step;
  const next = by > 0 ? Math.floor(steps + 1e-6) + 1 : Math.ceil(steps - 1e-6) - 1;
  return Number(Math.min(Math.max(next * step, 0), most ?? Number.POSITIVE_INFINITY).toFixed(4));
}
