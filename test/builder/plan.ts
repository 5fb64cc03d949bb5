import type { Seeded } from '../helpers/seeded.ts';

/*
 * Boats of the family before anything is arranged: hull, cylinders, tanks, what is carried, bays and stock. Sizes mm,
 * masses g; all our own invention.
 */

export interface PlanBay {
  readonly name: string;
  readonly takes: 'lead' | 'foam';
  readonly inside: string | null;
  readonly station: readonly [number, number];
  readonly half: number;
  readonly height: readonly [number, number];
}

interface PlanTank {
  readonly name: string;
  readonly inside: string | null;
  readonly middle: number;
  readonly round: number;
  readonly kind: string;
  readonly cells: number;
  /** Of all that the tanks hold. */
  readonly part: number;
}

type Layout = 'wet' | 'two cylinders' | 'dry';
type Care = 'unwritten' | 'some' | 'written';

export interface Plan {
  readonly layout: Layout;
  readonly care: Care;
  readonly isTouchy: boolean;
  readonly length: number;
  /** How finely it is measured, as a factor. */
  readonly fine: number;
  /** Greatest radius of the hull; its axis lies as high. */
  readonly radius: number;
  /** About what it displaces. */
  readonly mass: number;
  readonly water: string;
  readonly shells: readonly string[];
  readonly compartments: readonly string[];
  readonly tanks: readonly PlanTank[];
  readonly payload: readonly string[];
  /** Where the keel lead goes: how long and broad, how low and high its middle may be, and what it lies in. */
  readonly keel: {
    readonly length: number;
    readonly breadth: number;
    readonly height: readonly [number, number];
    readonly inside: string | null;
  };
  readonly bays: readonly PlanBay[];
  readonly strips: Readonly<Record<'lead' | 'foam', readonly [number, number]>>;
  readonly limits: string;
  /** Height of B over G that is aimed at, tank water moving, and the least of it in the limits. */
  readonly bg: number;
  readonly leastBg: number;
}

export function planOf(random: Seeded, wide: boolean): Plan {
  const draw = (from: number, to: number) => Math.round((from + (to - from) * random.even()) * 10) / 10;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random.even() * list.length)]!;
  const length = Math.round(500 * 3 ** random.even());
  const s = length / 900;
  const layout = pick<Layout>(['wet', 'wet', 'two cylinders', 'dry']);
  const care = pick<Care>(['unwritten', 'some', 'written', 'written']);
  const isTouchy = random.even() < 0.3;
  const radius = Math.round(length * (0.056 + 0.009 * random.even()) * 10) / 10;
  const at = (part: number) => Math.round(part * length);
  const fixed = (value: number) => Number(value.toFixed(1));
  const tol = (care: Care, isKey: boolean, text: string) =>
    care === 'written' || (care === 'some' && isKey) ? ` ± ${text}` : '';
  // Small boats are measured with finer things.
  const fine = Math.min(1.2, s);
  const within = (mm: number) => `${(mm * fine).toFixed(2)} mm`;
  const place = (isKey: boolean) => tol(care, isKey, within(isKey ? 0.4 : 1));
  // Where nothing is written it was put on the centreline by eye.
  const centred = (text: string) => (care === 'unwritten' ? '' : `, offset: 0 mm ± ${text}`);
  const g = (mass: number, isKey = false) =>
    `${mass.toFixed(1)} g${tol(care, isKey, `${Math.max(0.5, 0.002 * mass).toFixed(1)} g`)}`;
  const part = (name: string, mass: number, station: string, height: number, rest = '') =>
    `{ name: ${name}, mass: ${g(mass, name === 'battery')}, station: ${station} mm${place(name === 'battery')}${centred(within(0.4))}, height: ${fixed(height)} mm${place(false)}${rest} }`;
  const big = layout === 'dry' ? 2.3 : layout === 'two cylinders' ? 0.8 : 1;
  const carried = big * s ** 3;
  const walls = s ** 2.3;
  const [foreEnd, afterEnd] = [at(draw(24, 27) / 100), at(draw(69, 74) / 100)];
  const profile = [
    [0, 0],
    [at(0.03), 0.38 * radius],
    [at(0.08), 0.68 * radius],
    [at(0.16), 0.87 * radius],
    [at(0.27), radius],
    [at(0.66), radius],
    [at(0.8), draw(76, 82) * 0.01 * radius],
    [at(0.92), draw(44, 50) * 0.01 * radius],
    [length, layout === 'dry' ? 0 : 0.06 * radius],
  ].map(([x, r]) => `[${x} mm, ${fixed(r!)} mm]`);
  const hull = `profile: [${profile.join(', ')}]`;
  const sail = `{ name: sail, material: ABS, mass: ${g(70 * walls)}, box: ${fixed(24 * s)} x ${fixed(50 * s)} mm, station: ${at(0.34)} to ${at(0.43)} mm, height: ${fixed(2 * radius + 25 * s)} mm${place(false)} }`;
  const casing = `{ name: casing, material: ABS, mass: ${g(90 * walls)}, box: ${fixed(44 * s)} x ${fixed(18 * s)} mm, station: ${at(0.2)} to ${at(0.72)} mm, height: ${fixed(2 * radius + 9.5 * s)} mm${place(false)} }`;
  const cylinder = (name: string, round: number, from: number, to: number) =>
    `{ name: ${name}, mass: ${g(1.02 * (to - from) * s ** 1.3, true)}, round: ${fixed(round)} mm${tol(care, true, within(0.1))}, station: ${from} to ${to} mm${place(true)}${centred(within(0.2))}, height: ${fixed(radius)} mm${tol(care, true, within(0.3))} }`;
  const material = pick(['fibreglass', 'ABS']);
  const shell = `{ name: outer hull, material: ${material}${tol(care, true, '').length > 0 ? `, density: ${material === 'ABS' ? 1050 : 1650} kg/m3 ± 15 kg/m3` : ''}, mass: ${g(draw(560, 680) * walls * (material === 'ABS' ? 0.8 : 1), true)}, ${hull}, height: ${fixed(radius)} mm }`;
  const inner = { wet: 'dry cylinder', 'two cylinders': 'after cylinder', dry: 'hull' }[layout];
  const front = layout === 'two cylinders' ? 'fore cylinder' : inner;
  const compartments = {
    wet: [cylinder('dry cylinder', 1.66 * radius, foreEnd, afterEnd)],
    'two cylinders': [
      cylinder('fore cylinder', 1.66 * radius, at(0.2), at(0.41)),
      cylinder('after cylinder', 1.66 * radius, at(0.53), at(0.76)),
    ],
    dry: [`{ name: hull, mass: ${g(900 * walls, true)}, ${hull}, height: ${fixed(radius)} mm }`],
  }[layout];
  const shells = { wet: [shell, sail], 'two cylinders': [shell, sail, casing], dry: [sail, casing] }[layout];
  const floor = (layout === 'dry' ? 0.1 : 0.17) * radius;
  const [frontAt, backAt] = layout === 'two cylinders' ? [0.29, 0.66] : [0.34, 0.63];
  // Lead inside lies higher: those boats hang the more touchily.
  const isInside = layout === 'wet' && (isTouchy || random.even() < 0.4);
  const inBack = `, in: ${inner}`;
  const payload = [
    part(
      'battery',
      draw(250, 360) * carried,
      `${at(frontAt - 0.055)} to ${at(frontAt + 0.055)}`,
      floor + 0.42 * radius,
      `, in: ${front}`,
    ),
    part('pump', draw(120, 180) * carried, `${at(backAt - 0.06)}`, radius, inBack),
    part('receiver', draw(50, 80) * carried, `${at(frontAt + 0.02)}`, 1.3 * radius, `, in: ${front}`),
    part('servos', draw(70, 110) * carried, `${at(backAt - 0.02)}`, 0.8 * radius, inBack),
    part('drive motor', draw(90, 130) * carried, `${at(backAt)} to ${at(backAt + 0.045)}`, 0.8 * radius, inBack),
    part(
      'shaft',
      draw(40, 60) * carried,
      `${at(0.84)} to ${at(0.97)}`,
      0.9 * radius,
      layout === 'dry' ? ', in: hull' : ', material: brass',
    ),
  ];
  const round = fixed(2 * radius * (isTouchy ? draw(42, 52) : draw(52, 68)) * 0.01);
  const kinds = isTouchy ? ['sealed', 'vented'] : ['sealed', 'vented', 'piston', 'piston', 'bladder'];
  const inTank = layout === 'two cylinders' ? null : inner;
  const tank = (name: string, middle: number, share: number): PlanTank => {
    const kind = pick(kinds);
    const cells = kind === 'piston' || kind === 'bladder' || isTouchy ? 1 : pick([1, 2, 3, 4]);
    return { name, inside: inTank, middle, round, kind, cells, part: share };
  };
  const tanks =
    layout !== 'two cylinders' && random.even() < 0.4
      ? [tank('fore tank', at(0.42), 0.5), tank('after tank', at(0.56), 0.5)]
      : [tank('main tank', at(layout === 'two cylinders' ? 0.47 : 0.49), 1)];
  const strips = { lead: [fixed(16 * s), fixed(8 * s)], foam: [fixed(34 * s), fixed(22 * s)] } as const;
  const factor = wide ? 2 : 1;
  const [leastGm, leastBg] = [fixed(3 * s), fixed(4 * s)];
  return {
    layout,
    care,
    isTouchy,
    length,
    fine,
    radius,
    mass: 2800 * carried,
    water: `{ kind: fresh, temperature: ${Math.round(draw(10, 22))} °C }`,
    shells,
    compartments,
    tanks,
    payload,
    keel: {
      length: at(0.36),
      breadth: fixed(26 * s),
      height: layout === 'dry' || isInside ? [0.3 * radius, 0.95 * radius] : [0.09 * radius, 0.14 * radius],
      inside: layout === 'dry' || isInside ? inner : null,
    },
    bays: baysFor(layout, { length, radius, s, foreEnd, afterEnd }),
    strips,
    limits: `{ trim: { surfaced: ${0.5 * factor}°, submerged: ${1.5 * factor}° }, heel: ${factor}°, draft: ${2 * factor} mm, fill: 40 to 85 %, gm: ${leastGm} mm, bg: ${leastBg} mm }`,
    bg: s * (isTouchy ? draw(5.5, 8) : draw(9, 18)),
    leastBg,
  };
}

interface Frame {
  readonly length: number;
  readonly radius: number;
  readonly s: number;
  readonly foreEnd: number;
  readonly afterEnd: number;
}

function baysFor(layout: Layout, { length, radius, s, foreEnd, afterEnd }: Frame): readonly PlanBay[] {
  const fixed = (value: number) => Number(value.toFixed(1));
  const at = (part: number) => Math.round(part * length);
  const bay = (
    name: string,
    takes: 'lead' | 'foam',
    station: readonly [number, number],
    low: number,
    inside: string | null = null,
  ): PlanBay => {
    const [half, high] = takes === 'lead' ? [17 * s, 9 * s] : [21 * s, 23 * s];
    return { name, takes, inside, station, half: fixed(half), height: [fixed(low), fixed(low + high)] };
  };
  const [low, over, deck] = [0.5 * radius, 1.12 * radius, 2 * radius + 3 * s];
  switch (layout) {
    case 'wet':
      return [
        bay('keel forward', 'lead', [at(0.08), foreEnd - 6], low),
        bay('keel aft', 'lead', [afterEnd + 6, at(0.88)], low),
        bay('bow', 'foam', [at(0.08), foreEnd - 6], over),
        bay('stern', 'foam', [afterEnd + 6, at(0.88)], over),
        bay('tube forward', 'lead', [foreEnd + 8, at(0.4)], 0.27 * radius, 'dry cylinder'),
        bay('tube aft', 'lead', [at(0.57), afterEnd - 8], 0.27 * radius, 'dry cylinder'),
      ];
    case 'two cylinders':
      return [
        bay('keel forward', 'lead', [at(0.06), at(0.195)], low),
        bay('keel aft', 'lead', [at(0.77), at(0.9)], low),
        bay('bow', 'foam', [at(0.06), at(0.195)], over),
        bay('stern', 'foam', [at(0.77), at(0.9)], over),
        bay('tube forward', 'lead', [at(0.21), at(0.4)], 0.27 * radius, 'fore cylinder'),
        bay('tube aft', 'lead', [at(0.54), at(0.75)], 0.27 * radius, 'after cylinder'),
      ];
    case 'dry':
      return [
        bay('bilge forward', 'lead', [at(0.14), at(0.3)], 0.3 * radius, 'hull'),
        bay('bilge aft', 'lead', [at(0.7), at(0.82)], 0.42 * radius, 'hull'),
        bay('deck forward', 'foam', [at(0.21), at(0.33)], deck),
        bay('deck aft', 'foam', [at(0.55), at(0.71)], deck),
      ];
  }
}
