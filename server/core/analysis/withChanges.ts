import { type BoatReading, boatSteps } from '../boat/readBoat.ts';
import type { Change } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import { applyChanges, splice } from '../text/editing/edit.ts';
import { type Syntax, syntaxSteps } from '../text/reading/syntax.ts';
import type { Analysis } from './analysis.ts';

/** A file as it would be. */
interface Changed {
  readonly syntax: Syntax;
  readonly reading: BoatReading;
}

/** The text with some changes, read as the file itself is; null where they cannot be made. */
export function* withChanges({ syntax, kept }: Analysis, changes: readonly Change[]): Steps<Changed | null> {
  const splices = applyChanges(syntax, changes);
  if (!splices) return null;
  yield;
  const after = yield* syntaxSteps(splice(syntax.text, splices), syntax);
  const { describer, entries, meshes, cache } = kept;
  const reading = yield* boatSteps(after, describer, entries, { meshes, shapes: cache.shapes });
  return { syntax: after, reading };
}
