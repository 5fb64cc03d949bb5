import { FIGURES } from '../../server/core/figures/table.ts';
import { TRANSIT_FIGURES } from '../../server/core/figures/transitTable.ts';

/** Codes of the findings that a figure raises outside its limit. */
export const figureFindings: ReadonlySet<string> = new Set(
  [...FIGURES, ...TRANSIT_FIGURES].flatMap(({ finding }) => finding ?? []),
);
