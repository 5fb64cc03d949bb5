import type { Wanted } from './quantityExamples.ts';
import type { Meant } from './quantityMeaning.ts';
import { bad, good, type Read, type Slip } from './slip.ts';

/** A length of the prototype: “67.1 m full size”. */
const FULL_SIZE = /\bfull[\s-]?size$/i;

/** What stands before “full size”, and whether that stood there. The text before keeps its places. */
export function withoutFullSize(text: string): { readonly text: string; readonly isFullSize: boolean } {
  const said = FULL_SIZE.exec(text.trimEnd());
  return { text: said ? text.slice(0, said.index).trimEnd() : text, isFullSize: said !== null };
}

/** The same length on the model. */
export function onModel(meant: Meant, text: string, { dimension, units }: Wanted): Read<Meant> {
  const whole = { start: 0, end: text.length };
  if (dimension !== 'length') return bad('Only a length can be given in full size.', whole);
  if (meant.unit === null) {
    return bad('A length in full size needs its unit, such as “67.1 m full size” or “220 ft full size”.', whole);
  }
  const { scale } = units;
  if (scale === undefined || scale === null) return noScale;
  // From here on it is a length of the model, in the file's own unit.
  return good({
    values: meant.values.map(value => value * scale),
    sigma: meant.sigma === null ? null : meant.sigma * scale,
    unit: null,
    guessed: null,
  });
}

const slip: Slip = {
  message:
    'A length in full size is divided by the scale of the model, and the file does not say it: add “scale: 1:72”.',
  start: 0,
  end: 0,
  lacks: 'scale',
};
const noScale: Read<never> = { ok: false, slip };
