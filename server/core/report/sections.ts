import type { Analysis } from '../analysis/analysis.ts';
import { titleIn } from '../analysis/withTrials.ts';
import { conditionRows } from './conditionRows.ts';
import { otherWaterRows } from './otherWaterRows.ts';
import { rangeRows } from './rangeRows.ts';
import type { Row } from './rows.ts';
import { tankRows } from './tankRows.ts';
import { transitRows } from './transitRows.ts';
import { wantedRows } from './wantedRows.ts';

/** A table of figures under its heading. */
interface Section {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** All figures of the report in the order in which they are read; a section without a figure is none. */
export function sectionsOf(analysis: Analysis): readonly Section[] {
  const all: readonly Section[] = [
    { title: 'Still wanted', rows: wantedRows(analysis) },
    ...analysis.conditions.map(inCondition => ({
      title: inCondition.condition.title,
      rows: conditionRows(analysis, inCondition),
    })),
    { title: 'On the way down', rows: transitRows(analysis) },
    { title: 'Range of stability', rows: rangeRows(analysis) },
    { title: 'Tanks', rows: tankRows(analysis) },
    { title: 'In other water', rows: otherWaterRows(analysis) },
  ];
  return all
    .filter(({ rows }) => rows.length > 0)
    .map(({ title, rows }) => ({ title: titleIn(analysis, title), rows }));
}
