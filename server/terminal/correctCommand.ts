import type { Analysis, BoatService } from '../service/service.ts';
import { ERRORS_FOUND, OK, type SafeWorld } from './world.ts';
import { writeInto } from './writeInto.ts';

/** How `correct` is asked for. */
interface Wanted {
  readonly json: boolean;
  readonly write: boolean;
  readonly explain: boolean;
  readonly bothWaters: boolean;
}

/** Prints the corrections, and with --write puts the best one into the file, as the editor's code action does. */
export function correctCommand(
  file: string,
  analysis: Analysis,
  { json, write, explain, bothWaters }: Wanted,
  { service, world }: { readonly service: BoatService; readonly world: SafeWorld },
): number {
  if (json) {
    const data = bothWaters ? service.waterSetData(analysis) : service.correctData(analysis);
    world.out(`${JSON.stringify(data, null, 2)}\n`);
  } else {
    world.painted(paint =>
      bothWaters ? service.waterSet(analysis, paint) : service.correct(analysis, { explain, paint }),
    );
  }
  const target = {
    name: file,
    was: analysis.syntax.text,
    refusal: 'the pieces could not be written into this file; add them by hand.',
  };
  const failure = write ? writeInto(target, service.written(analysis, 'correction'), world) : null;
  return failure ?? (service.hasErrors(analysis) ? ERRORS_FOUND : OK);
}
