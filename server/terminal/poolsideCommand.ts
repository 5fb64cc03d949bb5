import type { Analysis } from '../core/analysis/analysis.ts';
import { poolBoatOf } from '../core/poolside/poolBoat.ts';
import { takeTrials } from '../core/poolside/take.ts';
import { splice } from '../core/text/editing/edit.ts';
import { poolsidePage } from '../editor/poolsidePage.ts';
import { attempted, ERRORS_FOUND, hasErrors, OK, type World, WRONG_USE } from '../editor/world.ts';

/** How `poolside` is asked for. */
interface PageWanted {
  readonly output: string | null;
  readonly overwrite: boolean;
}

/** Writes the page for the poolside to a file or to the output: one file with the boat, its meshes and the program in it. */
export function poolsideCommand(file: string, analysis: Analysis, wanted: PageWanted, world: World): number {
  const { output, overwrite } = wanted;
  const { files, ...boat } = poolBoatOf(analysis);
  let page = '';
  const isMade = attempted('the poolside page', world, () => {
    const meshes = files.flatMap(name => {
      const bytes = world.readBeside(file, name);
      return bytes && bytes !== 'outside' ? [{ name, base64: Buffer.from(bytes).toString('base64') }] : [];
    });
    page = poolsidePage(world.readPoolsideFiles(), { ...boat, meshes });
  });
  if (!isMade) return WRONG_USE;
  if (output === null || output === '-') world.out(page);
  else {
    if (!attempted(output, world, () => world.writeOutput(output, page, { from: file, overwrite }))) return WRONG_USE;
    world.err(`${output}: written. Copy it to the phone and open it there; it needs no network.\n`);
  }
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Shows the trials of a text, as the poolside page gives it, that the file has not yet; with --write puts them into it. */
export function takeCommand(
  file: string,
  analysis: Analysis,
  wanted: { from: string; write: boolean },
  world: World,
): number {
  const { from, write } = wanted;
  let text = '';
  if (!attempted(from, world, () => (text = world.readFile(from)))) return WRONG_USE;
  const taking = takeTrials(analysis.syntax, text);
  if (taking.status === 'refused') {
    world.err(`${from}: ${taking.reason}\n`);
    return ERRORS_FOUND;
  }
  const { splices, words } = taking;
  world.out(`${words}\n`);
  if (splices.length === 0) return OK;
  if (!write) {
    world.out(splices.map(({ text: piece }) => piece.replace(/^\n/, '')).join(''));
    return OK;
  }
  const was = analysis.syntax.text;
  if (!attempted(file, world, () => world.rewriteFile(file, was, splice(was, splices)))) return WRONG_USE;
  world.err(`${file}: written.\n`);
  return OK;
}
