import type { Boat } from '../boat/boat.ts';
import type { TransitStep } from '../conditions/transit.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import { type Allowed, allowedBy } from './allowed.ts';
import { HEEL, type Kind, LENGTH, TRIM } from './kind.ts';
import { atLeast, type Limit, type Limiting, within } from './limit.ts';

/** A figure of the boat on its way down, of which the worst counts. */
export interface TransitFigure {
  readonly id: 'trim' | 'heel' | 'gm' | 'gmLongitudinal';
  readonly kind: Kind;
  readonly of: (step: TransitStep) => number;
  /** How bad it is: the worst step has the most. */
  readonly badness: (value: number) => number;
  /** "Most trim". */
  readonly heading: string;
  readonly limit?: Limiting;
  /** False where its row shows no limit: the ends of the way are judged by their own. */
  readonly isJudgedInRow?: false;
  readonly finding?: FindingCode;
}

/** Everything that is read of the way down, in the order in which it is shown. */
export const TRANSIT_FIGURES: readonly TransitFigure[] = [
  {
    id: 'trim',
    kind: TRIM,
    of: step => step.trim,
    badness: Math.abs,
    heading: 'Most trim',
    limit: within('trim'),
    finding: 'transit-trim',
  },
  {
    id: 'heel',
    kind: HEEL,
    of: step => step.heel,
    badness: Math.abs,
    heading: 'Most heel',
    limit: within('heel'),
    finding: 'transit-heel',
  },
  {
    id: 'gm',
    kind: LENGTH,
    of: step => step.gm,
    badness: gm => -gm,
    heading: 'Least GM',
    limit: atLeast('gm'),
    isJudgedInRow: false,
    finding: 'transit-gm',
  },
  {
    id: 'gmLongitudinal',
    kind: LENGTH,
    of: step => step.gmLongitudinal,
    badness: gm => -gm,
    heading: 'Least longitudinal GM',
  },
];

/** What is asked on the way down; of the metacentric height the less of what the two ends ask. */
const askedInTransit = ({ limits: { transit, surfaced, submerged } }: Pick<Boat, 'limits'>) => ({
  ...transit,
  gm: Math.min(surfaced.gm, submerged.bg),
});

export const transitLimit = ({ limit }: TransitFigure, boat: Pick<Boat, 'limits'>): Limit | null =>
  limit?.(askedInTransit(boat)) ?? null;

/** What the limits allow a figure on the way. */
export function allowedInTransit(id: TransitFigure['id'], boat: Pick<Boat, 'limits'>): Allowed {
  const figure = TRANSIT_FIGURES.find(each => each.id === id);
  return allowedBy(figure ? transitLimit(figure, boat) : null);
}
