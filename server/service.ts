import { createDescriber } from '../schema/describe.ts';
import { type Analysis, analyse } from './analysis.ts';

/** The one door to the core: the language server, the command line and the browser worker come in by it. */
export interface BoatService {
  /** Analyses a text; parts of the previous analysis of the same file are used again where they still hold. */
  analyse(text: string, previous?: Analysis): Analysis;
}

export function createBoatService(): BoatService {
  const describer = createDescriber();
  return { analyse: (text, previous) => analyse(text, describer, previous) };
}
