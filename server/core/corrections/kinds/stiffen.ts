import type { Boat } from '../../boat/boat.ts';
import { askedLike, askedToBeStiff } from '../../figures/allowed.ts';
import { stiffnessToTrim } from '../../judges/judgeSubmerged.ts';
import type { Steps } from '../../steps/steps.ts';
import type { Stiffen } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { correct } from '../search/correct.ts';
import { stiffeningTitle } from '../words/correctionTitle.ts';

/** Lead low and foam high that trim the boat and stiffen it in one; null when it is stiff enough to be trimmed by weight. */
export function* stiffen(boatToTrim: BoatToTrim): Steps<Stiffen | null> {
  const stiffer = withStifferLimit(boatToTrim);
  const correction = stiffer && (yield* correct({ ...boatToTrim, boat: stiffer }, 'both'));
  if (correction?.submerged.status !== 'neutral') return null;
  const before = boatToTrim.submerged.status === 'neutral' ? boatToTrim.submerged.bgEffectiveLongitudinal : 0;
  return {
    ...correction,
    kind: 'stiffen',
    boat: askedLike(correction.boat, boatToTrim.boat),
    title: stiffeningTitle(correction, before, correction.submerged.bgEffectiveLongitudinal),
  };
}

/** The boat asked to be stiff enough to be trimmed by weight; null when it is, or is not touchy for want of a rest. */
function withStifferLimit({ boat, submerged }: BoatToTrim): Boat | null {
  if (submerged.status !== 'neutral' || !submerged.stable) return null;
  const needed = stiffnessToTrim(boat, submerged);
  if (submerged.bgEffectiveLongitudinal >= needed) return null;
  return askedToBeStiff(boat, needed);
}
