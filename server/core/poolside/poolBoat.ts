import type { Analysis } from '../analysis/analysis.ts';
import { type Steps, through } from '../steps/steps.ts';
import { emptyDay } from './day.ts';
import { type PoolView, viewSteps } from './view.ts';

/** What the page has to know of its boat; plain data. */
export interface PoolBoat {
  readonly name: string;
  /** The boat file. */
  readonly text: string;
  /** The mesh files that it names, as they are on the disk. */
  readonly meshes: readonly { readonly name: string; readonly base64: string }[];
  /** Of a day without readings: the page's first answer, before anything is figured on the phone. */
  readonly view: PoolView;
}

/** The mesh files by their names. */
export type PoolBoatAsked = Omit<PoolBoat, 'meshes'> & { readonly files: readonly string[] };

export function* poolBoatOf(analysis: Analysis): Steps<PoolBoatAsked> {
  const { boat, syntax, file } = analysis;
  const view = yield* viewSteps(yield* through(analysis.settled), emptyDay(boat.name));
  return { name: boat.name, text: syntax.text, view, files: file.wantedFiles };
}
