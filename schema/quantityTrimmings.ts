import { bad, type Read, type SlipSpan } from './slip.ts';
import { dimensionOf } from './units.ts';

/** What builders write around a figure and the file has no place for: the figure itself is offered, every digit kept. */

const QUOTED = /^\s*[“”„«»‘’‚`](.*?)[“”„«»‘’`]\s*$/u;
const BEFORE =
  /^\s*(?:(?:(?:about|approx(?:imately)?\.?|circa|ca\.?|roughly|around|nearly|from|between|is|diam(?:eter)?\.?|dia\.?|od)\b\.?|[~≈=:ø⌀]|[cd]\.?(?=\s*\d))\s*)+(?=[-−+.\d½¼¾⅓⅔⅛⅜⅝⅞])/iu;
/** Of a text with single spaces. */
const BETWEEN = /^between (.+?) and (.+)$/is;
const MINUS = /^\s*minus\s+(?=[.\d½¼¾⅓⅔⅛⅜⅝⅞])/i;
const UNIT_FIRST = /^\s*([a-z°%"″]+)\s*([\d.]+(?:\s+\d+\/\d+)?|\d+\/\d+)\s*$/i;

/** Something before the figure or around it that is no part of it; null where there is nothing of the kind. */
export function faultOfTrimmings(text: string): Read<never> | null {
  const whole = { start: 0, end: text.length };
  const quoted = QUOTED.exec(text);
  if (quoted) return bad(`A figure stands without quotes: ${quoted[1]!.trim()}.`, whole, quoted[1]!.trim());
  const minus = MINUS.exec(text);
  if (minus) return alone(`-${text.slice(minus[0].length)}`);
  const between = BETWEEN.exec(text.trim().replace(/\s+/g, ' '));
  if (between) return alone(`${between[1]} to ${between[2]}`);
  const before = BEFORE.exec(text);
  if (before) return alone(text.slice(before[0].length));
  const [, unit, number] = UNIT_FIRST.exec(text) ?? [];
  if (unit !== undefined && dimensionOf(unit) !== null) return alone(`${number} ${unit}`);
  return null;

  function alone(figure: string): Read<never> {
    const right = figure.trim();
    return bad(`Write the figure by itself: ${right}. How sure it is goes behind it, as in 310 g ± 5 g.`, whole, right);
  }
}

/** Words that change what a figure says: they are never left away. */
const MEANING =
  /port|starb|left|right|\bup\b|down|below|above|under|over|ahead|forward|behind|before|after|half|radius|quarter|each|per\b|every|times|pair|both|minus|neg|thousand|hundred|dozen|\bto\b|plus|and|or\b/i;

/** What is left behind a figure: where it changes nothing of it, the figure alone is offered. */
export function faultOfRest(text: string, rest: SlipSpan, lastUnit: string | null, example: string): Read<never> {
  const said = text.slice(rest.start, text.trimEnd().length);
  const first = /^\S+/.exec(said)?.[0] ?? said;
  const isOtherUnit =
    dimensionOf(first) !== null && !/^["”’']$/.test(first) && first.toLowerCase() !== lastUnit?.toLowerCase();
  const figure = text.slice(0, rest.start).trim();
  if (/\d/.test(said) || isOtherUnit || MEANING.test(said))
    return bad(`“${first}” is not understood here. Write it like ${example}.`, {
      start: rest.start,
      end: rest.start + first.length,
    });
  return bad(
    `“${said}” is not understood here. Write the figure by itself: ${figure}. Words go into a “note”, or behind a #.`,
    { start: rest.start, end: rest.start + said.length },
    '',
  );
}
