import { verdictWord } from '../judges/standings.ts';

/** One figure of the report: its name, its value, and how it stands to its limit where it has one. */
export interface Row {
  readonly name: string;
  readonly value: string;
  readonly limit?: string;
  readonly isKept?: boolean;
  /** The limit lies so near, for the uncertainty of the figure, that the boat may be on its other side. */
  readonly isOpen?: boolean;
}

/** Colours for a terminal, or none. */
export interface Paint {
  readonly heading: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
}

export const plainPaint: Paint = { heading: text => text, good: text => text, bad: text => text };

/** A block of figures under its heading, in columns; nothing for no figures. */
export function rowSection(name: string, rows: readonly Row[], paint: Paint): string {
  if (rows.length === 0) return '';
  const widest = Math.max(...rows.map(row => row.name.length));
  const broadest = Math.max(...rows.filter(row => row.limit !== undefined).map(row => row.value.length), 0);
  const lines = rows.map(row => {
    const { name: figure, value, limit, isKept } = row;
    const start = `  ${figure.padEnd(widest)}  `;
    if (limit === undefined) return start + value;
    const word = verdictWord(row).padEnd(3);
    const verdict = isKept ? paint.good(word) : paint.bad(word);
    return `${start}${value.padEnd(broadest)}  ${verdict}  limit ${limit}`;
  });
  return [paint.heading(name), ...lines].join('\n');
}
