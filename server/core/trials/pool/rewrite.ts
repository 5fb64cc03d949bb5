import { isRange } from '../../../../schema/forms.ts';
import type { Path } from '../../../../schema/path.ts';
import type { Pair, Quantity, Range } from '../../../../schema/quantity.ts';
import type { BoatSource } from '../../boat/source.ts';
import type { Change } from '../../findings/finding.ts';
import type { Input } from '../../uncertainty/input.ts';
import { toleranced } from '../../wording/toleranced.ts';

/** A figure of the file as it is and as it shall be. */
export interface Rewritten {
  readonly change: Change;
  readonly was: string;
  readonly is: string;
}

/** What an input shall be. */
export interface Wanted {
  readonly input: Input;
  readonly value: number;
  /** How exactly it is known then, SI: as many digits are written. */
  readonly sigma: number;
}

/**
 * The edit that gives an input another value, in the unit and way in which it is written; a range moves as a whole. Its
 * tolerance stays: what the trials add to it is not in the figure alone, and is counted from the trials. An offset that was
 * taken for granted is written down, and a density that was the handbook's, with the uncertainty that it had. Null for what is no
 * single figure of one entry, such as a drawn form.
 */
export function rewrite(source: BoatSource, { input, value, sigma }: Wanted): Rewritten | null {
  const { target, path, entry, places, dimension } = input;
  const [at, ...others] = target.on === 'entries' ? target.at : [];
  if (!at || others.length > 0 || places.length !== 1) return null;
  const one = source[at.list][at.index];
  if (!one || one.entry.path.join(' ') !== entry.join(' ')) return null;
  const { units } = source.boat;
  const text = (values: readonly number[], uncertainty: number, unit: string | null) =>
    toleranced(values, uncertainty, dimension, unit, units);
  const added = (key: string, was: string, unit: string): Rewritten => {
    const is = text([value], input.sigma, unit);
    return { change: { kind: 'add-key', path: entry, key, text: is }, was, is: untold(is) };
  };
  if (input.origin === 'handbook') return added('density', untold(text([input.value], input.sigma, 'kg/m3')), 'kg/m3');
  const keys = path.slice(entry.length);
  const written = figureAt(one.checked, keys);
  if (written === undefined) {
    return keys.length === 1 && keys[0] === 'offset' ? added('offset', 'on the centreline', units.length) : null;
  }
  const by = value - input.value;
  const values = isFigure(written) ? valuesOf(written, String(keys.at(-1)), input) : null;
  if (!values || !isFigure(written)) return null;
  const { unit } = written;
  const show = (figures: readonly number[], uncertainty: number | null) =>
    uncertainty === null ? untold(text(figures, sigma, unit)) : text(figures, uncertainty, unit);
  const moved = values.map(figure => figure + by);
  return {
    change: { kind: 'replace', place: { on: 'value', path }, text: show(moved, written.sigma) },
    was: show(values, null),
    is: show(moved, null),
  };
}

/** The figures that stand there; null for sizes that differ and for the length of a range. */
function valuesOf(written: Quantity | Range | Pair, key: string, input: Input): readonly number[] | null {
  if ('first' in written) return written.first === written.second ? [written.first] : null;
  if (!isRange(written)) return [written.value];
  return input.noun === key ? [written.from, written.to] : null;
}

/** Without its tolerance. */
const untold = (text: string): string => text.replace(/ ±.*$/, '');

function figureAt(checked: unknown, keys: Path): unknown {
  let at: unknown = checked;
  for (const key of keys) {
    if (typeof at !== 'object' || at === null) return null;
    at = (at as Readonly<Record<string | number, unknown>>)[key];
  }
  return at;
}

const isFigure = (written: unknown): written is Quantity | Range | Pair =>
  typeof written === 'object' && written !== null && 'sigma' in written && 'unit' in written;
