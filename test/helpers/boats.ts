import fc from 'fast-check';

/**
 * A random submarine as a builder would have made it: a thin shell, a watertight tube, a tank in it, equipment, keel lead
 * that leaves the tank roughly two thirds full when neutral, and bays. Lengths mm, masses g.
 */
export interface Sub {
  readonly length: number;
  readonly radius: number;
  readonly tube: { readonly radius: number; readonly from: number; readonly to: number; readonly mass: number };
  readonly shellMass: number;
  readonly tank: { readonly from: number; readonly to: number; readonly kind: string; readonly fill: number };
  readonly battery: { readonly mass: number; readonly station: number; readonly offset: number };
  readonly gear: { readonly mass: number; readonly station: number; readonly offset: number };
  /** Part of the tank that shall be full when neutral; the keel lead is made to suit. */
  readonly neutral: number;
  readonly lead: { readonly from: number; readonly to: number; readonly offset: number };
  readonly salinity: number;
  /** Of the painted waterline, above the keel. */
  readonly waterline: number;
}

const between = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });

export interface SubOptions {
  /** How far off the centreline things may lie, mm. */
  readonly offset: number;
  readonly kinds?: readonly string[];
}

export function arbitrarySub({
  offset,
  kinds = ['piston', 'bladder', 'vented', 'sealed'],
}: SubOptions): fc.Arbitrary<Sub> {
  const aside = fc.integer({ min: -100, max: 100 }).map(part => (part / 100) * offset);
  return fc
    .record({
      length: between(480, 1100),
      slender: between(0.052, 0.07),
      tubeSize: between(0.68, 0.8),
      tankLength: between(0.12, 0.2),
      tankShift: between(-0.02, 0.02),
      kind: fc.constantFrom(...kinds),
      fill: fc.constantFrom(0, 0, 0.05),
      wall: between(1.2, 2.2),
      battery: fc.record({ part: between(0.12, 0.2), station: between(0.28, 0.32), offset: aside }),
      gear: fc.record({ part: between(0.08, 0.14), station: between(0.6, 0.66), offset: aside }),
      lead: fc.record({ middle: between(0.468, 0.492), offset: aside }),
      neutral: between(0.5, 0.8),
      salinity: fc.constantFrom(0, 0, 12, 35),
      waterline: between(0.7, 0.82),
    })
    .map(dna => {
      const { length } = dna;
      const radius = length * dna.slender;
      const tubeRadius = radius * dna.tubeSize;
      const [from, to] = [0.24 * length, 0.7 * length];
      const displaced = (Math.PI * tubeRadius ** 2 * (to - from)) / 1e3;
      const middle = (0.47 + dna.tankShift) * length;
      const holdsStill = dna.kind === 'piston' || dna.kind === 'bladder';
      const part = ({ part, station, offset }: typeof dna.battery) => ({
        mass: part * displaced,
        station: station * length,
        offset,
      });
      return {
        length,
        radius,
        tube: { radius: tubeRadius, from, to, mass: 0.16 * displaced },
        shellMass: 2 * Math.PI * radius * 0.75 * length * dna.wall * 1.6e-3,
        tank: {
          from: middle - (dna.tankLength * length) / 2,
          to: middle + (dna.tankLength * length) / 2,
          kind: dna.kind,
          fill: holdsStill ? 0 : dna.fill,
        },
        battery: part(dna.battery),
        gear: part(dna.gear),
        neutral: dna.neutral,
        lead: {
          from: (dna.lead.middle - 0.17) * length,
          to: (dna.lead.middle + 0.17) * length,
          offset: dna.lead.offset,
        },
        salinity: dna.salinity,
        waterline: dna.waterline * 2 * radius,
      };
    });
}

/** The same boat with port and starboard exchanged. */
export const mirrored = (sub: Sub): Sub => ({
  ...sub,
  battery: { ...sub.battery, offset: -sub.battery.offset },
  gear: { ...sub.gear, offset: -sub.gear.offset },
  lead: { ...sub.lead, offset: -sub.lead.offset },
});

/** Keel lead (g) for the neutral fill, with water of about 1 g/ml: a start for trimming, as on the bench. */
function keelLead({ tube, tank, shellMass, battery, gear, neutral }: Sub): number {
  const area = (Math.PI * tube.radius ** 2) / 1e3;
  const tankRadius = 0.84 * tube.radius;
  const ballast = (neutral * Math.PI * tankRadius ** 2 * (tank.to - tank.from)) / 1e3;
  const dry = tube.mass + shellMass + battery.mass + gear.mass;
  // The shell's wall displaces its mass over 1.6, the lead its own over 11.34.
  return Math.max(20, (area * (tube.to - tube.from) + shellMass / 1.6 - ballast - dry) / (1 - 1 / 11.34));
}

const mm = (value: number): string => `${Number(value.toFixed(2))} mm`;
const g = (value: number): string => `${Number(value.toFixed(2))} g`;
const range = (from: number, to: number): string => `${Number(from.toFixed(2))} to ${mm(to)}`;

/** The boat as its file; `more` are further lines of its payload. */
export function subText(sub: Sub, more = ''): string {
  const { length: l, radius: r, tube, tank, battery, gear, lead } = sub;
  const profile = [
    [0, 0.05],
    [0.03, 0.4],
    [0.1, 0.75],
    [0.22, 1],
    [0.66, 1],
    [0.85, 0.6],
    [1, 0.08],
  ].map(([station, radius]) => `[${mm(station! * l)}, ${mm(radius! * r)}]`);
  const floor = r - tube.radius;
  return `boat: Random
water: { salinity: ${sub.salinity} g/kg, temperature: 15 °C }
hull:
  length: ${mm(l)}
  waterline: ${mm(sub.waterline)}
  shells:
    - { name: shell, material: fibreglass, mass: ${g(sub.shellMass)}, profile: [${profile.join(', ')}], height: ${mm(r)} }
  compartments:
    - { name: tube, mass: ${g(tube.mass)}, round: ${mm(2 * tube.radius)}, station: ${range(tube.from, tube.to)}, height: ${mm(r)} }
  tanks:
    - { name: tank, in: tube, round: ${mm(1.68 * tube.radius)}, station: ${range(tank.from, tank.to)}, height: ${mm(r)}, kind: ${tank.kind}, fill: ${100 * tank.fill} % }
payload:
  - { name: battery, mass: ${g(battery.mass)}, station: ${mm(battery.station)}, offset: ${mm(battery.offset)}, height: ${mm(floor + 0.45 * tube.radius)}, in: tube }
  - { name: gear, mass: ${g(gear.mass)}, station: ${mm(gear.station)}, offset: ${mm(gear.offset)}, height: ${mm(floor + 0.7 * tube.radius)}, in: tube }
  - { name: keel lead, material: lead, mass: ${g(keelLead(sub))}, station: ${range(lead.from, lead.to)}, offset: ${mm(lead.offset)}, height: ${range(0.03 * r + 1, 0.03 * r + 7)} }
${more}bays:
  - { name: keel forward, takes: lead, station: ${range(0.1 * l, 0.235 * l)}, offset: ${range(-0.5 * r, 0.5 * r)}, height: ${range(0.3 * r, 0.3 * r + 8)} }
  - { name: keel aft, takes: lead, station: ${range(0.705 * l, 0.84 * l)}, offset: ${range(-0.5 * r, 0.5 * r)}, height: ${range(0.4 * r, 0.4 * r + 8)} }
  - { name: tube floor, in: tube, takes: lead, station: ${range(0.6 * l, 0.68 * l)}, offset: ${range(-0.35 * tube.radius, 0.35 * tube.radius)}, height: ${range(floor + 5, floor + 13)} }
  - { name: deck aft, takes: foam, station: ${range(0.71 * l, 0.82 * l)}, offset: ${range(-0.3 * r, 0.3 * r)}, height: ${range(1.2 * r, Math.min(1.2 * r + 26, 1.75 * r))} }
stock:
  lead: { strip: 12 x 6 mm }
  foam: { density: 30 kg/m3, strip: 25 x 12 mm }
limits: { trim: 0.5°, heel: 1°, draft: 3 mm, gm: 2 mm, bg: 2 mm, fill: 30 to 95 % }
`;
}
