import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import { type TransitStep, worstStep } from '../conditions/transit.ts';
import type { Figure } from '../figures/figure.ts';
import { type Figured, figuredIn, figuresOf, limitIn, nameIn, offBeyond, offText } from '../figures/figured.ts';
import type { Kind } from '../figures/kind.ts';
import { type Limit, limitText, marginOf } from '../figures/limit.ts';
import { TRANSIT_FIGURES, transitLimit } from '../figures/transitTable.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Working } from '../steps/steps.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { capital } from '../wording/capital.ts';
import { standingOf } from './standings.ts';
import { whyNoRest } from './whyNoRest.ts';

/** How a figure stands to its limit; `open` where its uncertainty leaves that to be told. */
export type GaugeStanding = 'in' | 'out' | 'open';

/** A value of a gauge, from what it is held against, SI, and in words. */
interface Reading {
  readonly off: number;
  readonly shown: string;
}

/** A figure against its limit, as it is and as it would be with what is proposed. */
export interface Gauge {
  /** "surfaced trim": one gauge has it. */
  readonly name: string;
  /** The condition, and the figure's name within it: "Surfaced", "Trim". */
  readonly heading: string;
  readonly title: string;
  readonly kind: Kind;
  readonly limit: Limit;
  readonly limitWords: string;
  /** The two directions, more first, where it can be off either way; null where more is better. */
  readonly ways: readonly [more: string, less: string] | null;
  /** Null where the boat comes to no rest, or has no such mark; then `why` says so. */
  readonly now: Reading | null;
  readonly why: string;
  /** One standard uncertainty, SI; null where it is not known or says nothing. */
  readonly sigma: number | null;
  readonly sigmaWords: string | null;
  readonly standing: GaugeStanding;
  /** With what is proposed; null without a proposal. */
  readonly proposed: Reading | null;
  /** Of a boat that does not stay where the figure was read. */
  readonly runsOff: boolean;
  /** What it raises when out, and the word of its limit under `limits:`, with the condition's. */
  readonly finding: FindingCode | null;
  readonly limitKeys: readonly [key: string | undefined, condition: string];
}

/** A boat as far as gauges look at it. */
export interface ToGauge {
  readonly boat: Boat;
  readonly conditions: readonly InCondition[];
  readonly transit: Working<readonly TransitStep[]>;
}

interface GaugeScheme {
  readonly figures: readonly Figure[];
  readonly uncertainties: Uncertainties | null;
  /** The boat with what is proposed; null without. */
  readonly proposed: ToGauge | null;
}

/** Every limit of the boat with what stands against it: those of each condition, then those of the way down. */
export function gaugesOf(now: ToGauge, scheme: GaugeScheme): readonly Gauge[] {
  return [
    ...now.conditions.flatMap(inCondition => gaugesIn(now.boat, inCondition, scheme)),
    ...transitGauges(now, scheme.proposed),
  ];
}

function gaugesIn(
  boat: Boat,
  inCondition: InCondition,
  { figures, uncertainties, proposed }: GaugeScheme,
): readonly Gauge[] {
  const { condition } = inCondition;
  if (inCondition.state.status === 'empty') return [];
  const { units } = boat;
  const all = figuredIn(boat, inCondition, figures);
  const stays = all.every(one => one.stays);
  const after = proposed?.conditions.find(other => other.condition.id === condition.id) ?? null;
  const allProposed = proposed && after ? figuredIn(proposed.boat, after, figures) : [];
  return figuresOf(condition, figures).flatMap((figure): readonly Gauge[] => {
    const limit = limitIn(figure, condition, boat);
    // Without a mark to hold it against there is no limit.
    if (!limit || figure.aim?.(boat) === null) return [];
    const figured = all.find(one => one.figure === figure);
    const now = figured ? readingOf(figured, offBeyond) : null;
    const proposedFigured = allProposed.find(one => one.figure === figure);
    const standing = figured && stays && uncertainties ? standingOf(figured, uncertainties) : null;
    const { kind, difference } = figure;
    return [
      {
        name: nameIn(condition, figure),
        heading: condition.title,
        title: capital(figure.words),
        kind,
        limit,
        limitWords: limitText(limit, kind, units),
        ways: limit.binds === 'at least' ? null : (difference?.ways ?? kind.ways),
        now,
        why: all.length === 0 ? whyNoRest(inCondition, units) : 'not known',
        sigma: standing?.uncertainty.sigma ?? null,
        sigmaWords:
          standing && /[1-9]/.test(standing.sigma(standing.uncertainty.sigma))
            ? standing.sigma(standing.uncertainty.sigma)
            : null,
        standing:
          standing?.verdict === 'cannot-tell' && figured && (figured.margin ?? -1) >= 0
            ? 'open'
            : figured?.margin !== null && figured?.margin !== undefined && figured.margin >= 0
              ? 'in'
              : 'out',
        proposed: proposedFigured ? readingOf(proposedFigured, offText) : null,
        runsOff: !stays && figure.hangsOnRest === true,
        finding: figure.finding ?? null,
        limitKeys: [figure.limit?.key, condition.id],
      },
    ];
  });
}

const readingOf = (figured: Figured, words: (figured: Figured) => string): Reading | null =>
  figured.off === null ? null : { off: figured.off, shown: words(figured) };

/** The worst of the way down; what the ends ask for is told there. */
function transitGauges(now: ToGauge, proposed: ToGauge | null): readonly Gauge[] {
  const { boat } = now;
  return TRANSIT_FIGURES.flatMap((figure): readonly Gauge[] => {
    const { kind, id, of, badness, heading, isJudgedInRow, finding } = figure;
    const limit = isJudgedInRow === false ? null : transitLimit(figure, boat);
    const worstOf = ({ transit }: ToGauge): number | null => {
      const worst = worstStep(transit.all(), step => badness(of(step)));
      return worst && of(worst);
    };
    const worst = worstOf(now);
    if (!limit || worst === null) return [];
    const after = proposed && worstOf(proposed);
    const reading = (off: number): Reading => ({ off, shown: kind.show(off, boat.units) });
    return [
      {
        name: `${id} on the way down`,
        heading: 'On the way down',
        title: heading,
        kind,
        limit,
        limitWords: limitText(limit, kind, boat.units),
        ways: kind.ways,
        now: reading(worst),
        why: '',
        sigma: null,
        sigmaWords: null,
        standing: marginOf(limit, worst) >= 0 ? 'in' : 'out',
        proposed: after === null ? null : reading(after),
        runsOff: false,
        finding: finding ?? null,
        limitKeys: [figure.limit?.key, 'transit'],
      },
    ];
  });
}
