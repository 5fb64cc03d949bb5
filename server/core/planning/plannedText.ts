import type { FileUnits } from '../../../schema/units.ts';
import { massText, tapeText } from '../wording/numbers.ts';

/** The four figures that a boat begins with. m; the waterline above the keel. */
export interface BoatPlan {
  readonly length: number;
  readonly beam: number;
  readonly waterline: number;
  /** As written, "1:60"; null for a boat of no prototype. */
  readonly scale: string | null;
}

/** What is wrong with a plan, in a sentence; null for one that a submarine can have. */
export function planProblem({ length, beam, waterline }: BoatPlan): string | null {
  if (!(length > 0 && beam > 0 && waterline > 0)) return 'Length, beam and waterline are more than nothing.';
  if (beam > length / 3) return 'The beam is at most a third of the length: is one of them in another unit?';
  if (waterline >= beam) return 'The waterline lies below the deck: on a round hull it is less than the beam.';
  return null;
}

/** A hull of revolution as many submarines have it: part of the length, part of the greatest radius (common practice, no source). */
const PROFILE = [
  [0, 0],
  [0.03, 0.38],
  [0.1, 0.74],
  [0.2, 0.95],
  [0.3, 1],
  [0.66, 1],
  [0.85, 0.62],
  [1, 0.08],
] as const;

/** The dry cylinder: its part of the beam, and from where to where of the length (common practice, no source). */
const CYLINDER = { round: 0.82, from: 0.22, to: 0.72 } as const;

/** Walls of hand-laid fibreglass and of acrylic tube, m, and what they weigh, kg/m3: to be weighed (common practice, no source). */
const SHELL = { wall: 0.0015, density: 1600 } as const;
const TUBE = { wall: 0.003, density: 1190 } as const;

/** What a submarine carries: the list of what is still to be weighed. */
const TO_WEIGH = [
  'battery',
  'receiver, speed controllers and wiring',
  'motors, couplings and shafts',
  'servos and linkages',
  'tank drive: pump or piston with its motor, pipes and valves',
  'planes, rudders and propellers',
  'casing, fin and fittings above the waterline',
  'keel lead, when all else is aboard',
];

/** The text of a boat that is planned: hull and dry cylinder in proportion, nothing aboard yet, no tank yet. */
export function plannedText(
  title: { readonly comment: string; readonly name: string },
  plan: BoatPlan,
  units: FileUnits,
): string {
  const { length, beam, waterline, scale } = plan;
  const tape = (metres: number): string => tapeText(metres, units);
  const bare = (metres: number): string => tape(metres).replace(/ [a-z]+$/, '');
  const round = CYLINDER.round * beam;
  const [from, to] = [CYLINDER.from * length, CYLINDER.to * length];
  // Girth of the parallel part over nine tenths of the length.
  const shell = Math.PI * beam * 0.9 * length * SHELL.wall * SHELL.density;
  const tube = Math.PI * round * (to - from + round / 2) * TUBE.wall * TUBE.density;
  const points = PROFILE.map(([part, radius]) => `[${bare(part * length)}, ${bare((radius * beam) / 2)}]`);
  const written = [
    ...(scale === null ? [] : [`scale: ${scale}`]),
    ...(units.length === 'in' ? ['units: { length: in, mass: oz }'] : []),
  ];
  return `# ${title.comment}. Planned from length, beam and waterline: overwrite what you know better.
# Stations run aft from the bow tip, offsets to starboard, heights up from the keel.
boat: ${title.name}
${written.map(line => `${line}\n`).join('')}
water: { kind: fresh, temperature: 18 °C }

hull:
  length: ${tape(length)}
  waterline: ${tape(waterline)}
  shells:
    - name: outer hull
      material: fibreglass
      mass: ${massText(shell, units)} # not weighed yet: a wall of ${tape(SHELL.wall)}
      profile: [${points.join(', ')}]
      height: ${tape(beam / 2)}
  compartments:
    - name: dry cylinder
      mass: ${massText(tube, units)} # not weighed yet: an acrylic tube with a wall of ${tape(TUBE.wall)}
      round: ${tape(round)}
      station: ${bare(from)} to ${tape(to)}
      height: ${tape(beam / 2)}

payload: # still to be weighed and entered, each with its station and height
${TO_WEIGH.map(what => `  # ${what}\n`).join('')}`;
}
