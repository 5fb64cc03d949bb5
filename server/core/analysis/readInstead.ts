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

/** The text with some changes; null where they cannot be made. */
export function textWith({ syntax }: Pick<Analysis, 'syntax'>, changes: readonly Change[]): string | null {
  const splices = applyChanges(syntax, changes);
  return splices && splice(syntax.text, splices);
}

/** Another text in place of the file, read as the file itself is. */
export function* readInstead({ syntax, kept }: Analysis, text: string): Steps<Changed> {
  const after = yield* syntaxSteps(text, syntax);
  const { describer, entries, meshes, cache } = kept;
  const reading = yield* boatSteps(after, describer, entries, { meshes, shapes: cache.shapes });
  return { syntax: after, reading };
}
