import type { Boat } from '../boat/boat.ts';
import type { Blow } from '../conditions/blowing.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import type { StabilityAfloat } from '../conditions/stabilityAfloat.ts';
import type { TankSizing } from '../conditions/tankSizing.ts';
import type { TransitStep } from '../conditions/transit.ts';
import type { Figure } from '../figures/figure.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding } from '../findings/finding.ts';
import type { StillWanted } from '../planning/wanted.ts';
import { type Steps, through, type Working } from '../steps/steps.ts';
import { judgeStability } from './judgeStability.ts';
import { judgeSubmerged } from './judgeSubmerged.ts';
import { judgeSurfaced } from './judgeSurfaced.ts';
import { judgeBlows, judgeTanks } from './judgeTanks.ts';
import { judgeTransit } from './judgeTransit.ts';
import { isHalfEntered, judgeWanted } from './judgeWanted.ts';

/** What is judged: the boat in each condition, on the way between them, knocked over, and what its tanks must hold. */
export interface ToJudge {
  readonly boat: Boat;
  readonly conditions: readonly InCondition[];
  readonly transit: Working<readonly TransitStep[]>;
  readonly stability: Working<StabilityAfloat>;
  readonly tankSizes: readonly TankSizing[];
  readonly blows: readonly Blow[];
  readonly wanted: StillWanted | null;
}

/**
 * What the boat does outside its limits where it rests, or why nobody knows: all but what `judgeMotion` tells. It is asked of
 * a boat that is read whole.
 */
export function judge(toJudge: ToJudge, figures: readonly Figure[]): readonly Finding[] {
  const { boat, conditions, tankSizes, blows, wanted } = toJudge;
  const findings = [
    ...(conditions.some(({ state }) => state.status === 'empty') ? [nothingFloats] : []),
    ...conditions.flatMap(inCondition => judgeIn(boat, inCondition, figures)),
    ...judgeTanks(boat, tankSizes),
    ...judgeBlows(boat, blows),
  ];
  return [...planned(findings, wanted), ...judgeWanted(boat, wanted)];
}

/** The same on its way down, and when it is knocked over. */
export function* judgeMotion({ boat, transit, stability, wanted }: ToJudge): Steps<readonly Finding[]> {
  const onTheWay = judgeTransit(boat, yield* through(transit));
  yield;
  return planned([...onTheWay, ...judgeStability(boat, yield* through(stability))], wanted);
}

/** No weight that is still to come aboard mends these. */
const TOO_MUCH: readonly FindingCode[] = ['sinks', 'submerged-heavy'];

/** What a half-entered boat does, it does for want of the rest: that is no alarm. */
function planned(findings: readonly Finding[], wanted: StillWanted | null): readonly Finding[] {
  if (!isHalfEntered(wanted)) return findings;
  return findings.map(finding => (TOO_MUCH.includes(finding.code) ? finding : { ...finding, severity: 'information' }));
}

/** What it does outside its limits in one condition. */
export const judgeIn = (boat: Boat, inCondition: InCondition, figures: readonly Figure[]): readonly Finding[] =>
  inCondition.where === 'submerged'
    ? judgeSubmerged(boat, inCondition.state, inCondition.condition, figures)
    : judgeSurfaced(boat, inCondition.state, inCondition.condition, figures);

/** Missing figures are explained too: a file without limits broken is not yet a boat within them. */
const nothingFloats: Finding = {
  code: 'nothing-floats',
  about: 'file',
  severity: 'information',
  message:
    'Nothing in the file floats yet, so there are no figures. Under “hull:” give it a compartment or a shell, and under “payload:” what it carries.',
  place: { on: 'key', path: ['hull'] },
};
