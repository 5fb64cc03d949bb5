/** A name from the file as Markdown text: it must not start links, tables or markup of its own. */
export const escapedMarkdown = (text: string): string =>
  text.replace(/[\\`*_{}[\]()#+\-.!|<>~&]/g, '\\$&').replace(/\s+/g, ' ');

/** A Markdown table; the first row is its head. */
export function table(rows: readonly (readonly string[])[]): string {
  const [head, ...body] = rows;
  if (!head) return '';
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, i) => (i === 0 ? ':--' : '--:'))), ...body.map(line)].join('\n');
}
