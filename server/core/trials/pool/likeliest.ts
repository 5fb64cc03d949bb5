import type { Path } from '../../../../schema/path.ts';
import { type BoatSource, entriesIn } from '../../boat/source.ts';
import type { Reading } from '../../boat/trial.ts';
import { sourceWith } from '../../uncertainty/withInputs.ts';
import type { Estimate } from './estimate.ts';
import { changesOf } from './foretold.ts';
import { entryOf, supposedBy } from './suppose.ts';
import type { TrialSet } from './trialSet.ts';
import type { Explanation } from './weigh.ts';

/** Where the file has an entry for the explanation's weight already; null where it has none. */
function learnedPath({ load }: Explanation, { payload }: BoatSource): Path | null {
  if (load?.cause.kind !== 'unlisted') return null;
  const { inside } = load.cause;
  const known = payload.find(({ checked }) => checked.learned && !checked.written && (checked.in ?? null) === inside);
  return known?.entry.path ?? null;
}

/** A reading counts as a slip where explanations of at least these odds together strike it out. */
const STRUCK = 1 / 3;

/**
 * The explanation by which the boat is shown: the likeliest that says what is wrong, and strikes out no reading that nearly
 * all the others believe. What it alone calls a slip is not shown as if it were one.
 */
export function shownOf(explanations: readonly Explanation[]): Explanation | null {
  const slips = ({ items }: Explanation) =>
    items.flatMap(({ cause }) => (cause.kind === 'slip' ? [cause.of.reading] : []));
  const isStruck = (reading: Reading): boolean =>
    explanations.filter(one => slips(one).includes(reading)).reduce((sum, { odds }) => sum + odds, 0) >= STRUCK;
  const named = explanations.filter(({ load }) => load?.cause.kind !== 'several');
  return named.find(one => slips(one).every(isStruck)) ?? named[0] ?? null;
}

/**
 * The boat as the pool has it, its inputs and what is not written down as the likeliest explanation has them: to be floated,
 * drawn and corrected like any boat; null where nothing says what is wrong.
 */
export function likeliestBoat(
  { source, inputs }: TrialSet,
  { explanations, foretold }: Estimate,
  file: BoatSource,
): BoatSource | null {
  const explanation = shownOf(explanations);
  if (!explanation) return null;
  const supposed = sourceWith(source, changesOf(inputs, supposedBy(explanation, foretold.inputs)));
  const extra = entryOf(explanation, source, learnedPath(explanation, file));
  if (!extra) return supposed;
  const payload = [...supposed.payload, extra];
  return { ...supposed, payload, boat: { ...supposed.boat, payload: entriesIn(payload) } };
}
