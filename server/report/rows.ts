import { beyondLimit } from '../wording/beyondLimit.ts';

/** One figure of the report: its name, its value, and how it stands to its limit where it has one. */
export interface Row {
  readonly name: string;
  readonly value: string;
  readonly limit?: string;
  readonly isKept?: boolean;
}

/** A figure beside its limit; one that breaks it gets the digits that show it. */
export function limitRow(
  name: string,
  show: (finer: number) => string,
  limit: { readonly text: string; readonly isKept: boolean; readonly way?: 'over' | 'under' },
): Row {
  const value = limit.isKept ? show(0) : beyondLimit(show, limit.text, limit.way);
  return { name, value, limit: limit.text, isKept: limit.isKept };
}

/** Colours for a terminal, or none. */
export interface Paint {
  readonly heading: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
}

export const plainPaint: Paint = { heading: text => text, good: text => text, bad: text => text };

/** A block of figures under its heading, in columns; nothing for no figures. */
export function section(name: string, rows: readonly Row[], paint: Paint): string {
  if (rows.length === 0) return '';
  const widest = Math.max(...rows.map(row => row.name.length));
  const broadest = Math.max(...rows.filter(row => row.limit !== undefined).map(row => row.value.length), 0);
  const lines = rows.map(({ name: figure, value, limit, isKept }) => {
    const start = `  ${figure.padEnd(widest)}  `;
    if (limit === undefined) return start + value;
    const verdict = isKept ? paint.good('ok ') : paint.bad('out');
    return `${start}${value.padEnd(broadest)}  ${verdict}  limit ${limit}`;
  });
  return [paint.heading(name), ...lines].join('\n');
}
