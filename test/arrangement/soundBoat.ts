import { seeded } from '../helpers/seeded.ts';

/**
 * A random boat in which everything lies where it can, by its seed: a free-flooding hull by a profile, a table of offsets or a
 * round, with a tube or two that nearly fill it, or a dry hull by itself; tanks and equipment end to end in them, lead along
 * the keel, foam under the deck, a foam collar round a tube, and bays in what room is left. Lengths mm, masses g.
 */
export function soundBoat(seed: number): string {
  const { even } = seeded(seed);
  const between = (least: number, most: number): number => least + even() * (most - least);
  const pick = <T>(...choices: readonly T[]): T => choices[Math.floor(even() * choices.length)]!;
  const length = between(400, 1200);
  const radius = length * between(0.05, 0.075);
  const isDry = even() < 0.2;
  const kind = pick('profile', 'sections', 'round', 'box');
  // The parallel part of the hull, in which everything large lies.
  const [fore, aft] = [0.2 * length, 0.78 * length];
  const wall = between(0.5, 2);
  const dry = isDry
    ? [{ name: 'hull', r: radius, from: fore, to: aft }]
    : tubesIn(between, radius - wall, [fore, aft], even() < 0.4);
  const lines: string[] = ['boat: Sound', 'hull:', `  length: ${mm(length)}`, `  waterline: ${mm(1.5 * radius)}`];
  if (!isDry) {
    lines.push(
      '  shells:',
      `    - { name: outer hull, material: fibreglass, mass: 400 g, ${shellForm(kind, length, radius)} }`,
    );
    const top = kind === 'box' ? 2 * radius : 2 * radius - 1;
    lines.push(
      `    - { name: sail, material: ABS, mass: 30 g, box: ${num(0.4 * radius)} x ${num(0.8 * radius)} mm, station: ${range(0.35 * length, 0.45 * length)}, height: ${mm(top + 0.4 * radius)} }`,
    );
  }
  lines.push('  compartments:');
  const hullForm = `profile: [[0, 0], [${num(fore)}, ${num(radius)}], [${num(aft)}, ${num(radius)}], [${num(length)}, 1]]`;
  for (const { name, r, from, to } of dry) {
    const form = isDry ? hullForm : `round: ${mm(2 * r)}, station: ${range(from, to)}`;
    lines.push(`    - { name: ${name}, mass: 300 g, ${form}, height: ${mm(radius)} }`);
  }
  const tanks: string[] = [];
  const parts: string[] = [];
  const bays: string[] = [];
  for (const [k, { name, r, from, to }] of dry.entries()) {
    let at = from + between(0, 3);
    let count = 0;
    // Ends: each thing is longer than nothing.
    while (at < to - 30) {
      const end = Math.min(to - between(0, 2), at + between(20, 120));
      const middle = mm((at + end) / 2);
      const place = `in: ${name}, height: ${mm(radius)}`;
      const id = `${k}.${++count}`;
      const side = r * between(0.8, 1.35);
      const breadth = Math.min(side, Math.sqrt(4 * r * r - side * side) - 0.5);
      const choice = pick('tank', 'box', 'round', 'line', 'point', 'ranges', 'floor');
      if (choice === 'tank')
        tanks.push(
          `    - { name: tank ${id}, kind: ${pick('sealed', 'vented', 'piston')}, round: ${mm(2 * r - between(0.5, 8))}, station: ${range(at, end)}, ${place} }`,
        );
      else if (choice === 'box')
        parts.push(
          `  - { name: pack ${id}, mass: 60 g, box: ${num(breadth)} x ${num(side)} mm, station: ${range(at, end)}, ${place} }`,
        );
      else if (choice === 'round')
        parts.push(
          `  - { name: motor ${id}, mass: 60 g, round: ${mm(2 * r * between(0.3, 0.99))}, station: ${range(at, end)}, ${place} }`,
        );
      else if (choice === 'line')
        parts.push(
          `  - { name: battery ${id}, mass: 60 g, station: ${range(at, end)}, offset: ${mm(between(-0.5, 0.5) * r)}, in: ${name}, height: ${mm(radius - between(0, 0.6) * r)} }`,
        );
      else if (choice === 'point')
        parts.push(
          `  - { name: receiver ${id}, mass: 60 g, station: ${middle}, in: ${name}, height: ${mm(radius + between(-0.6, 0.6) * r)} }`,
        );
      else if (choice === 'ranges')
        parts.push(
          `  - { name: gear ${id}, mass: 60 g, station: ${range(at, end)}, offset: ${range(-breadth / 2, breadth / 2)}, in: ${name}, height: ${range(radius - side / 2, radius + side / 2)} }`,
        );
      else {
        // Something on the floor of the tube, with a bay over it.
        const half = 0.4 * r;
        const floor = radius - Math.sqrt(r * r - half * half) + 0.5;
        parts.push(
          `  - { name: floor lead ${id}, material: lead, in: ${name}, station: ${range(at, end)}, offset: ${range(-half, half)}, height: ${range(floor, floor + 4)} }`,
        );
        bays.push(
          `  - { name: bay ${id}, in: ${name}, takes: lead, station: ${range(at, end)}, offset: ${range(-half, half)}, height: ${range(floor + 4, floor + 12)} }`,
        );
      }
      at = end + between(0, 15);
    }
  }
  if (!isDry)
    wetThings({ isCone: kind === 'round', between, even, radius, length, fore, aft, tubes: dry }, parts, bays);
  if (tanks.length > 0) lines.push('  tanks:', ...tanks);
  if (parts.length > 0) lines.push('payload:', ...parts);
  if (bays.length > 0) lines.push('bays:', ...bays);
  return `${lines.join('\n')}\n`;
}

interface Tube {
  readonly name: string;
  readonly r: number;
  readonly from: number;
  readonly to: number;
}

function tubesIn(
  between: Between,
  most: number,
  [fore, aft]: readonly [number, number],
  isTwo: boolean,
): readonly Tube[] {
  const r = most * between(0.75, 1);
  if (!isTwo) return [{ name: 'tube', r, from: fore + between(0, 20), to: aft - between(0, 20) }];
  const middle = (fore + aft) / 2;
  return [
    { name: 'fore tube', r, from: fore, to: middle - between(0.2, 10) },
    { name: 'aft tube', r: most * between(0.6, 1), from: middle, to: aft },
  ];
}

type Between = (least: number, most: number) => number;

function shellForm(kind: string, length: number, radius: number): string {
  const height = mm(radius);
  const stations = [0, 0.1, 0.2, 0.78, 0.9, 1];
  const radii = [0.05, 0.75, 1, 1, 0.6, 0.1];
  if (kind === 'profile')
    return `profile: [${stations.map((s, i) => `[${num(s * length)}, ${num(radii[i]! * radius)}]`).join(', ')}], height: ${height}`;
  if (kind === 'round')
    return `forms: [{ round: ${num(0.1 * radius)} to ${mm(2 * radius)}, station: ${range(0, 0.2 * length)}, height: ${height} }, { round: ${mm(2 * radius)}, station: ${range(0.2 * length, 0.78 * length)}, height: ${height} }, { round: ${num(2 * radius)} to ${mm(0.2 * radius)}, station: ${range(0.78 * length, length)}, height: ${height} }]`;
  if (kind === 'box')
    return `station: ${range(0, length)}, offset: ${range(-radius, radius)}, height: ${range(0, 2 * radius)}`;
  const points = 16;
  const rows = stations.map((s, i) => {
    // Drawn a little outside the circle, so that the straight lines between the points do not cut into it.
    const r = (radii[i]! * radius) / Math.cos(Math.PI / (2 * points));
    const outline = Array.from({ length: points + 1 }, (_, k) => {
      const angle = (Math.PI * k) / points;
      return `[${num(r * Math.sin(angle))}, ${num(radius - r * Math.cos(angle))}]`;
    });
    return `{ station: ${mm(s * length)}, outline: [${outline.join(', ')}] }`;
  });
  return `sections: [${rows.join(', ')}]`;
}

interface Wet {
  /** Its ends are plain cones. */
  readonly isCone: boolean;
  readonly between: Between;
  readonly even: () => number;
  readonly radius: number;
  readonly length: number;
  readonly fore: number;
  readonly aft: number;
  readonly tubes: readonly Tube[];
}

/** Lead and foam in the ends of the hull, a strip under the tubes where one fits, a collar, what stands outside, bays. */
function wetThings(
  { isCone, between, even, radius, length, fore, aft, tubes }: Wet,
  parts: string[],
  bays: string[],
): void {
  const most = Math.max(...tubes.map(({ r }) => r));
  const gap = radius - most;
  const before = parts.length;
  if (gap > 6) {
    const half = 0.3 * radius;
    const floor = radius - Math.sqrt(radius * radius - half * half);
    if (radius - most - floor > 1.5)
      parts.push(
        `  - { name: keel lead, material: lead, station: ${range(fore + 5, aft - 5)}, offset: ${range(-half, half)}, height: ${range(floor, radius - most)} }`,
      );
  }
  const [first, last] = [tubes[0]!, tubes.at(-1)!];
  const end = (where: string, from: number, to: number, r: number): void => {
    if (to - from < 15 || r < 8) return;
    const half = 0.4 * r;
    const reach = Math.sqrt(r * r - half * half);
    const place = `station: ${range(from, to)}, offset: ${range(-half, half)}`;
    if (even() < 0.5)
      parts.push(
        `  - { name: ${where} foam, material: foam, ${place}, height: ${range(radius + 0.5 * reach, radius + reach)} }`,
      );
    else
      bays.push(
        `  - { name: ${where} deck, takes: foam, ${place}, height: ${range(radius + 0.5 * reach, radius + reach)} }`,
      );
    bays.push(
      `  - { name: ${where} keel, takes: lead, ${place}, height: ${range(radius - reach, radius - 0.6 * reach)} }`,
    );
  };
  end('bow', 0.1 * length, Math.min(fore, first.from) - 0.5, (isCone ? 0.5 : 0.75) * radius);
  end('stern', Math.max(aft, last.to) + 0.5, 0.9 * length, (isCone ? 0.45 : 0.6) * radius);
  if (even() < 0.5)
    parts.push(
      `  - { name: shaft and propeller, material: brass, mass: 40 g, station: ${range(0.85 * length, length + between(0, 10))}, height: ${mm(radius)} }`,
    );
  if (even() < 0.5)
    parts.push(
      `  - { name: rudder, material: ABS, box: 2 x ${num(1.6 * radius)} mm, station: ${range(0.93 * length, 0.98 * length)}, height: ${mm(radius)} }`,
    );
  if (even() < 0.5)
    parts.push(
      `  - { name: filler, volume: 20 ml, mass: 2 g, station: ${mm(0.5 * length)}, height: ${mm(2 * radius - 3)} }`,
    );
  // A ring of foam that fills the gap between the tube and the hull.
  const hasStrip = parts.slice(before).some(part => part.includes('keel lead'));
  if (!hasStrip && gap > 3 && even() < 0.7)
    parts.push(
      `  - { name: collar, material: foam, mesh: { file: collar ${num(most + 0.05)} ${num(radius - 0.3)}.stl, unit: mm, at: [${mm(first.from + 10)}, 0 mm, ${mm(radius)}] } }`,
    );
}

const num = (value: number): string => `${Number(value.toFixed(2))}`;
const mm = (value: number): string => `${num(value)} mm`;
const range = (from: number, to: number): string => `${num(from)} to ${mm(to)}`;
