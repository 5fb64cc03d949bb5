import { createDescriber } from '../../schema/describe.ts';
import type { BoatReading } from '../../server/core/boat/readBoat.ts';
import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { readBoat } from '../helpers/atOnce.ts';
import { textLines } from '../helpers/boatText.ts';
import type { TrimPiece } from './family.ts';
import { floatByCode } from './figures.ts';
import type { Plan, PlanBay } from './plan.ts';

const describer = createDescriber();
/** Schemas are costly to make, so made once. */
const { kept } = readBoat(readSyntax(textLines(['boat: Any'])), describer);

export const readText = (text: string): BoatReading => readBoat(readSyntax(text), describer, kept);

/** What is still free about a plan. Sizes mm, masses g. */
interface Fitting {
  readonly lead: { readonly mass: number; readonly station: number; readonly height: number } | null;
  /** Capacity of all tanks, ml. */
  readonly capacity: number;
  readonly waterline: readonly [number, number] | null;
  readonly pieces: readonly TrimPiece[];
}

const LEAD = 11340;
/** Of all that it could push aside, what the boat pushes aside afloat. */
const FLOATING = 0.91;
/** How often the keel lead is laid anew: at the first time the boat may not hang at all. */
const ROUNDS = 5;

/**
 * Arranges a plan about its trimmed state: how heavy the keel lead, where it lies, how high, how long the tanks, and at last
 * where the waterline is painted. Null where that cannot be.
 */
export function arrange(
  plan: Plan,
  { pieces, fill }: { readonly pieces: readonly TrimPiece[]; readonly fill: number },
): { readonly text: string; readonly mass: number } | null {
  let capacity = 0.14 * plan.mass;
  let lead = { mass: 0.2 * plan.mass, station: plan.length / 2, height: plan.keel.height[0] };
  for (let round = 0; round < ROUNDS; round++) {
    const reading = readText(textOf(plan, { lead, capacity, waterline: null, pieces }));
    if (reading.findings.some(({ severity }) => severity === 'error')) throw new Error(reading.findings[0]!.message);
    const { density, volume, volumeMoment, mass, massMoment } = assembleBodies(reading.boat, emptyCache());
    // Lead in the water carries this much of its own weight.
    const wet = plan.keel.inside === null ? density / LEAD : 0;
    const more = (FLOATING * density * volume - mass) / (1 - FLOATING * wet);
    const buoyancy = density * volume + wet * more;
    const ballast = buoyancy - mass - more;
    // Where the lead has to lie for the tank water, where it will be, to bring G under B.
    const water = plan.tanks.reduce((sum, { middle, part }) => sum + part * middle, 0) * 1e-3;
    const moment = density * volumeMoment[0] - massMoment[0] - ballast * water;
    const net = (lead.mass * 1e-3 + more) * (1 - wet);
    if (net <= 0.02 * mass) return null;
    const station = (moment + lead.mass * lead.station * 1e-6 * (1 - wet)) / net;
    const { hanging } = floatByCode(reading.boat);
    const higher = hanging ? ((hanging.bgLeft * 1e3 - plan.bg) * buoyancy) / net : 0;
    const [low, high] = plan.keel.height;
    const height = Math.min(high, Math.max(low, lead.height + higher));
    lead = { mass: lead.mass + more * 1e3, station: station * 1e3, height };
    capacity = (ballast / density / fill) * 1e6;
  }
  const half = plan.keel.length / 2;
  if (lead.station - half < 0.08 * plan.length || lead.station + half > 0.9 * plan.length) return null;
  const { boat } = readText(textOf(plan, { lead, capacity, waterline: null, pieces }));
  const { afloat, hanging } = floatByCode(boat);
  if (!afloat || !hanging?.stable || hanging.bgLeft * 1e3 < plan.leastBg + 0.5 || afloat.gm * 1e3 < plan.leastBg)
    return null;
  if (Math.abs(hanging.trim) > 0.02 || Math.abs(afloat.trim) > 0.06) return null;
  const rise = (plan.length / 2) * Math.tan(afloat.trim);
  const waterline = [afloat.draft * 1e3 - rise, afloat.draft * 1e3 + rise] as const;
  return {
    text: textOf(plan, { lead, capacity, waterline, pieces: [] }),
    mass: 1e3 * assembleBodies(boat, emptyCache()).mass,
  };
}

function textOf(plan: Plan, { lead, capacity, waterline, pieces }: Fitting): string {
  const mm = (value: number) => Number(value.toFixed(1));
  const { keel, strips, care } = plan;
  const tolerance = (text: string) => (care === 'unwritten' ? '' : ` ± ${text}`);
  const within = (millimetres: number) => `${(millimetres * plan.fine).toFixed(2)} mm`;
  const half = keel.length / 2;
  const inside = (name: string | null) => (name === null ? '' : `, in: ${name}`);
  const size = (mass: number) =>
    care === 'unwritten'
      ? `box: ${keel.breadth} x ${(mass / (LEAD * 1e-6 * keel.breadth * keel.length)).toFixed(2)} mm`
      : `offset: ${-keel.breadth / 2} to ${keel.breadth / 2} mm ± ${within(0.2)}`;
  const keelLead = lead
    ? [
        `{ name: keel lead, material: lead, mass: ${lead.mass.toFixed(1)} g${tolerance(`${Math.max(0.5, 0.001 * lead.mass).toFixed(1)} g`)}, station: ${mm(lead.station - half)} to ${mm(lead.station + half)} mm${tolerance(within(0.4))}, ${size(lead.mass)}, height: ${mm(lead.height)} mm${tolerance(within(0.3))}${inside(keel.inside)} }`,
      ]
    : [];
  const tanks = plan.tanks.map(({ name, inside: within, middle, round, kind, cells, part }) => {
    const long = (capacity * part * 1e3) / ((Math.PI / 4) * round ** 2);
    return `{ name: ${name}${inside(within)}, round: ${round} mm, station: ${mm(middle - long / 2)} to ${mm(middle + long / 2)} mm, height: ${mm(plan.radius)} mm, kind: ${kind}${cells > 1 ? `, cells: ${cells}` : ''} }`;
  });
  const list = (lines: readonly string[], indent: string) =>
    lines.map(line => textLines([`${indent}- ${line}`])).join('');
  return `boat: ${plan.layout} of ${plan.length} mm
water: ${plan.water}
hull:
  length: ${plan.length} mm
${waterline ? textLines([`  waterline: { bow: ${mm(waterline[0])} mm, stern: ${mm(waterline[1])} mm }`]) : ''}  shells:
${list(plan.shells, '    ')}  compartments:
${list(plan.compartments, '    ')}  tanks:
${list(tanks, '    ')}payload:
${list([...plan.payload, ...keelLead, ...pieces.map((piece, i) => pieceText(piece, i, strips[piece.bay.takes]))], '  ')}bays:
${list(plan.bays.map(bayText), '  ')}stock:
  lead: { strip: ${strips.lead[0]} x ${strips.lead[1]} mm }
  foam: { density: 30 kg/m3, strip: ${strips.foam[0]} x ${strips.foam[1]} mm }
limits: ${plan.limits}
`;
}

const pieceText = (
  { bay, mass, station }: TrimPiece,
  i: number,
  [breadth, depth]: readonly [number, number],
): string => {
  const height = bay.takes === 'lead' ? bay.height[0] + depth / 2 : bay.height[1] - depth / 2;
  const half = mass / (breadth * depth * (bay.takes === 'lead' ? LEAD : 30) * 1e-6) / 2;
  return `{ name: piece ${i + 1}, material: ${bay.takes}, box: ${breadth} x ${depth} mm, mass: ${mass.toFixed(3)} g, station: ${(station - half).toFixed(2)} to ${(station + half).toFixed(2)} mm, height: ${height.toFixed(2)} mm${bay.inside === null ? '' : `, in: ${bay.inside}`} }`;
};

const bayText = ({ name, takes, inside, station, half, height }: PlanBay): string =>
  `{ name: ${name}, takes: ${takes}, station: ${station[0]} to ${station[1]} mm, offset: ${-half} to ${half} mm, height: ${height[0]} to ${height[1]} mm${inside === null ? '' : `, in: ${inside}`} }`;
