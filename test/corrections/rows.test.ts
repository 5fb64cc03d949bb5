import { describe, expect, it } from 'vitest';
import type { BalanceRow } from '../../server/core/corrections/balance/row.ts';
import { findSlots, type Slot } from '../../server/core/corrections/room/slots.ts';
import { balancesOf } from '../../server/core/corrections/search/balances.ts';
import { heard } from '../helpers/analysed.ts';
import { probe } from '../helpers/probe.ts';

/** All of each limit may be used up. */
const WHOLE = 1;

const rowsOf = (text: string): readonly BalanceRow[] => balancesOf(heard(text).boatToTrim!, 'both', WHOLE)(null);

/** What pieces must bring: a figure to reach, or what is missing of the least. */
const wantedOf = ({ wanted }: BalanceRow): number => ('value' in wanted ? wanted.value : wanted.least);

/** kg: little enough to leave the boat as it is. */
const PIN = 1e-4;

/** A pin of the slot's material with its middle so far along and across the slot's room (0..1), as a line of the file. */
function pinIn({ bay, density, station, offset, height }: Slot, along: number, across: number): string {
  const between = ([from, to]: readonly [number, number], share: number) => 1e3 * (from + share * (to - from));
  const where = bay.inside === null ? `density: ${density} kg/m3` : `in: ${bay.inside}`;
  return `{ name: pin, mass: ${1e3 * PIN} g, station: ${between(station, along)} mm, offset: ${between(offset, across)} mm, height: ${1e3 * height} mm, ${where} }`;
}

const withPin = (text: string, slot: Slot, along: number, across: number): string =>
  text.replace('bays:', [`  - ${pinIn(slot, along, across)}`, 'bays:'].join('\n'));

const sponson = '{ name: sponson, mass: 40 g, station: 100 to 250 mm, offset: 50 to 70 mm, height: 20 to 70 mm }';
const outside = [
  '{ name: deck bay, takes: lead, station: 40 to 90 mm, offset: -30 to 40 mm, height: 72 to 84 mm }',
  '{ name: keel bay, takes: lead, station: 60 to 200 mm, offset: -40 to 20 mm, height: -14 to -4 mm }',
];

describe('what a piece does to a balance is what the boat lacks less with it aboard (finite differences)', () => {
  it.each<readonly [what: string, text: string]>([
    ['a barge', probe()],
    [
      'listing, and down by the bow',
      probe(['offset: -50 to 50 mm', 'offset: -50 to 56 mm'], ['150 to 250', '140 to 240']),
    ],
    ['with a waterline that rises aft', probe(['waterline: 50 mm', 'waterline: { bow: 46 mm, stern: 53 mm }'])],
    ['broader to starboard', probe(['  tanks:', [`    - ${sponson}`, '  tanks:'].join('\n')])],
    ['with room above and below the hull', probe(['bays:', ['bays:', ...outside.map(bay => `  - ${bay}`)].join('\n')])],
  ])('%s', (_, text) => {
    const before = rowsOf(text);
    const slots = findSlots(heard(text).boat);
    expect(slots.length).toBeGreaterThan(1);
    for (const slot of slots) {
      for (const [along, across] of [
        [0, 0],
        [1, 0],
        [0, 1],
      ] as const) {
        const after = rowsOf(withPin(text, slot, along, across));
        for (const [i, row] of before.entries()) {
          const { perMass, perAft, perStarboard } = row.effectOf(slot);
          const aft = along * (slot.station[1] - slot.station[0]);
          const aside = across * (slot.offset[1] - slot.offset[0]);
          const less = (wantedOf(row) - wantedOf(after[i]!)) / PIN;
          const what = `${row.condition.id} ${row.figure} of ${slot.bay.name}`;
          expect({ what, less }).toEqual({
            what,
            less: expect.closeTo(perMass + perAft * aft + perStarboard * aside, 3),
          });
        }
      }
    }
  });
});

describe('a limit of tilt is as much moment as it takes to tilt the boat so far (Δ·GM·sin of it; from memory)', () => {
  // The free surfaces of the tank take stiffness off; in one piece they would leave none.
  const boat = heard(probe(['kind: bladder', ['kind: vented', 'cells: 8'].join('\n      ')], ['bg: 3 mm', 'bg: 1 mm']))
    .boatToTrim!;
  const { surfaced, submerged } = boat;
  if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') throw new Error('the probe floats and dives');
  const rows = balancesOf(boat, 'both', WHOLE)(null);
  const submergedMass = boat.bodies.density * boat.bodies.volume;
  it.each<readonly [condition: string, figure: string, degrees: number, mass: number, stiffness: number]>([
    ['surfaced', 'trim', 0.5, boat.bodies.mass, surfaced.gmLongitudinal],
    ['surfaced', 'heel', 1, boat.bodies.mass, surfaced.gm],
    ['submerged', 'trim', 0.5, submergedMass, submerged.bgEffectiveLongitudinal],
    ['submerged', 'heel', 1, submergedMass, submerged.bgEffective],
  ])('%s %s', (condition, figure, degrees, mass, stiffness) => {
    const { wanted } = rows.find(row => row.condition.id === condition && row.figure === figure)!;
    const moment = (mass * stiffness * (degrees * Math.PI)) / 180;
    // The sine of so little is the angle.
    expect('slack' in wanted && wanted.slack / moment).toBeCloseTo(1, 3);
  });
});
