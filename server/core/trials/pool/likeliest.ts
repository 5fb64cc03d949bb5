import type { Path } from '../../../../schema/path.ts';
import { type BoatSource, entriesIn } from '../../boat/source.ts';
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

/**
 * The boat as the pool has it, its inputs and what is not written down as the likeliest explanation has them: to be floated,
 * drawn and corrected like any boat. Of explanations that are no boat, the likeliest that is; null where none is.
 */
export function likeliestBoat(
  { source, inputs }: TrialSet,
  { explanations, foretold }: Estimate,
  file: BoatSource,
): BoatSource | null {
  const explanation = explanations.find(({ load }) => load?.cause.kind !== 'several');
  if (!explanation) return null;
  const supposed = sourceWith(source, changesOf(inputs, supposedBy(explanation, foretold.inputs)));
  const extra = entryOf(explanation, source, learnedPath(explanation, file));
  if (!extra) return supposed;
  const payload = [...supposed.payload, extra];
  return { ...supposed, payload, boat: { ...supposed.boat, payload: entriesIn(payload) } };
}
