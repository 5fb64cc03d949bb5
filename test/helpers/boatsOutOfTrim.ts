import { createDescriber } from '../../schema/describe.ts';
import type { KeptEntries } from '../../server/core/boat/sectionReader.ts';
import { assembleBodies, type Bodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { between, randomFrom } from '../accuracy/random.ts';
import { readBoat } from './atOnce.ts';
import { boatText, textLines } from './boatText.ts';

/** What a boat is drawn with; everything else is the seed's. */
export interface BoatOptions {
  readonly stock?: 'strip' | 'pieces' | 'block';
  readonly units?: 'metric' | 'imperial';
}

/**
 * A boat out of trim that its bays and stock can put right, and how that is known: `trimmed` is the same boat with pieces
 * in its bays, drawn by the seed, about which everything else was arranged so that it floats on its painted waterline and
 * hangs level, with the tank as full as it should be.
 */
export interface DrawnBoat {
  readonly text: string;
  readonly trimmed: string;
}

type Draw = (from: number, to: number) => number;

/** A submarine like a builder's, in millimetres and grams drawn by a seed. */
export function boatOutOfTrim(seed: number, options: BoatOptions = {}): DrawnBoat {
  const random = randomFrom(seed);
  const draw: Draw = (from, to) => Math.round(between(random, from, to) * 10) / 10;
  const plan = planOf(draw, random, options);
  // Everything is arranged about the trimmed boat: how heavy the keel lead is, how long the tank, where the lead lies so
  // that G comes under B, and at last the waterline is painted where the boat floats.
  const bare = read(textOf(plan, { lead: null, tank: 100, waterline: null, withPieces: true }));
  const { density, volume, volumeMoment, mass, massMoment } = bare.bodies;
  const net = 1 - density / LEAD;
  const floating = between(random, 0.89, 0.93);
  const lead = (floating * density * volume - mass) / (1 - (floating * density) / LEAD);
  const ballast = density * volume - mass - lead * net;
  const area = (Math.PI * plan.tank.round ** 2) / 4;
  const fill = between(random, 0.55, 0.72);
  const tank = Math.round((ballast / density / fill / area) * 1e10) / 10;
  const water = plan.tank.middle + (plan.tank.kind === 'piston' ? (tank * (fill - 1)) / 2 : 0);
  const at = ((density * volumeMoment[0] - massMoment[0] - ballast * water * 1e-3) / (lead * net)) * 1e3;
  const fitted = { lead: { mass: lead * 1e3, at }, tank, withPieces: true };
  const afloat = floatSurfaced(
    read(textOf(plan, { ...fitted, waterline: null }), bare.kept).bodies,
    plan.length * 1e-3,
  );
  if (afloat.status !== 'afloat') throw new Error(`boat ${seed} does not float: ${afloat.status}`);
  const waterline = [afloat.draftBow * 1e3, afloat.draftStern * 1e3] as const;
  return {
    text: textOf(plan, { ...fitted, waterline, withPieces: false }),
    trimmed: textOf(plan, { ...fitted, waterline }),
  };
}

const LEAD = 11340;
const FOAM = 30;

const describer = createDescriber();
/** Schemas are costly to make, so made once for each of the units. */
const METRIC = readBoat(readSyntax('boat: Any'), describer).kept;
const IMPERIAL_UNITS = 'units: { length: in, mass: oz }';
const IMPERIAL = readBoat(readSyntax(IMPERIAL_UNITS), describer).kept;

function read(
  text: string,
  kept: KeptEntries = text.includes(IMPERIAL_UNITS) ? IMPERIAL : METRIC,
): { readonly bodies: Bodies; readonly kept: KeptEntries } {
  const reading = readBoat(readSyntax(text), describer, kept);
  return { bodies: assembleBodies(reading.boat, emptyCache()), kept: reading.kept };
}

interface BayPlan {
  readonly name: string;
  readonly takes: 'lead' | 'foam';
  readonly inside: boolean;
  readonly station: readonly [number, number];
  readonly half: number;
  readonly height: readonly [number, number];
}

interface Plan {
  readonly name: string;
  readonly length: number;
  readonly hull: string;
  readonly tank: {
    readonly round: number;
    readonly middle: number;
    readonly height: number;
    readonly kind: string;
    readonly text: string;
  };
  readonly payload: readonly string[];
  readonly lead: readonly [breadth: number, length: number];
  readonly bays: readonly BayPlan[];
  readonly pieces: readonly string[];
  readonly head: string;
  readonly tail: string;
}

function planOf(draw: Draw, random: () => number, { stock = 'strip', units = 'metric' }: BoatOptions): Plan {
  const length = Math.round(draw(760, 960));
  const radius = draw(50, 58);
  const at = (part: number) => Math.round(part * length);
  const [foreEnd, afterEnd] = [at(draw(24, 27) / 100), at(draw(70, 74) / 100)];
  const round = Math.round(1.66 * radius);
  const axis = radius + draw(0, 2);
  const floor = axis - round / 2;
  const profile = [
    [0, 0],
    [at(0.03), draw(18, 22)],
    [at(0.08), draw(34, 38)],
    [at(0.16), draw(45, 48)],
    [at(0.27), radius],
    [at(0.66), radius],
    [at(0.8), draw(42, 45)],
    [at(0.92), draw(24, 28)],
    [length, draw(2, 5)],
  ];
  const battery = draw(240, 360);
  const pieces: string[] = [];
  const bays = baysFor({ length, axis, floor, foreEnd, afterEnd }).filter(
    bay => bay.name !== 'deck middle' || random() < 0.5,
  );
  let turning = 0;
  for (const bay of bays.filter(() => random() < 0.45)) {
    const made = pieceIn(bay, `drawn piece ${pieces.length + 1}`, draw, stock);
    pieces.push(made.text);
    turning += made.turning;
  }
  const kind = ['sealed', 'vented', 'piston', 'bladder'][Math.floor(4 * random())]!;
  return {
    name: `Boat ${Math.round(1e6 * random())}`,
    length,
    hull: `  shells:
    - name: outer hull
      material: ${random() < 0.5 ? 'fibreglass' : 'ABS'}
      mass: ${draw(520, 680)} g
      profile: [${profile.map(([station, r]) => `[${station} mm, ${r} mm]`).join(', ')}]
      height: ${radius} mm
    - { name: casing, material: ABS, mass: ${draw(80, 130)} g, box: 40 x 30 mm, station: ${foreEnd - 2} to ${afterEnd + 2} mm, height: ${(2 * radius + 13).toFixed(1)} mm }
  compartments:
    - name: dry cylinder
      mass: ${draw(430, 500)} g
      round: ${round} mm
      station: ${foreEnd} to ${afterEnd} mm
      height: ${axis.toFixed(1)} mm
`,
    tank: {
      round: 60,
      middle: at(0.48),
      height: Math.round(axis),
      kind,
      text: `kind: ${kind}${kind === 'sealed' || kind === 'vented' ? ', cells: 4' : ''}`,
    },
    payload: [
      // Off the centreline by just so much that the drawn pieces hold the balance.
      `{ name: battery, mass: ${battery} g ± 2 g, station: ${foreEnd + 4} to ${foreEnd + 76} mm, offset: ${(-turning / battery).toFixed(3)} mm, height: ${(floor + 16).toFixed(1)} mm, in: dry cylinder }`,
      `{ name: pump, mass: ${draw(140, 190)} g, station: ${afterEnd - 90} mm, height: ${axis.toFixed(1)} mm, in: dry cylinder }`,
      `{ name: radio and servos, mass: ${draw(110, 160)} g, station: ${afterEnd - 60} mm, height: ${draw(40, 50)} mm, in: dry cylinder }`,
      `{ name: drive motor, mass: ${draw(90, 130)} g, station: ${afterEnd - 42} to ${afterEnd - 6} mm, height: ${draw(38, 46)} mm, in: dry cylinder }`,
      `{ name: shaft and propeller, material: brass, mass: ${draw(50, 65)} g, station: ${at(0.86)} to ${length - 10} mm, height: ${draw(44, 50)} mm }`,
      `{ name: bow foam, material: foam, box: 34 x ${draw(14, 20)} mm, station: ${at(0.1)} to ${at(0.2)} mm, height: 74 mm }`,
    ],
    lead: [30, at(0.4)],
    bays,
    pieces,
    head: units === 'imperial' ? textLines([IMPERIAL_UNITS]) : '',
    tail: stockText(stock),
  };
}

const stockText = (stock: NonNullable<BoatOptions['stock']>): string => {
  if (stock === 'block') return '';
  const lead = stock === 'pieces' ? '{ pieces: [5 g, 10 g] }' : '{ strip: 12 x 6 mm }';
  return boatText`
    stock:
      lead: ${lead}
      foam: { density: ${FOAM} kg/m3, strip: 25 x 12 mm }
  `;
};

interface Frame {
  readonly length: number;
  readonly axis: number;
  readonly floor: number;
  readonly foreEnd: number;
  readonly afterEnd: number;
}

function baysFor({ length, axis, floor, foreEnd, afterEnd }: Frame): readonly BayPlan[] {
  const low = Math.round(axis - 26);
  const high = Math.round(axis + 8);
  const keelFore = [Math.round(0.09 * length), foreEnd - 6] as const;
  const keelAft = [afterEnd + 6, Math.round(0.86 * length)] as const;
  const bay = (
    name: string,
    takes: 'lead' | 'foam',
    station: readonly [number, number],
    height: readonly [number, number],
  ): BayPlan => ({
    name,
    takes,
    inside: name.startsWith('tube'),
    station,
    half: name.startsWith('tube') ? 20 : 17,
    height,
  });
  const tube = [Math.ceil(floor + 7), Math.ceil(floor + 15)] as const;
  return [
    bay('keel forward', 'lead', keelFore, [low, low + 8]),
    bay('keel aft', 'lead', keelAft, [low, low + 8]),
    bay('deck forward', 'foam', [Math.round(0.2 * length) + 2, foreEnd - 6], [high, high + 16]),
    bay('deck aft', 'foam', keelAft, [high, high + 16]),
    bay('deck middle', 'foam', [foreEnd, afterEnd], [Math.round(2 * axis + 2), Math.round(2 * axis + 18)]),
    bay('tube floor', 'lead', [Math.round(0.62 * length), afterEnd - 4], tube),
  ];
}

/** A piece somewhere in a bay, and its moment to starboard, net of buoyancy, g·mm. */
function pieceIn(bay: BayPlan, name: string, draw: Draw, stock: NonNullable<BoatOptions['stock']>) {
  const isLead = bay.takes === 'lead';
  const room = bay.station[1] - bay.station[0];
  const [breadth, depth] = isLead ? [12, 6] : [25, 12];
  const perLength = breadth * depth * 1e-6 * (isLead ? LEAD : FOAM);
  const most = Math.min(isLead ? 60 : 1.6, 0.7 * room * perLength);
  const mass = isLead && stock === 'pieces' ? 5 * Math.max(1, Math.round(draw(5, most) / 5)) : draw(most / 4, most);
  const long = mass / perLength;
  const from = draw(bay.station[0], bay.station[1] - long);
  // Foam about the waterline would turn the boat on the surface and not below, so it stays in the middle.
  const offset = isLead ? draw(-(bay.half - 6), bay.half - 6) : 0;
  const height = isLead ? bay.height[0] + depth / 2 : bay.height[1] - depth / 2;
  const text = `{ name: ${name}, material: ${bay.takes}, box: ${breadth} x ${depth} mm, mass: ${mass} g, station: ${from.toFixed(2)} to ${(from + long).toFixed(2)} mm, offset: ${offset} mm, height: ${height} mm${bay.inside ? ', in: dry cylinder' : ''} }`;
  return { text, turning: isLead ? mass * offset * (bay.inside ? 1 : 1 - 998 / LEAD) : 0 };
}

interface Fitting {
  readonly lead: { readonly mass: number; readonly at: number } | null;
  readonly tank: number;
  readonly waterline: readonly [number, number] | null;
  readonly withPieces: boolean;
}

function textOf(plan: Plan, { lead, tank, waterline, withPieces }: Fitting): string {
  const [breadth, length] = plan.lead;
  const keel =
    lead === null
      ? []
      : [
          `{ name: keel lead, material: lead, density: ${LEAD} kg/m3, mass: ${lead.mass.toFixed(2)} g, station: ${(lead.at - length / 2).toFixed(2)} to ${(lead.at + length / 2).toFixed(2)} mm, offset: ${-breadth / 2} to ${breadth / 2} mm, height: 4.6 mm }`,
        ];
  const payload = [...plan.payload, ...keel, ...(withPieces ? plan.pieces : [])];
  const painted = waterline
    ? [`  waterline: { bow: ${waterline[0].toFixed(2)} mm, stern: ${waterline[1].toFixed(2)} mm }`]
    : [];
  return `boat: ${plan.name}
${plan.head}water: { kind: fresh, temperature: 18 °C }
hull:
  length: ${plan.length} mm
${textLines(painted)}${plan.hull}  tanks:
    - { name: main ballast, in: dry cylinder, round: ${plan.tank.round} mm, station: ${(plan.tank.middle - tank / 2).toFixed(2)} to ${(plan.tank.middle + tank / 2).toFixed(2)} mm, height: ${plan.tank.height} mm, ${plan.tank.text} }
payload:
${textLines(payload.map(part => `  - ${part}`))}bays:
${textLines(plan.bays.map(bay => `  - ${bayText(bay)}`))}${plan.tail}limits: { trim: { surfaced: 0.5°, submerged: 1° }, heel: 1°, draft: 1.5 mm, fill: 40 to 85 %, gm: 3 mm, bg: 4 mm }
`;
}

const bayText = ({ name, takes, inside, station, half, height }: BayPlan): string =>
  `{ name: ${name}, takes: ${takes}, station: ${station[0]} to ${station[1]} mm, offset: ${-half} to ${half} mm, height: ${height[0]} to ${height[1]} mm${inside ? ', in: dry cylinder' : ''} }`;
