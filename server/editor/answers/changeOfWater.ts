import type { Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { keepHistory } from '../../core/analysis/keepHistory.ts';
import type { InWater, SetPiece, WaterSet } from '../../core/corrections/kinds/waterSet.ts';
import { addedWays, titleOf } from '../../core/corrections/words/correctionTitle.ts';
import type { Change, Mend } from '../../core/findings/finding.ts';
import { writtenValue } from '../../core/text/editing/writtenEntry.ts';
import type { Span } from '../../core/text/reading/lines.ts';
import { pathAt } from '../../core/text/reading/pathAt.ts';
import { valueAt } from '../../core/text/reading/values.ts';

/** Whether a selection lies in the file's water, and that is said as a kind. */
export const asksForWater = ({ syntax }: Analysis, [start]: Span): boolean =>
  pathAt(syntax, start).path[0] === 'water' && kindOf({ syntax }) !== null;

/**
 * The other water, with the pieces that go in for the sea and come out again for fresh. Null for a boat that is not
 * trimmed in its own water yet, or that no pieces trim in the other.
 */
export function changeOfWater(analysis: Analysis): Mend | null {
  const written = kindOf(analysis);
  const set = analysis.waterSet.all();
  if (!written || !set || set.inBoth.length > 0) return null;
  const [from, to, name] = written.kind === 'fresh' ? ([set.fresh, set.sea, 'sea'] as const) : seaToFresh(set);
  const out = from.only.filter(({ made }) => made === null);
  const put = to.only.flatMap(({ made }) => made ?? []);
  // Pieces of its own that the boat lacks in the water that it is in: that is for its corrections to mend first.
  if (from.only.some(({ made }) => made !== null)) return null;
  const changes: readonly Change[] = [
    { kind: 'replace', place: { on: 'value', path: written.path }, text: name },
    ...put.map(({ entry }) => ({ kind: 'append', path: ['payload'], entry: forNow(entry, name) }) as const),
    ...out.map(({ part }) => ({ kind: 'remove', path: part.path }) as const),
  ];
  const done = titlesFor(out, to, analysis);
  return {
    title: titleOf([`Change to ${name} water`], done),
    changes: [...keepHistory(changes, analysis.syntax, analysis.trials), ...oldWater(analysis)],
  };
}

/** Trials that took the file's water for granted were in that of before. */
function oldWater({ syntax, trials }: Analysis): readonly Change[] {
  const text = writtenValue(syntax, ['water']);
  if (text === null) return [];
  return trials
    .filter(({ pool, readings }) => pool === null && readings.length > 0)
    .map(({ path }) => ({ kind: 'add-key', path, key: 'pool', text }));
}

const seaToFresh = ({ fresh, sea }: WaterSet) => [sea, fresh, 'fresh'] as const;

function titlesFor(out: readonly SetPiece[], to: InWater, { boat }: Analysis): readonly string[] {
  const pieces = to.only.flatMap(({ made }) => made?.piece ?? []);
  const taken = out.length > 0 ? [`remove ${out.map(({ part }) => `“${part.name}”`).join(', ')}`] : [];
  if (pieces.length === 0) {
    if (out.length === 0) return ['the boat is within its limits there as it is'];
    return [...taken, `remove ${out.length} pieces`];
  }
  return addedWays(pieces, boat).map(words => [...taken, `insert ${words}`].join(', '));
}

/** The entry with what it is for in its comment. */
const forNow = <E extends { readonly comment?: string }>(entry: E, water: 'sea' | 'fresh'): E => ({
  ...entry,
  comment: `for ${water} water only; ${entry.comment ?? ''}`,
});

/** How the file says its water, when it is one of the two kinds. */
function kindOf({ syntax }: Pick<Analysis, 'syntax'>): { readonly path: Path; readonly kind: 'fresh' | 'sea' } | null {
  const water = valueAt(syntax, ['water']);
  if (isKind(water)) return { path: ['water'], kind: water };
  if (typeof water !== 'object' || water === null || 'density' in water || 'salinity' in water) return null;
  return 'kind' in water && isKind(water.kind) ? { path: ['water', 'kind'], kind: water.kind } : null;
}

const isKind = (value: unknown): value is 'fresh' | 'sea' => value === 'fresh' || value === 'sea';
