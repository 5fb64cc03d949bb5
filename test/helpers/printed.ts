import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { type SheetPaper, sheetDocument } from '../../server/core/drawing/print/sheetDocument.ts';
import { finish } from '../../server/core/steps/steps.ts';

/** The sheet for the bench, all of it at once. */
export const printed = (analysis: Analysis, paper: SheetPaper): string => finish(sheetDocument(analysis, paper));
