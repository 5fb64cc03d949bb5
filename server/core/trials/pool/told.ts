import type { Reading } from '../../boat/trial.ts';
import { type Cause, causesKey } from './causes.ts';
import type { Estimate } from './estimate.ts';
import type { Explanation } from './weigh.ts';

/** What may be wrong with the boat, whatever may be wrong with the readings besides. */
export interface Told {
  /** None, one or two. */
  readonly causes: readonly Exclude<Cause, { kind: 'slip' }>[];
  /** Its odds, 0..1, over all explanations that say it. */
  readonly odds: number;
  /** The likeliest of those. */
  readonly explanation: Explanation;
}

/** Explanations put together that say the same of the boat, the likeliest first. */
export function toldOf({ explanations }: Pick<Estimate, 'explanations'>): readonly Told[] {
  const told = new Map<string, Told>();
  for (const explanation of explanations) {
    const causes = [
      ...explanation.items.flatMap(({ cause }) => (cause.kind === 'slip' ? [] : [cause])),
      ...(explanation.load ? [explanation.load.cause] : []),
    ];
    const key = causesKey(causes);
    const known = told.get(key);
    told.set(
      key,
      known ? { ...known, odds: known.odds + explanation.odds } : { causes, odds: explanation.odds, explanation },
    );
  }
  return [...told.values()].sort((a, b) => b.odds - a.odds);
}

/** A reading that is likely a slip, and what all others say that it should have been. */
export interface ReadingSlip {
  readonly reading: Reading;
  /** 0..1. */
  readonly odds: number;
  readonly expected: number;
  /** Standard uncertainty of that. */
  readonly sigma: number;
}

/** Less likely than this it is not called a slip. */
const LIKELY = 0.5;

/** Readings that are slips in more than half of all that may be, the likeliest first. */
export function slipsOf({ explanations, foretold }: Estimate): readonly ReadingSlip[] {
  return foretold.readings
    .flatMap(({ reading }): readonly ReadingSlip[] => {
      const saying = explanations.flatMap(explanation => {
        const at = explanation.items.findIndex(({ cause }) => cause.kind === 'slip' && cause.of.reading === reading);
        return at < 0 ? [] : [{ explanation, at }];
      });
      const odds = saying.reduce((sum, { explanation }) => sum + explanation.odds, 0);
      const [first] = saying;
      if (!first || odds <= LIKELY) return [];
      const { items, known } = first.explanation;
      const { size } = items[first.at]!;
      const sigma = size * Math.sqrt(known.w.covariance[first.at]![first.at]!);
      return [{ reading, odds, expected: reading.value - size * known.w.mean[first.at]!, sigma }];
    })
    .sort((a, b) => b.odds - a.odds);
}
