import { describe, expect, test } from 'vitest';
import type { SlotShare } from '../../server/core/corrections/balance/program.ts';
import { type Slot, slotSets } from '../../server/core/corrections/room/slots.ts';
import { cutPiece } from '../../server/core/corrections/search/rounding.ts';
import { cutLines } from '../../server/core/report/bench.ts';
import { analysed, heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

/** The bow bay of the probe, its ends between the marks of the tape. */
const { boat } = analysed(probe(['station: 20 to 120 mm', 'station: 20.4 to 60.7 mm']));
const slot = slotSets(boat, false)[0]!.find(({ bay }) => bay.name === 'bow bay')!;
const METRIC = boat.units;
const INCHES = { ...METRIC, length: 'in' } as const;

/** A piece of so many millimetres about the middle of the bay. */
const share = (millimetres: number, of: Slot = slot): SlotShare => ({
  slot: of,
  mass: (millimetres / 1000) * of.massPerLength,
  station: 0.04055,
  offset: 0,
  counts: [],
});
const endsOf = (millimetres: number, units = METRIC) =>
  cutPiece(share(millimetres), units)!.station.map(metres => Number((metres * 1000).toFixed(4)));

describe('a piece as long as its bay', () => {
  test.each([
    ['ends on the marks of the tape while there are marks', 39.2, [21, 60]],
    ['ends where the bay does, when that is what it takes', 40.3, [20.4, 60.7]],
  ])('%s', (_, millimetres, ends) => {
    expect(endsOf(millimetres)).toEqual(ends);
  });

  // Of 41.5 mm there is more than between the marks that are in the bay.
  test.each([40.3, 41.5])('by an inch tape ends on its sixteenths: %d mm', millimetres => {
    for (const end of endsOf(millimetres, INCHES as typeof METRIC))
      expect((end / 25.4) * 16).toBeCloseTo(Math.round((end / 25.4) * 16), 4);
  });

  test('is written in the cut list as the bay is', () => {
    const lines = cutLines(cutPiece(share(40.3), METRIC)!, 'bow', boat);
    expect(lines[0]).toContain('bow: 40.3 mm of 12 x 6 mm lead strip');
    expect(lines[1]).toContain('from 20.4 mm to 60.7 mm aft of the bow tip');
  });
});

/** A boat whose tank is too full: four pieces of lead in the bay forward do it, and so do three. */
const LIGHT = boatText`
  boat: Light
  water: { kind: sea, temperature: 12 °C }
  hull:
    length: 900 mm
    waterline: 55.5 mm
    shells:
      - { name: outer hull, material: fibreglass, density: 1800 kg/m3, mass: 520 g, height: 46 mm, profile: [[0, 0], [20, 18], [60, 33], [130, 44], [250, 46], [600, 46], [720, 38], [820, 22], [900, 0]] }
      - { name: sail, material: abs, density: 1050 kg/m3, mass: 46 g, station: 300 to 380 mm, offset: -9 to 9 mm, height: 88 to 140 mm }
    compartments:
      - { name: cylinder, mass: 410 g, round: 76 mm, station: 200 to 680 mm, height: 46 mm }
    tanks:
      - { name: main, in: cylinder, round: 70 mm, station: 305.5 to 565.5 mm, height: 46 mm, kind: bladder }
  payload:
    - { name: battery, mass: 262 g, station: 241.5 to 311.5 mm, height: 26 mm, in: cylinder, offset: 0 mm }
    - { name: motor and gear, mass: 236 g, station: 640 mm, height: 44 mm, in: cylinder }
    - { name: shaft, material: steel, mass: 31 g, density: 7850 kg/m3, station: 680 to 890 mm, height: 46 mm }
    - { name: keel lead, material: lead, density: 11340 kg/m3, mass: 168 g, station: 240 to 620 mm, height: 2 to 6 mm }
    - { name: block forward, material: foam, density: 30 kg/m3, box: 30 x 24 mm, station: 120 to 190 mm, height: 58 mm }
    - { name: block aft, material: foam, density: 30 kg/m3, box: 24 x 20 mm, station: 690 to 760 mm, offset: 3 mm, height: 66 mm }
  bays:
    - { name: keel forward, takes: lead, station: 60 to 235 mm, offset: -8 to 8 mm, height: 4 to 12 mm }
    - { name: keel aft, takes: lead, station: 625 to 760 mm, offset: -8 to 8 mm, height: 10 to 18 mm }
  stock: { lead: { pieces: [5 g, 10 g] } }
  limits: { trim: { surfaced: 0.5°, submerged: 2°, transit: 40° }, heel: 1°, draft: 3 mm, fill: 30 to 96 %, gm: 2.5 mm, bg: 2.5 mm }
`;

test('no four pieces are offered where three do', () => {
  const [first] = heard(LIGHT).corrections.all();
  // The last twentieth of the tank’s limits is all that is left, and it says so.
  expect(first!.title).toBe('Insert 3 x 10 g of lead in “keel forward”: both conditions only just within limits');
});
