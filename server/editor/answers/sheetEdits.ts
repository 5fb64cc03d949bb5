import { samePath } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { keepHistory } from '../../core/analysis/keepHistory.ts';
import type { Part } from '../../core/boat/boat.ts';
import { markOf, moveAlong } from '../../core/corrections/room/shift.ts';
import type { Change } from '../../core/findings/finding.ts';
import { applyChanges } from '../../core/text/editing/edit.ts';
import type { TextSplice } from '../../core/text/reading/layout.ts';
import { stationWords } from '../../core/wording/numbers.ts';
import { pathOfKey } from './sheetPlaces.ts';

/** A part moved along the boat, as a hand on the picture wants it. */
export interface WantedMove {
  /** The part, as the pictures name it. */
  readonly key: string;
  /** Aft positive: m, or marks of the tape. */
  readonly by: { readonly metres: number } | { readonly marks: number };
}

/** Edits of the text; or why there are none, for the builder. */
export type Edits =
  | { readonly status: 'done'; readonly splices: readonly TextSplice[] }
  | { readonly status: 'refused'; readonly reason: string };

/** The edits that move a part along the boat: its station, in the way that it is written. */
export function moveEdits(analysis: Analysis, { key, by }: WantedMove): Edits {
  const part = partCalled(analysis, key);
  if (!part) return refused('There is no such part any more.');
  const metres = 'metres' in by ? by.metres : by.marks * markOf(part, 0, analysis.boat.units);
  const changes = moveAlong(part, metres, analysis.boat);
  if (changes) return editsFor(analysis, keepHistory(changes, analysis.syntax, analysis.trials));
  return refused(`“${part.name}” has no station of its own to rewrite; change its form or its balance in the text.`);
}

/** The edits of a correction: those of its code action. */
export function correctionEdits(analysis: Analysis, index: number): Edits {
  const correction = analysis.corrections.all()[index];
  return correction ? editsFor(analysis, correction.changes) : refused('There is no such proposal any more.');
}

function editsFor({ syntax }: Analysis, changes: readonly Change[]): Edits {
  // What stays where it is needs no edit.
  const splices = changes.length === 0 ? [] : applyChanges(syntax, changes);
  return splices
    ? { status: 'done', splices }
    : refused('This place in the file cannot be rewritten; change it by hand.');
}

const refused = (reason: string): Edits => ({ status: 'refused', reason });

const partCalled = ({ boat }: Analysis, key: string): Part | null => {
  const path = pathOfKey(key);
  return (path && boat.payload.find(part => samePath(part.path, path))) ?? null;
};

/** Where a part is that is being moved; nothing for one that is there no more. */
export function movedWords(analysis: Analysis, key: string): string {
  const part = partCalled(analysis, key);
  return part ? `“${part.name}”: ${stationWords((part.from[0] + part.to[0]) / 2, analysis.boat.units)}` : '';
}
