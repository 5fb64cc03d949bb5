import { boatText } from '../helpers/boatText.ts';

/**
 * The text of a boat that floats and dives, with `count` parts of every kind: dry ones in the cylinder, lead strips along
 * the keel, blocks of foam and round rods about the waterline, lumps known by volume. All weigh the same together
 * whatever their number, so that boats of different sizes float alike.
 */
export function boatOfParts(count: number): string {
  const parts = Array.from({ length: count }, (_, i) => partText(i, count));
  return boatText`
    ${HULL}payload:
    ${parts.join('\n')}
    ${REST}`;
}

const HULL = `boat: Bench
water: { kind: fresh, temperature: 18 °C }
hull:
  length: 900 mm
  waterline: 91 mm
  shells:
    - name: outer hull
      material: fibreglass
      mass: 640 g
      profile: [[0, 0], [20, 20], [60, 34], [120, 46], [220, 54], [600, 54], [720, 44], [830, 24], [900, 4]]
      height: 54 mm
    - name: sail
      material: polystyrene
      mass: 74 g
      box: 24 x 52 mm
      station: 280 to 370 mm
      height: 132 mm
  compartments:
    - name: dry cylinder
      material: acrylic
      mass: 480 g
      round: 86 mm
      station: 210 to 650 mm
      height: 56 mm
  tanks:
    - name: main ballast
      in: dry cylinder
      round: 80 mm
      station: 380 to 500 mm
      height: 56 mm
      kind: sealed
      cells: 2
`;

const REST = `bays:
  - { name: keel forward, takes: lead, station: 80 to 170 mm, offset: -12 to 12 mm, height: 20 to 28 mm }
  - { name: keel aft, takes: lead, station: 650 to 750 mm, offset: -12 to 12 mm, height: 24 to 32 mm }
  - { name: deck aft, takes: foam, station: 645 to 760 mm, offset: -16 to 16 mm, height: 58 to 74 mm }
stock:
  lead: { strip: 12 x 6 mm }
  foam: { density: 30 kg/m3, strip: 25 x 18 mm }
limits: { trim: 0.5°, heel: 1°, draft: 1.5 mm, fill: 40 to 85 %, gm: 4 mm, bg: 5 mm }
`;

/** Part number `i` of `count`; five kinds in turn, spread over the boat by the golden section. */
function partText(i: number, count: number): string {
  const along = (i * 0.618034) % 1;
  const kind = i % 5;
  const gramsOf = (grams: number): string => ((grams * 5) / count).toFixed(4);
  if (kind === 0) {
    const at = (230 + 400 * along).toFixed(1);
    return `  - { name: dry part ${i}, mass: ${gramsOf(700)} g, station: ${at} mm, height: 40 mm, in: dry cylinder }`;
  }
  if (kind === 1) {
    const at = 162 + 450 * along;
    return `  - { name: lead ${i}, material: lead, mass: ${gramsOf(1000)} g, station: ${at.toFixed(1)} to ${(at + 60).toFixed(1)} mm, height: 4 to 10 mm }`;
  }
  // Lengths shrink with the number of parts, so that foam and rods displace as much together.
  const length = (60 * 40) / count;
  const at = 180 + 480 * along;
  const range = `${at.toFixed(2)} to ${(at + length).toFixed(2)} mm`;
  if (kind === 2) {
    return `  - { name: foam ${i}, material: foam, box: 20 x 14 mm, station: ${range}, offset: ${(i % 2) * 24 - 12} mm, height: ${70 + (i % 30)} mm }`;
  }
  if (kind === 3) {
    return `  - { name: rod ${i}, material: acetal, round: 8 mm, station: ${range}, offset: ${(i % 2) * 40 - 20} mm, height: ${60 + (i % 40)} mm }`;
  }
  return `  - { name: lump ${i}, mass: ${gramsOf(60)} g, volume: ${((40 * 5) / count).toFixed(4)} ml, station: ${at.toFixed(1)} mm, height: ${40 + (i % 50)} mm }`;
}
