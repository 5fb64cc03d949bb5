import type { Analysis, BoatService } from '../service/service.ts';
import { ERRORS_FOUND, OK, type SafeWorld } from './world.ts';
import { writeInto } from './writeInto.ts';

/** How `learn` is asked for. */
interface Wanted {
  readonly json: boolean;
  readonly write: boolean;
}

/** Prints what the trials tell, and with --write puts the best explanation into the file, as the editor's quick fix does. */
export function learnCommand(
  file: string,
  analysis: Analysis,
  { json, write }: Wanted,
  { service, world }: { readonly service: BoatService; readonly world: SafeWorld },
): number {
  if (json) world.out(`${JSON.stringify(service.learnData(analysis), null, 2)}\n`);
  else world.painted(paint => service.learn(analysis, paint));
  const target = {
    name: file,
    was: analysis.syntax.text,
    refusal: 'what the trials teach could not be written into this file; change it by hand.',
  };
  const failure = write ? writeInto(target, service.written(analysis, 'learned'), world) : null;
  return failure ?? (service.hasErrors(analysis) ? ERRORS_FOUND : OK);
}
