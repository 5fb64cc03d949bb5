/** Widths of characters in ems, generous for the sans-serif faces of screens and printers; no fonts are at hand here. */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[ijlI.,:;'’|!]/, 0.31],
  [/[ ftr()[\]/-]/, 0.4],
  [/[mwMW@%]/, 0.95],
  [/[A-Z&]/, 0.74],
  [/[\u0020-\u024f]/, 0.6],
];
/** Other scripts and pictures. */
const WIDEST = 1.1;

/** About how long a text is in type of a `size` (same unit). */
export function textWidth(words: string, size: number): number {
  let ems = 0;
  for (const character of words) ems += WIDTHS.find(([like]) => like.test(character))?.[1] ?? WIDEST;
  return ems * size;
}

/** The text cut to about `most` characters, with an ellipsis. */
export function shortened(words: string, most: number): string {
  const characters = [...words];
  return characters.length <= most
    ? words
    : `${characters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}
