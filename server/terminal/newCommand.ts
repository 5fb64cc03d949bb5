import type { BoatService } from '../service/service.ts';
import { attempted, OK, type World, WRONG_USE } from './world.ts';

export interface NewBoat {
  readonly name: string;
  readonly units: 'metric' | 'inches';
  /** Length, beam, waterline and scale to plan it from; null for a small boat in trim. */
  readonly plan: string | null;
  /** Where it is written; `-` for the output. */
  readonly output: string | null;
}

/** Writes the file of a new boat, `NAME.boat.yaml` unless told, or where the name is that of such a file; one that is there already is left as it is. */
export function newCommand(
  { name: given, units, plan, output }: NewBoat,
  { service, world }: { readonly service: BoatService; readonly world: World },
): number {
  const isFile = given.toLowerCase().endsWith(ENDING);
  const name = isFile ? boatNameOf(given) : given;
  if (name.includes('\ufffd')) {
    world.err('This name is not in UTF-8: give it in letters that this terminal writes.\n');
    return WRONG_USE;
  }
  const made = plan === null ? null : service.plannedBoat(name, plan, units);
  if (made?.status === 'refused') {
    world.err(`${made.reason}\n`);
    return WRONG_USE;
  }
  const text = made?.text ?? service.newBoat(name, units);
  const file = output ?? (isFile ? given : boatFileName(name));
  if (file === '-') world.document(text);
  else {
    if (!attempted(file, world, () => world.writeOutput(file, () => text, { from: null, overwrite: false })))
      return WRONG_USE;
    world.err(`${file}: written.\n`);
  }
  return OK;
}

const ENDING = '.boat.yaml';

/** The name in the name of a file: `ponds/reed-warbler.boat.yaml` is that of Reed warbler. */
function boatNameOf(file: string): string {
  const words = file
    .slice(0, -ENDING.length)
    .replace(/^.*[/\\]/s, '')
    .replace(/[-_]+/g, ' ')
    .trim();
  return words.charAt(0).toUpperCase() + words.slice(1) || 'Boat';
}

/** A boat's name as that of a file: small letters, no blanks, nothing that a folder could not hold. */
const boatFileName = (name: string): string =>
  `${
    name
      .trim()
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'boat'
  }${ENDING}`;
