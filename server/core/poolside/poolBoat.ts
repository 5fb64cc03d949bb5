import type { Analysis } from '../analysis/analysis.ts';
import { emptyDay } from './day.ts';
import type { PoolBoat } from './page.ts';
import { poolView } from './view.ts';

/** What the page has to know of the boat, but for its mesh files: those by their names. */
export type PoolBoatAsked = Omit<PoolBoat, 'meshes'> & { readonly files: readonly string[] };

export function poolBoatOf(analysis: Analysis): PoolBoatAsked {
  const { boat, syntax, file } = analysis;
  const view = poolView(analysis.settled.all(), emptyDay(boat.name));
  return { name: boat.name, text: syntax.text, view, files: file.wantedFiles };
}
