import { type BoatReading, readBoat } from '../boat/readBoat.ts';
import type { Change } from '../findings/finding.ts';
import { applyChanges, splice } from '../text/editing/edit.ts';
import { readSyntax, type Syntax } from '../text/reading/syntax.ts';
import type { Analysis } from './analysis.ts';

/** A file as it would be. */
interface Changed {
  readonly syntax: Syntax;
  readonly reading: BoatReading;
}

/** The text with some changes, read as the file itself is; null where they cannot be made. */
export function withChanges({ syntax, kept }: Analysis, changes: readonly Change[]): Changed | null {
  const splices = applyChanges(syntax, changes);
  if (!splices) return null;
  const after = readSyntax(splice(syntax.text, splices), syntax);
  const { describer, entries, meshes, cache } = kept;
  return { syntax: after, reading: readBoat(after, describer, entries, { meshes, shapes: cache.shapes }) };
}
