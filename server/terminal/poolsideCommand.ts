import { poolsidePage } from '../editor/poolsidePage.ts';
import type { Analysis, BoatService } from '../service/service.ts';
import { attempted, ERRORS_FOUND, OK, type World, WRONG_USE } from './world.ts';

/** What the commands are done with. */
interface Means {
  readonly service: BoatService;
  readonly world: World;
}

/** How `poolside` is asked for. */
interface PageWanted {
  readonly output: string | null;
  readonly overwrite: boolean;
}

/** Writes the page for the poolside to a file or to the output: one file with the boat, its meshes and the program in it. */
export function poolsideCommand(
  file: string,
  analysis: Analysis,
  wanted: PageWanted,
  { service, world }: Means,
): number {
  const { output, overwrite } = wanted;
  const { files, ...boat } = service.poolBoat(analysis).all();
  let page = '';
  const isMade = attempted('the poolside page', world, () => {
    const meshes = files.flatMap(name => {
      const bytes = world.readBeside(file, name);
      return bytes && bytes !== 'outside' ? [{ name, base64: Buffer.from(bytes).toString('base64') }] : [];
    });
    page = poolsidePage(world.readPoolsideFiles(), { ...boat, meshes });
  });
  if (!isMade) return WRONG_USE;
  if (output === null || output === '-') world.document(page);
  else {
    if (!attempted(output, world, () => world.writeOutput(output, () => page, { from: file, overwrite })))
      return WRONG_USE;
    world.err(`${output}: written. Copy it to the phone and open it there; it needs no network.\n`);
  }
  return service.hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Shows the trials of a text, as the poolside page gives it, that the file has not yet; with --write puts them into it. */
export function takeCommand(
  file: string,
  analysis: Analysis,
  wanted: { from: string; write: boolean },
  { service, world }: Means,
): number {
  const { from, write } = wanted;
  let text = '';
  if (!attempted(from, world, () => (text = world.readFile(from)))) return WRONG_USE;
  const taking = service.taken(analysis, text);
  if (taking.status === 'refused') {
    world.err(`${from}: ${taking.reason}\n`);
    return ERRORS_FOUND;
  }
  const { added, text: now, words } = taking;
  world.out(`${words}\n`);
  if (added === '') return OK;
  if (!write) {
    world.out(added);
    return OK;
  }
  if (!attempted(file, world, () => world.rewriteFile(file, analysis.syntax.text, now))) return WRONG_USE;
  world.err(`${file}: written.\n`);
  return OK;
}
