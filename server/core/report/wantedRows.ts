import type { Analysis } from '../analysis/analysis.ts';
import { ballastWanted, isPlanned, massWanted, measuresWanted } from '../planning/wantedWords.ts';
import { percentText } from '../wording/numbers.ts';
import type { Row } from './rows.ts';

/** What is still wanted for the painted waterline and for the dive; nothing of a boat that is all there. */
export function wantedRows({ boat, wanted }: Analysis): readonly Row[] {
  if (!wanted) return [];
  const { tank } = wanted;
  const isLaden = isPlanned(wanted);
  const rows: Row[] = [];
  if (!isLaden) rows.push({ name: 'Aboard', value: massWanted(wanted, boat) });
  if (tank.isRight || tank.water <= 0) return rows;
  const measures = measuresWanted(wanted, boat);
  rows.push({
    name: tank.light ? 'Ballast tank, full' : `Ballast tank, neutral at ${percentText(tank.fill)}`,
    value: ballastWanted(tank, boat),
  });
  if (measures !== null) rows.push({ name: '', value: measures });
  return rows;
}
