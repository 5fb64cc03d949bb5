import { describe, expect, test } from 'vitest';
import { broughtBy } from '../../server/core/corrections/balance/brought.ts';
import { cheapestPieces } from '../../server/core/corrections/balance/program.ts';
import { type Reach, reachOf } from '../../server/core/corrections/balance/reach.ts';
import { type Aim, type BalanceRow, rowOf } from '../../server/core/corrections/balance/row.ts';
import { reaches } from '../../server/core/corrections/propose.ts';
import { findSlots, type Piece, type Slot } from '../../server/core/corrections/room/slots.ts';
import { balancesOf } from '../../server/core/corrections/search/balances.ts';
import { between, randomFrom } from '../accuracy/random.ts';
import { analysed } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { boatText } from '../helpers/boatText.ts';
import { boatToTrimOf } from '../helpers/boatToTrim.ts';
import { isLong } from '../helpers/long.ts';
import { PROBE } from '../helpers/probe.ts';

const BOATS = isLong ? 100 : 20;

/** Twice the area of a triangle, positive when it turns to the left. */
const turn = (a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]) =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** The same set with its axes in units of the limits' slack. */
const inSlacks = ({ polygon }: Reach, mass: Aim, moment: Aim) =>
  polygon.map(([m, q]) => [m / mass.slack, q / moment.slack] as const);

/** Any piece that fits the slot, at random. */
function anyPiece(slot: Slot, random: () => number): Piece {
  const room = slot.station[1] - slot.station[0];
  const length = between(random, 0, room);
  const start = between(random, slot.station[0], slot.station[1] - length);
  const offset = between(random, slot.offset[0], slot.offset[1]);
  return { slot, mass: length * slot.massPerLength, station: [start, start + length], offset, counts: [] };
}

const cases = Array.from({ length: BOATS }, (_, seed) => {
  const boatToTrim = boatToTrimOf(boatOutOfTrim(seed).text);
  const rows = balancesOf(boatToTrim, 'both', 0.75)(null);
  return {
    seed,
    boatToTrim,
    slots: findSlots(boatToTrim.boat),
    draft: rowOf(rows, 'surfaced', 'draft')!,
    trims: [rowOf(rows, 'surfaced', 'trim')!, rowOf(rows, 'submerged', 'trim')!],
  };
});

describe('the reach of the bays', { timeout: 60_000 }, () => {
  test('is convex, and has nothing at all in it', () => {
    for (const { boatToTrim, draft, trims } of cases) {
      const { surfaced, submerged } = reaches(boatToTrim);
      for (const [reach, trim] of [
        [surfaced!, trims[0]!],
        [submerged!, trims[1]!],
      ] as const) {
        const points = inSlacks(reach, draft.wanted as Aim, trim.wanted as Aim);
        for (const [i, point] of points.entries()) {
          const [next, after] = [points[(i + 1) % points.length]!, points[(i + 2) % points.length]!];
          expect(turn(point, next, after)).toBeGreaterThan(-1e-9);
        }
        // No pieces: nothing brought.
        expect(points.every((point, i) => turn(point, points[(i + 1) % points.length]!, [0, 0]) > -1e-9)).toBe(true);
      }
    }
  });

  test('is told in every condition of the boat', () => {
    const own = boatText`
      ${PROBE}conditions:
        - { name: awash, tanks: [{ tank: main tank, fill: 40 % }], limits: { trim: 2° } }
    `;
    expect(Object.keys(reaches(analysed(own).boatToTrim!))).toEqual(['surfaced', 'submerged', 'awash']);
  });

  test('holds whatever pieces one lays in the bays', () => {
    const random = randomFrom(4);
    for (const { seed, slots, draft, trims } of cases) {
      for (const trim of trims) {
        const [massAim, momentAim] = [draft.wanted as Aim, trim.wanted as Aim];
        const points = inSlacks(reachOf(slots, draft, trim), massAim, momentAim);
        for (let n = 0; n < 10; n++) {
          const pieces = slots.filter(() => random() < 0.6).map(slot => anyPiece(slot, random));
          const brought = (row: BalanceRow) => pieces.reduce((sum, piece) => sum + broughtBy(piece, row), 0);
          const laid = [brought(draft) / massAim.slack, brought(trim) / momentAim.slack] as const;
          const least = Math.min(...points.map((point, i) => turn(point, points[(i + 1) % points.length]!, laid)));
          // The round edge bulges out of the polygon by less than a hundredth of the slack.
          const size = Math.max(...points.map(([m, q]) => Math.hypot(m, q)));
          expect({ seed, least }).toMatchObject({
            least: expect.toSatisfy((value: number) => value > -0.011 * 2 * size),
          });
        }
      }
    }
  });

  test('holds what is needed just when the programme finds pieces for those two balances', () => {
    /** In slacks: nearer to the edge the programme's five tangents and the round edge itself may differ. */
    const NEAR = 0.4;
    const tally = { inside: 0, outside: 0, near: 0 };
    for (const [i, { seed, slots, draft, trims }] of cases.entries()) {
      const random = randomFrom(1000 + i);
      for (const trim of trims) {
        // All of the bays, and some of them.
        for (const some of [slots, slots.filter(() => random() < 0.5)]) {
          const exact = (row: BalanceRow): BalanceRow => {
            const { value, slack } = row.wanted as Aim;
            return { ...row, wanted: { value, slack: 1e-3 * slack, off: [{ size: 1e-3 * slack, price: 0 }] } };
          };
          const reach = reachOf(some, draft, trim);
          expect(reach.needed).toEqual([(draft.wanted as Aim).value, (trim.wanted as Aim).value]);
          expect(reach.isInside).toBe(reach.margin >= 0);
          if (Math.abs(reach.margin) < NEAR) {
            tally.near++;
            continue;
          }
          const found = cheapestPieces(some, [exact(draft), exact(trim)]) !== null;
          expect({ seed, found, margin: reach.margin }).toEqual({ seed, found: reach.isInside, margin: reach.margin });
          if (found) tally.inside++;
          else tally.outside++;
        }
      }
    }
    expect(tally.inside + tally.outside).toBeGreaterThan(2 * BOATS);
    expect(Math.min(tally.inside, tally.outside)).toBeGreaterThan(0.4 * BOATS);
  });
});
