import type { Analysis } from '../analysis/analysis.ts';
import { titleIn } from '../analysis/withTrials.ts';
import { leversReady } from '../conditions/withLevers.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { conditionRows } from './conditionRows.ts';
import { otherWaterRows } from './otherWaterRows.ts';
import { rangeRows } from './rangeRows.ts';
import type { Row } from './rows.ts';
import { tankRows } from './tankRows.ts';
import { transitRows } from './transitRows.ts';
import { wantedRows } from './wantedRows.ts';

/** A table of figures under its heading. */
export interface FigureSection {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** All figures of the report in the order in which they are read; a section without a figure is none. */
export const sectionsOf = (analysis: Analysis): readonly FigureSection[] => finish(sectionSteps(analysis));

/** The same in steps. */
export function* sectionSteps(analysis: Analysis): Steps<readonly FigureSection[]> {
  const all: readonly (readonly [title: string, rows: () => readonly Row[]])[] = [
    ['Still wanted', () => wantedRows(analysis)],
    ...analysis.conditions.map(
      inCondition => [inCondition.condition.title, () => conditionRows(analysis, inCondition)] as const,
    ),
    ['On the way down', () => transitRows(analysis)],
    ['Range of stability', () => rangeRows(analysis)],
    ['Tanks', () => tankRows(analysis)],
    ['In other water', () => otherWaterRows(analysis)],
  ];
  const sections: FigureSection[] = [];
  yield* leversReady(analysis.conditions);
  for (const [title, rowsOf] of all) {
    yield;
    const rows = rowsOf();
    if (rows.length > 0) sections.push({ title: titleIn(analysis, title), rows });
  }
  return sections;
}
