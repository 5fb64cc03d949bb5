import type { Analysis } from '../analysis/analysis.ts';
import { worstStep } from '../conditions/transit.ts';
import { limitText, marginOf } from '../figures/limit.ts';
import { TRANSIT_FIGURES, transitLimit } from '../figures/transitTable.ts';
import { percentText } from '../wording/numbers.ts';
import type { Row } from './rows.ts';

/** The way down: the worst of each figure between empty and neutral, and where. */
export const transitRows = ({ boat, transit }: Analysis): readonly Row[] =>
  TRANSIT_FIGURES.flatMap((figure): readonly Row[] => {
    const { kind, of, badness, heading, isJudgedInRow } = figure;
    const worst = worstStep(transit.all(), step => badness(of(step)));
    if (!worst) return [];
    const where = `with the tanks ${percentText(worst.fill)} full`;
    const row: Row = { name: heading, value: placed(kind.show(of(worst), boat.units), where) };
    const limit = isJudgedInRow === false ? null : transitLimit(figure, boat);
    return [
      limit ? { ...row, limit: limitText(limit, kind, boat.units), isKept: marginOf(limit, of(worst)) >= 0 } : row,
    ];
  });

/** A figure and where it is worst; nowhere, when there is none to see. */
const placed = (figure: string, where: string): string =>
  /\d/.test(figure) ? `${figure} ${where}` : `${figure} all the way`;
