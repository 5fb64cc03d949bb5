import { type Counted, countedAt } from '../../../schema/places.ts';
import type { FileUnits } from '../../../schema/units.ts';
import { freeName } from '../../core/boat/arrangement.ts';
import type { Bounds } from '../../core/geometry/cut/solids.ts';
import { quoteScalar } from '../../core/text/reading/quoteScalar.ts';
import { massText, tapeText } from '../../core/wording/numbers.ts';

/** A whole list entry to fill in, in the syntax of editor snippets. */
export interface EntrySnippet {
  readonly label: string;
  readonly detail: string;
  /** As keys below each other, the first one without indentation. */
  block(indent: string): string;
  /** Between braces on one line. */
  readonly flow: string;
}

/** The boat that an entry is for: its figures are written as its own are. */
export interface SnippetBoat {
  readonly units: FileUnits;
  /** Of the hull, m; zero where it has none yet. */
  readonly length: number;
  /** The name of the compartment that a new thing most likely lies in. */
  readonly compartment: string;
  /** What has a name already. */
  readonly named: readonly { readonly name: string }[];
  /** Where among its neighbours a new thing may lie, m, boat axes; null where that is not known, or there is no room. */
  readonly free: (lies: Lies, wanted: Bounds) => Bounds | null;
  /** Where the one that is written now shall lie. */
  readonly place?: Bounds | null;
}

/** How a new thing lies in a boat of 900 mm. */
export interface Lies {
  readonly kind: 'compartment' | 'tank' | 'part' | 'bay';
  readonly isInside: boolean;
  readonly station: string;
  readonly height: string;
  /** Half its breadth, and half its height where the above tells the middle alone, m; zero where they are not told. */
  readonly half: readonly [breadth: number, height: number];
  readonly isFitted?: boolean;
}

/** A field of an entry, as it stands in a boat. */
export type Field = readonly [key: string, stop: (of: SnippetBoat) => string];

/** A place to type in, with what could stand there, given for a boat of 900 mm in mm and g. */
export const stop =
  (number: number, text: string, counted: Counted | null = null) =>
  (of: SnippetBoat): string =>
    `\${${number}:${escaped(ownFigure(text, of, counted))}}`;
/** How thick a round thing is in the room that it has. */
export const diameter =
  (number: number, text: string) =>
  (of: SnippetBoat): string =>
    of.place ? `\${${number}:${tapeText(of.place.to[2] - of.place.from[2], of.units)}}` : stop(number, text)(of);
/** A name that nothing in the boat has yet. */
export const named =
  (name: string) =>
  (of: SnippetBoat): string =>
    `\${1:${escaped(freeName(name, of.named))}}`;
export const fixed = (text: string) => (): string => text;
const LENGTH_MEANT = 0.9;

const FIGURE = /^(-?[\d.]+)(?:( to | x )(-?[\d.]+))? (mm|g)$/;

/** A figure in the units of a boat; a place that is free in it, or at the same share of its length, as the file counts. */
export function ownFigure(text: string, of: SnippetBoat, counted: Counted | null): string {
  const { units, compartment } = of;
  if (text === COMPARTMENT) return quoteScalar(compartment, true);
  const [, first, joint, second, unit] = FIGURE.exec(text) ?? [];
  if (first === undefined) return text;
  const written = (value: number): string => (unit === 'g' ? massText(value, units) : tapeText(value, units));
  const places = counted && endsOf(text, of, counted).map(place => countedAt(place, counted, units));
  const ends = places ?? [Number(first) / 1000, Number(second ?? first) / 1000];
  if (joint === undefined) return written((ends[0]! + ends[1]!) / 2);
  const [a, b] = joint === ' to ' ? [Math.min(...ends), Math.max(...ends)] : [ends[0]!, ends[1]!];
  return `${written(a).replace(/ [^ \d]+$/, '')}${joint}${written(b)}`;
}

/** Both ends of a station or a height, m, boat axes. */
function endsOf(text: string, { length, place }: SnippetBoat, counted: Counted): readonly [number, number] {
  const axis = counted === 'station' ? 0 : 2;
  if (place) return [place.from[axis], place.to[axis]];
  const by = counted === 'station' && length > 0 ? length / LENGTH_MEANT : 1;
  const [, first, , second] = FIGURE.exec(text) ?? [];
  return [(Number(first) / 1000) * by, (Number(second ?? first) / 1000) * by];
}

/** The room that a thing would take if it lay as it does in the example. */
function wantedRoom({ station, height, half: [half, up] }: Lies, of: SnippetBoat): Bounds {
  const [fore, aft] = endsOf(station, of, 'station');
  const [low, high] = endsOf(height, of, 'height');
  return { from: [fore, -half, low - up], to: [aft, half, high + up] };
}

/** Stands for the name of a compartment. */
export const COMPARTMENT = 'COMPARTMENT';
export const choiceOf = (number: number, words: readonly string[]) => (): string =>
  `\${${number}|${words.map(word => escaped(word).replace(/[,|]/g, '\\$&')).join(',')}|}`;
const escaped = (text: string): string => text.replace(/[\\$}]/g, '\\$&');

/** Keys between braces, and one thing between brackets. */
export const braces =
  (fields: readonly Field[]) =>
  (of: SnippetBoat): string =>
    `{ ${fields.map(([key, text]) => `${key}: ${text(of)}`).join(', ')} }`;
export const brackets =
  (item: Field[1]) =>
  (of: SnippetBoat): string =>
    `[${item(of)}]`;

export const entry =
  (label: string, detail: string, fields: readonly Field[], lies?: Lies) =>
  (boat: SnippetBoat): EntrySnippet => {
    const of = lies ? { ...boat, place: boat.free(lies, wantedRoom(lies, boat)) } : boat;
    const lines = fields.map(([key, text]) => `${key}: ${text(of)}`);
    return { label, detail, block: indent => lines.join(`\n${indent}`), flow: `{ ${lines.join(', ')} }` };
  };

export type EntryMaker = ReturnType<typeof entry>;

/** A thing that lies somewhere: its keys, then its place among its neighbours, then the rest. */
export const lying = (
  label: string,
  detail: string,
  lies: Lies,
  {
    before,
    from,
    after = [],
  }: { readonly before: readonly Field[]; readonly from: number; readonly after?: readonly Field[] },
): EntryMaker =>
  entry(
    label,
    detail,
    [
      ...before,
      ['station', stop(from, lies.station, 'station')],
      ['height', stop(from + 1, lies.height, 'height')],
      ...after,
    ],
    lies,
  );

/** A reading at two stations, fore and aft. */
export const pairAt =
  (key: string, ...ends: readonly (readonly [number: number, station: string])[]) =>
  (of: SnippetBoat): string =>
    `[${ends.map(([at, station]) => `{ station: ${stop(at, station, 'station')(of)}, ${key}: $${at + 1} }`).join(', ')}]`;
