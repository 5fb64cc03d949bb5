import { textLines } from '../helpers/boatText.ts';

/* Boats as people write them, and what a keystroke does to them. */

/** The same boat with its parts as block entries, a key a line. */
export const inBlocks = (text: string): string =>
  text.replace(
    /^ {2}- \{ (name: (?:dry part|lead|foam|rod|lump) .*) \}$/gm,
    (_, fields: string) => `  - ${fields.replaceAll(', ', '\n    ')}`,
  );

/** The same with every part in the dry cylinder, as most entries of a boat are: they weigh and displace nothing. */
export const inside = (text: string): string =>
  inBlocks(text).replace(
    /^( {2}- name: \w+(?: part)? \d+\n(?: {4}(?:mass): .*\n)?)(?: {4}.*\n)*/gm,
    (_, lead: string) =>
      textLines([
        lead.trimEnd(),
        ...(lead.includes('mass') ? [] : ['    mass: 3.5 g']),
        ...['    station: 430 mm', '    height: 40 mm', '    in: dry cylinder'],
      ]),
  );

/** The text and the text with one more digit in the mass in its middle. */
export function versionsOf(text: string): readonly [string, string] {
  const masses = [...text.matchAll(/mass: [\d.]*(?= g)/g)];
  const { 0: said, index } = masses[masses.length >> 1]!;
  const end = index + said.length;
  return [text, `${text.slice(0, end)}${said.includes('.') ? '' : '.'}1${text.slice(end)}`];
}
