import { createDescriber, type Describer } from '../schema/describe.ts';
import { type Analysis, analyse } from './analysis.ts';
import { type HoverText, hoverAt } from './answers/hover.ts';
import { newBoatText } from './answers/newBoat.ts';
import { type Summary, summarise } from './answers/summary.ts';
import { textReport } from './report/textReport.ts';

/** The one door to the core: the language server, the command line and the browser worker come in by it. */
export interface BoatService {
  /** Key help drawn from the schema. */
  readonly describer: Describer;
  /** Analyses a text; parts of the previous analysis of the same file are used again where they still hold. */
  analyse(text: string, previous?: Analysis): Analysis;
  hover(analysis: Analysis, offset: number): HoverText | null;
  summary(analysis: Analysis): Summary;
  /** Plain text, as the command line prints it. */
  report(analysis: Analysis): string;
  /** The text of a new boat file. */
  newBoat(name: string): string;
}

export function createBoatService(): BoatService {
  const describer = createDescriber();
  return {
    describer,
    analyse: (text, previous) => analyse(text, describer, previous),
    hover: (analysis, offset) => hoverAt(analysis, describer, offset),
    summary: summarise,
    report: analysis => textReport(analysis),
    newBoat: newBoatText,
  };
}
