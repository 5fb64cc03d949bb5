import type { Path } from '../../../../schema/path.ts';
import type { BoatSource } from '../../boat/source.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import { floatSubmerged } from '../../conditions/submerged.ts';
import { floatSurfaced } from '../../conditions/surfaced.ts';
import type { Lying } from '../../uncertainty/uncertainties.ts';
import { sourceWith } from '../../uncertainty/withInputs.ts';
import type { Estimate } from './estimate.ts';
import { changesOf } from './foretold.ts';
import { entryOf, supposedBy } from './suppose.ts';
import type { TrialSet } from './trialSet.ts';
import type { Explanation } from './weigh.ts';

/** The boat as the pool has it: its inputs and what is not written down as the likeliest explanation has them. */
export interface LikeliestBoat extends Lying {
  readonly source: BoatSource;
}

/** Where the file has an entry for the explanation's weight already; null where it has none. */
function learnedPath({ load }: Explanation, { payload }: BoatSource): Path | null {
  if (load?.cause.kind !== 'unlisted') return null;
  const { inside } = load.cause;
  const known = payload.find(({ checked }) => checked.learned && !checked.written && (checked.in ?? null) === inside);
  return known?.entry.path ?? null;
}

/** To be floated, drawn and corrected like any boat; of explanations that are no boat, the likeliest that is. */
export function likeliestBoat(
  trialSet: TrialSet,
  { explanations, foretold }: Estimate,
  file: BoatSource,
): LikeliestBoat | null {
  const explanation = explanations.find(({ load }) => load?.cause.kind !== 'several');
  if (!explanation) return null;
  const filed = sourceWith(trialSet.source, changesOf(trialSet.inputs, supposedBy(explanation, foretold.inputs)));
  const extra = entryOf(explanation, trialSet.source, learnedPath(explanation, file));
  const source: BoatSource = extra
    ? {
        ...filed,
        boat: { ...filed.boat, payload: [...filed.boat.payload, extra.entry] },
        payload: [...filed.payload, extra],
      }
    : filed;
  const bodies = assembleBodies(source.boat, trialSet.cache);
  return {
    source,
    boat: source.boat,
    bodies,
    surfaced: floatSurfaced(bodies, source.boat.length),
    submerged: floatSubmerged(bodies),
  };
}
