import type { Rewritten } from '../service/documents.ts';
import { attempted, ERRORS_FOUND, type World, WRONG_USE } from './world.ts';

/** Puts what is to be written into a boat file; the exit code where that cannot be, null where all went well. */
export function writeInto(
  { name: file, was, refusal }: { readonly name: string; readonly was: string; readonly refusal: string },
  written: Rewritten,
  world: World,
): number | null {
  if (written.status === 'none') return null;
  if (written.status === 'refused') {
    world.err(`${file}: ${refusal}\n`);
    return ERRORS_FOUND;
  }
  const { text } = written;
  if (!attempted(file, world, () => world.rewriteFile(file, was, text))) return WRONG_USE;
  world.err(`${file}: written.\n`);
  return null;
}
