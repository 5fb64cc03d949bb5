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
  const raw = strings.reduce((all, piece, i) => all + piece + (values[i] ?? ''), '');
  const marked = dedent(raw.replaceAll('||', '\u0000'));
  const caret = marked.indexOf('|');
  const text = marked.replace('|', '').replaceAll('\u0000', '|');
  return { text, caret: caret < 0 ? text.length : caret };
}

/** A boat text without a caret. */
export const boatText = (strings: TemplateStringsArray, ...values: readonly (string | number)[]): string =>
  dedent(strings.reduce((all, piece, i) => all + piece + (values[i] ?? ''), ''));

function dedent(raw: string): string {
  const lines = raw.replace(/^\n/, '').split('\n');
  const depths = lines.filter(line => line.trim() !== '').map(line => /^ */.exec(line)![0].length);
  const depth = depths.length > 0 ? Math.min(...depths) : 0;
  return lines.map((line, i) => (i === lines.length - 1 && line.trim() === '' ? '' : line.slice(depth))).join('\n');
}
