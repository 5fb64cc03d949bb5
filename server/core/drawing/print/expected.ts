import type { FileUnits } from '../../../../schema/units.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { Boat } from '../../boat/boat.ts';
import { assembleBodies, type Bodies } from '../../bodies/assemble.ts';
import { divesAtAll, submergedOf } from '../../conditions/loadingCondition.ts';
import { waterAt } from '../../conditions/readings.ts';
import type { Submerged } from '../../conditions/submerged.ts';
import type { Surfaced } from '../../conditions/surfaced.ts';
import type { Correction } from '../../corrections/correction.ts';
import { heelWords, massText, percentText, trimWords, volumeText } from '../../wording/numbers.ts';
import { fromStationZero, heightText, stationTape } from '../../wording/places.ts';

/** A boat as far as readings go. */
interface Lying {
  readonly bodies: Bodies;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
}

/** Something to read off the boat, and what it should show. */
interface Expected {
  readonly where: string;
  readonly what: string;
  /** As the boat is, and with what is proposed; null without. */
  readonly now: string;
  readonly proposed: string | null;
}

/** The water is read this part of the length from either end, where the hull is still in it (no source). */
const MARKS = 0.08;

/** What the scale, the tape and the level should show of the boat, one row each, in the order of the day. */
export function expectedReadings(analysis: Analysis, correction: Correction | null): readonly Expected[] {
  const { boat, kept } = analysis;
  const { units, length } = boat;
  const then = correction && { ...correction, bodies: assembleBodies(correction.boat, kept.cache) };
  const stations: readonly [number, number] = [MARKS * length, (1 - MARKS) * length];
  const [fore, aft] = stations.map(station => stationTape(station, units)) as [string, string];
  const from = fromStationZero(units);
  const rows: readonly (readonly [where: string, what: string, of: (lying: Lying) => string | null])[] = [
    ['Bench, dry', 'whole boat weighs', ({ bodies }) => (bodies.mass > 0 ? massText(bodies.mass, units) : null)],
    [
      'Bench, dry',
      `balances at, ${from}`,
      ({ bodies }) => (bodies.mass > 0 ? stationTape(bodies.massMoment[0] / bodies.mass, units) : null),
    ],
    ...(length > 0
      ? ([
          [
            'Afloat',
            `water ${units.origin?.heights === 'waterline' ? 'over the waterline' : 'above the baseline'}, ${fore} ${from}`,
            waterRead(stations[0], units),
          ],
          ['Afloat', `the same, ${aft} ${from}`, waterRead(stations[1], units)],
        ] as const)
      : []),
    ['Afloat', 'heel', ({ surfaced }) => (surfaced.status === 'afloat' ? heelWords(surfaced.attitude.heel) : null)],
    ...(divesAtAll(boat)
      ? UNDER.map(([what, of]) => [isHeld(boat) ? 'Held under' : 'Neutral', what, of(units)] as const)
      : []),
  ];
  return rows.map(([where, what, of]) => ({
    where,
    what,
    now: of(analysis) ?? 'not known',
    proposed: then && (of(then) ?? 'not known'),
  }));
}

const waterRead =
  (station: number, units: FileUnits) =>
  ({ surfaced }: Lying): string | null =>
    surfaced.status === 'afloat' ? heightText(waterAt(station)(surfaced.floating), units) : null;

const isHeld = (boat: Boat): boolean => submergedOf(boat).loading.kind === 'held';

const UNDER: readonly (readonly [what: string, of: (units: FileUnits) => (lying: Lying) => string | null])[] = [
  [
    'tank water',
    units =>
      ({ submerged, bodies }) =>
        submerged.status === 'neutral'
          ? `${volumeText(submerged.ballast / bodies.density, units)}, ${percentText(submerged.fill)} full`
          : null,
  ],
  [
    'trim',
    () =>
      ({ submerged }) =>
        isSteady(submerged) ? trimWords(submerged.trim) : null,
  ],
  [
    'heel',
    () =>
      ({ submerged }) =>
        isSteady(submerged) ? heelWords(submerged.heel) : null,
  ],
];

/** It stays where its trim and heel were read. */
const isSteady = (submerged: Submerged): submerged is Extract<Submerged, { status: 'neutral' }> =>
  submerged.status === 'neutral' && submerged.stable;
