/** A boat text, and the offset of the caret `|` in it. */
export interface BoatText {
  readonly text: string;
  readonly caret: number;
}

/**
 * A boat text written in a test: the indentation that the test's own lines share is taken off, the first line break too,
 * and one `|` marks the caret; `||` stands for a `|` of the text.
 */
export function boat(strings: TemplateStringsArray, ...values: readonly (string | number)[]): BoatText {
  const marked = boatText(strings, ...values).replaceAll('||', '\u0000');
  const caret = marked.indexOf('|');
  const text = marked.replace('|', '').replaceAll('\u0000', '|');
  return { text, caret: caret < 0 ? text.length : caret };
}

/** A boat text without a caret. What is put in keeps its own indentation. */
export function boatText(strings: TemplateStringsArray, ...values: readonly (string | number)[]): string {
  const [first = '', ...others] = dedent(strings.join(HOLE)).split(HOLE);
  return first + others.map((piece, i) => values[i] + piece).join('');
}

/** Stands for what is put in, while the lines around it are looked at. */
const HOLE = '\u0001';

function dedent(raw: string): string {
  const lines = raw.replace(/^\n/, '').split('\n');
  const depths = lines.filter(line => line.trim() !== '').map(line => /^ */.exec(line)![0].length);
  const depth = depths.length > 0 ? Math.min(...depths) : 0;
  return lines.map((line, i) => (i === lines.length - 1 && line.trim() === '' ? '' : line.slice(depth))).join('\n');
}

/** Lines of a text, each with its end. */
export const textLines = (lines: readonly string[]): string => lines.map(line => `${line}\n`).join('');
