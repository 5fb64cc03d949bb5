import { createDescriber } from '../../schema/describe.ts';
import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { between, randomFrom } from '../accuracy/random.ts';
import { readBoat } from '../helpers/atOnce.ts';
import { textLines } from '../helpers/boatText.ts';

/*
 * Boats of all kinds that builders bring: small and large, one hull or two pods in a skin, one tank or several, few bays or
 * many or on one side alone, stock of every sort, conditions of their own. Each lies well as it is arranged; then something
 * happens to it: equipment elsewhere, too much lead, weight high up. Nobody knows whether its bays can put that right.
 * Lengths mm, masses g.
 */

type Draw = (from: number, to: number) => number;

interface Lines {
  readonly length: number;
  readonly radius: number;
  readonly hull: string;
  /** Compartments by name: stations and half breadth of the room. */
  readonly homes: readonly {
    readonly name: string;
    readonly from: number;
    readonly to: number;
    readonly floor: number;
  }[];
  readonly isFlooded: boolean;
}

const mm = (value: number): string => `${Number(value.toFixed(1))}`;
const range = (from: number, to: number): string => `${mm(from)} to ${mm(to)} mm`;

/** What befell the boat that lay well. */
const MISHAPS = ['nothing', 'shifted', 'far', 'listing', 'heavy', 'light', 'topHeavy', 'several'] as const;
type Mishap = (typeof MISHAPS)[number];

export interface AnyBoat {
  readonly text: string;
  readonly mishap: Mishap;
}

const describer = createDescriber();
const METRIC = readBoat(readSyntax('boat: Any'), describer).kept;

const read = (text: string) => {
  const { boat } = readBoat(readSyntax(text), describer, METRIC);
  return { boat, bodies: assembleBodies(boat, emptyCache()) };
};

/** A boat as the seed has it. */
export function boatOfAnyKind(seed: number): AnyBoat {
  const random = randomFrom(seed);
  const draw: Draw = (from, to) => between(random, from, to);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!;
  const size = Math.exp(draw(Math.log(0.4), Math.log(1.8)));
  const lines = pick([tubeInSkin, oneHull, twoPods])(size, draw);
  const { length, radius, homes } = lines;
  const kind = pick(['piston', 'bladder', 'vented', 'sealed', 'vented']);
  const cells = kind === 'vented' || kind === 'sealed' ? pick([1, 2, 3, 4, 6]) : 1;
  const tanksIn = homes.length > 1 ? homes : pick([[homes[0]!], [homes[0]!, homes[0]!]]);
  const volume = read(fileOf({ seed, lines, tanks: '', payload: [], tail: '' })).bodies.volume;
  // What the boat floats of itself, of which the tanks take so much.
  const share = draw(0.09, 0.16);
  const tanks = tanksOf({ homes: tanksIn, kind, cells, total: share * volume * 1e6, radius });
  const payload = [
    gear('battery', draw(0.11, 0.17), homes[0]!, draw(0.02, 0.1), 0.35),
    gear('radio', draw(0.03, 0.06), homes.at(-1)!, draw(0.8, 0.92), 0.6),
    gear('motor', draw(0.05, 0.09), homes.at(-1)!, draw(0.86, 0.95), 0.55),
  ];
  const tail = `${baysOf(lines, draw, pick)}${stockOf(size, pick)}${limitsOf(size, pick)}${conditionsOf(lines, volume, random() < 0.25, pick)}`;
  const mishap = pick(MISHAPS);
  const keel = lines.isFlooded ? 4 * size : homes[0]!.floor + 4 * size;
  const ballast = (mass: number, at: number): string =>
    `{ name: keel lead, material: lead, mass: ${mass.toFixed(2)} g, station: ${range(at - 0.15 * length, at + 0.15 * length)}, height: ${mm(keel)} mm${lines.isFlooded ? '' : ', in: hull'} }`;
  const isPinned = random() < 0.5;
  const partsOf = (parts: readonly Gear[]) => parts.map(part => gearText(part, volume, size, isPinned));
  const bare = read(fileOf({ seed, lines, tanks, payload: partsOf(payload), tail: '' })).bodies;
  const fill = draw(0.5, 0.75);
  const net = lines.isFlooded ? 1 - bare.density / 11340 : 1;
  const water = fill * share * volume * bare.density;
  const lead = Math.max(0.01, (bare.density * bare.volume - bare.mass - water) / net);
  // The tanks' middle, for what their water weighs about: half way along what holds them.
  const middle = meanOf(tanksIn.map(({ from, to }) => (from + to) / 2)) * 1e-3;
  const at = (bare.density * bare.volumeMoment[0] - bare.massMoment[0] - water * middle) / (lead * net);
  const station = Math.min(Math.max(at * 1e3, 0.2 * length), 0.8 * length);
  const arranged = [...partsOf(payload), ballast(lead * 1e3, station)];
  const well = read(fileOf({ seed, lines, tanks, payload: arranged, tail: '' }));
  const afloat = floatSurfaced(well.bodies, well.boat.length);
  const waterline =
    afloat.status === 'afloat'
      ? `{ bow: ${mm(afloat.draftBow * 1e3)} mm, stern: ${mm(afloat.draftStern * 1e3)} mm }`
      : `${mm(1.6 * radius)} mm`;
  const aft = (few: number, most: number) => draw(few, most) * length * (random() < 0.5 ? -1 : 1);
  const is = (...those: readonly Mishap[]) => those.includes(mishap);
  const after = payload.map((part, i) => ({
    ...part,
    shift: i === 0 && is('shifted', 'several') ? aft(0.004, 0.02) : i === 0 && is('far') ? aft(0.02, 0.06) : 0,
    offset: i === 0 && is('listing', 'several') ? draw(-0.05, 0.05) * radius : 0,
    height: is('topHeavy') ? part.height + draw(0.3, 1) : part.height,
  }));
  const factor = is('heavy') ? draw(1.05, 1.3) : is('light', 'several') ? draw(0.7, 0.97) : 1;
  return {
    mishap,
    text: fileOf({
      seed,
      lines,
      tanks,
      payload: [...partsOf(after), ballast(lead * 1e3 * factor, station)],
      tail,
      waterline,
    }),
  };
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

interface FileParts {
  readonly seed: number;
  readonly lines: Lines;
  readonly tanks: string;
  readonly payload: readonly string[];
  readonly tail: string;
  readonly waterline?: string;
}

const fileOf = ({ seed, lines, tanks, payload, tail, waterline }: FileParts): string => `boat: Any ${seed}
water: { kind: ${seed % 4 === 0 ? 'sea' : 'fresh'}, temperature: ${8 + (seed % 5) * 3} °C }
hull:
  length: ${mm(lines.length)} mm
${textLines(waterline === undefined ? [] : [`  waterline: ${waterline}`])}${lines.hull}${tanks}${payload.length > 0 ? textLines(['payload:', ...payload.map(part => `  - ${part}`)]) : ''}${tail}`;

/** A free-flooding skin about one dry tube. */
function tubeInSkin(size: number, draw: Draw): Lines {
  const [length, radius] = [draw(760, 960) * size, draw(48, 58) * size];
  const [from, to] = [0.25 * length, 0.72 * length];
  const tube = 0.83 * radius;
  return {
    length,
    radius,
    isFlooded: true,
    homes: [{ name: 'tube', from, to, floor: radius - tube }],
    hull: `  shells:
    - { name: skin, material: ABS, mass: ${mm(0.13 * radius ** 2 * length * 1e-3 * draw(0.9, 1.2) * 1.6)} g, height: ${mm(radius)} mm, profile: ${profileOf(length, radius)} }
  compartments:
    - { name: tube, mass: ${mm(0.55 * tube ** 2 * (to - from) * 1e-3)} g, round: ${mm(2 * tube)} mm, station: ${range(from, to)}, height: ${mm(radius)} mm }
`,
  };
}

/** A dry hull that is its own pressure hull. */
function oneHull(size: number, draw: Draw): Lines {
  const [length, radius] = [draw(600, 900) * size, draw(45, 60) * size];
  return {
    length,
    radius,
    isFlooded: false,
    homes: [{ name: 'hull', from: 0.12 * length, to: 0.86 * length, floor: 0.15 * radius }],
    hull: `  compartments:
    - { name: hull, mass: ${mm(0.8 * radius ** 2 * length * 1e-3)} g, height: ${mm(radius)} mm, profile: ${profileOf(length, radius)} }
`,
  };
}

/** Two dry pods in a skin, a tank in each. */
function twoPods(size: number, draw: Draw): Lines {
  const [length, radius] = [draw(1000, 1250) * size, draw(48, 58) * size];
  const pods = [
    { name: 'forward pod', from: 0.15 * length, to: 0.43 * length },
    { name: 'after pod', from: 0.49 * length, to: 0.78 * length },
  ];
  const pod = 0.84 * radius;
  return {
    length,
    radius,
    isFlooded: true,
    homes: pods.map(each => ({ ...each, floor: radius - pod })),
    hull: `  shells:
    - { name: skin, material: fibreglass, mass: ${mm(0.2 * radius ** 2 * length * 1e-3 * draw(0.9, 1.2))} g, height: ${mm(radius)} mm, profile: ${profileOf(length, radius)} }
  compartments:
${textLines(pods.map(({ name, from, to }) => `    - { name: ${name}, mass: ${mm(0.55 * pod ** 2 * (to - from) * 1e-3)} g, round: ${mm(2 * pod)} mm, station: ${range(from, to)}, height: ${mm(radius)} mm }`))}`,
  };
}

const profileOf = (length: number, radius: number): string =>
  `[${[
    [0, 0.04],
    [0.03, 0.4],
    [0.1, 0.75],
    [0.22, 1],
    [0.7, 1],
    [0.86, 0.6],
    [1, 0.08],
  ]
    .map(([at, wide]) => `[${mm(at! * length)} mm, ${mm(wide! * radius)} mm]`)
    .join(', ')}]`;

interface TankPlan {
  readonly homes: Lines['homes'];
  readonly kind: string;
  readonly cells: number;
  /** ml. */
  readonly total: number;
  readonly radius: number;
}

/** Tanks of equal size, side by side along what holds them. */
function tanksOf({ homes, kind, cells, total, radius }: TankPlan): string {
  const round = 1.5 * radius;
  const long = ((total / homes.length) * 1e3) / ((Math.PI * round ** 2) / 4);
  const isShared = homes.length > 1 && homes[0] === homes[1];
  const lines = homes.map(({ name, from, to }, i) => {
    const middle = (from + to) / 2 + (isShared ? (i - 0.5) * 1.05 * long : 0);
    const extra = cells > 1 ? `, cells: ${cells}` : '';
    return `    - { name: tank ${i + 1}, in: ${name}, round: ${mm(round)} mm, station: ${range(middle - long / 2, middle + long / 2)}, height: ${mm(radius)} mm, kind: ${kind}${extra} }`;
  });
  return textLines(['  tanks:', ...lines]);
}

interface Gear {
  readonly name: string;
  /** Of the whole displacement. */
  readonly part: number;
  readonly home: Lines['homes'][number];
  /** Of the way along the home, 0..1. */
  readonly along: number;
  /** Of the hull's radius above the home's floor. */
  readonly height: number;
  readonly shift: number;
  readonly offset: number;
}

const gear = (name: string, part: number, home: Gear['home'], along: number, height: number): Gear => ({
  name,
  part,
  home,
  along,
  height,
  shift: 0,
  offset: 0,
});

/** `volume` of the boat, m3. */
function gearText(
  { name, part, home, along, height, shift, offset }: Gear,
  volume: number,
  size: number,
  isPinned: boolean,
): string {
  const long = (name === 'battery' ? 70 : 24) * size;
  const room = home.to - home.from - long;
  const from = Math.min(Math.max(home.from + along * room + shift, home.from + 1), home.to - long - 1);
  const up = home.floor + height * 45 * size;
  return `{ name: ${name}, mass: ${(part * volume * 1e6).toFixed(1)} g, station: ${range(from, from + long)}, offset: ${mm(offset)} mm, height: ${mm(up)} mm, in: ${home.name}${isPinned ? ', fixed: true' : ''} }`;
}

type Pick = <T>(of: readonly T[]) => T;

/** Bays before and behind what is dry, in it, and under the deck: all of them, or few, or all to one side. */
function baysOf({ length, radius, homes, isFlooded }: Lines, draw: Draw, pick: Pick): string {
  const how = pick(['all', 'all', 'few', 'oneSided', 'leadOnly', 'tight', 'none'] as const);
  const [first, last] = [homes[0]!, homes.at(-1)!];
  const wide = how === 'tight' ? 0.12 : 0.35;
  const side = how === 'oneSided' ? ([0.1, 0.45] as const) : ([-wide, wide] as const);
  const deep = how === 'tight' ? 0.12 : draw(0.15, 0.3);
  const bay = (name: string, takes: string, from: number, to: number, low: number, home = '') =>
    `  - { name: ${name}, takes: ${takes}, station: ${range(from, to)}, offset: ${range(side[0] * radius, side[1] * radius)}, height: ${range(low, low + (takes === 'foam' ? 1.4 : 1) * deep * radius)}${home} }`;
  const low = 0.5 * radius;
  const high = 1.15 * radius;
  const inside = ({ name, from, to, floor }: Lines['homes'][number]) =>
    bay(
      `${name} floor`,
      'lead',
      from + 0.62 * (to - from),
      from + 0.8 * (to - from),
      floor + 0.16 * radius,
      `, in: ${name}`,
    );
  const outside = [
    bay('keel forward', 'lead', 0.11 * length, first.from - 4, low),
    bay('keel aft', 'lead', last.to + 4, 0.82 * length, low),
    bay('deck forward', 'foam', 0.11 * length, first.from - 4, high),
    bay('deck aft', 'foam', last.to + 4, 0.82 * length, high),
  ];
  const dry = isFlooded
    ? [...homes.map(inside)]
    : [
        bay('bow floor', 'lead', 0.12 * length, 0.24 * length, 0.4 * radius, ', in: hull'),
        bay('stern floor', 'lead', 0.7 * length, 0.84 * length, 0.4 * radius, ', in: hull'),
        bay('casing', 'foam', 0.25 * length, 0.7 * length, 2.02 * radius),
      ];
  const all = isFlooded ? [...outside, ...dry] : dry;
  const some =
    how === 'none'
      ? []
      : how === 'few'
        ? all.filter((_, i) => i === 0 || draw(0, 1) < 0.3)
        : how === 'leadOnly'
          ? all.filter(each => each.includes('takes: lead'))
          : all;
  return some.length > 0 ? textLines(['bays:', ...some]) : '';
}

function stockOf(size: number, pick: Pick): string {
  const s = (value: number) => mm(value * size);
  const lead = pick([
    `{ strip: ${s(12)} x ${s(6)} mm }`,
    `{ strip: ${s(10)} x ${s(3)} mm }`,
    '{ strip: 6 x 2.4 mm }',
    '{ pieces: [5 g, 10 g] }',
    '{ pieces: [1 g] }',
    '{ shot: true }',
    `{ strip: ${s(10)} x ${s(5)} mm, shot: true }`,
    null,
  ]);
  const foam = pick([`{ density: 30 kg/m3, strip: ${s(25)} x ${s(12)} mm }`, null]);
  const lines = [...(lead ? [`  lead: ${lead}`] : []), ...(foam ? [`  foam: ${foam}`] : [])];
  return lines.length > 0 ? textLines(['stock:', ...lines]) : '';
}

const limitsOf = (size: number, pick: Pick): string => {
  const s = (value: number) => mm(Math.max(0.5, value * size));
  const asked = pick([
    `limits: { trim: { surfaced: 0.2°, submerged: 0.5° }, heel: 0.5°, draft: ${s(1)} mm, fill: 45 to 85 %, gm: ${s(2.5)} mm, bg: ${s(2.5)} mm }`,
    `limits: { trim: { surfaced: 0.5°, submerged: 1° }, heel: 1°, draft: ${s(1.5)} mm, fill: 40 to 85 %, gm: ${s(3)} mm, bg: ${s(3)} mm }`,
    `limits: { trim: { surfaced: 0.5°, submerged: 2° }, heel: 1°, draft: ${s(3)} mm, fill: 30 to 96 %, gm: ${s(2)} mm, bg: ${s(2)} mm }`,
    null,
  ]);
  return textLines(asked === null ? [] : [asked]);
};

/** Conditions of the builder's own, in one boat of four. */
function conditionsOf({ homes }: Lines, volume: number, hasOwn: boolean, pick: Pick): string {
  if (!hasOwn) return '';
  const { name, from, to, floor } = homes[0]!;
  const dummy = `{ name: dummy torpedo, mass: ${(0.01 * volume * 1e6).toFixed(1)} g, station: ${mm(from + 0.3 * (to - from))} mm, height: ${mm(floor + 10)} mm, in: ${name} }`;
  return textLines([
    'conditions:',
    ...pick([
      ['  - name: without the radio', '    without: [radio]', '    limits: { trim: 1°, heel: 1° }'],
      [
        '  - name: with the dummy torpedo',
        '    aboard:',
        `      - ${dummy}`,
        '    limits: { trim: 0.5°, heel: 1°, draft: 3 mm }',
      ],
      [
        '  - name: in the sea',
        '    condition: submerged',
        '    water: { kind: sea, temperature: 12 °C }',
        '    limits: { trim: 3°, heel: 2°, fill: 30 to 98 % }',
      ],
    ]),
  ]);
}
