import { samePath } from '../../schema/path.ts';
import type { Analysis } from '../analysis.ts';
import type { Part, Weighed } from '../boat/boat.ts';
import type { Cuttable, Immersion } from '../geometry/immersion.ts';
import { addImmersed, emptyImmersion } from '../geometry/immersion.ts';
import { add, scale, type Vec3 } from '../geometry/vector.ts';
import { lengthText, massText, momentText, offsetWords, volumeText } from '../wording/numbers.ts';
import { escaped, table } from './markdown.ts';

/** A payload entry: what it weighs and displaces in both conditions, and the running sums after it. */
export function partHover(analysis: Analysis, index: number): string | null {
  const { boat } = analysis;
  const part = boat.payload.find(candidate => samePath(candidate.path, ['payload', index]));
  if (!part) return null;
  const where = part.inside === null ? 'in the flooded hull' : `in ${escaped(part.inside)}, so it displaces nothing`;
  const weighed = part.massFrom === 'form' ? ' by its form and density' : '';
  const worked = part.worked.length > 0 ? `; ${part.worked.join(', ')}` : '';
  return [
    `**${escaped(part.name)}**: ${massText(part.mass, boat.units)}${weighed}, ${where}${worked}.`,
    conditionsTable(analysis, part),
    runningWords(analysis, part),
  ].join('\n\n');
}

/** What one entry does to the balance in one condition. SI. */
interface Contribution {
  /** Displaced, m3. */
  readonly volume: number;
  /** Weight less buoyancy, kg. */
  readonly net: number;
  /** Net moments, kg·m: aft of midships, and to starboard of the centreline. */
  readonly aft: number;
  readonly starboard: number;
}

function conditionsTable(analysis: Analysis, part: Part): string {
  const { boat, bodies, surfaced } = analysis;
  const body = bodies.displacers.find(displacer => displacer.entry === part)?.body ?? null;
  const midships = boat.length / 2;
  const submerged = contribution(part, body ? whole(body) : null, bodies.density, midships);
  const columns: [string, Contribution][] = [['Submerged', submerged]];
  if (surfaced.status === 'afloat') {
    const wet = body ? below(body, surfaced.up, surfaced.level) : null;
    columns.unshift(['Surfaced', contribution(part, wet, bodies.density, midships)]);
  }
  const { units } = boat;
  const row = (name: string, show: (c: Contribution) => string) => [name, ...columns.map(([, c]) => show(c))];
  return table([
    ['', ...columns.map(([name]) => name)],
    row('Displaces', c => volumeText(c.volume, units)),
    row('Weight in water', c => (c.net < 0 ? `lifts ${massText(-c.net, units)}` : massText(c.net, units))),
    row('Moment about midships', c => sided(c.aft, units, ['down by the stern', 'down by the bow'])),
    row('Moment about the centreline', c => sided(c.starboard, units, ['to starboard', 'to port'])),
  ]);
}

const whole = (body: Cuttable): Immersion => {
  const sums = emptyImmersion();
  sums.volume = body.volume;
  [sums.mx, sums.my, sums.mz] = body.moment;
  return sums;
};

function below(body: Cuttable, up: Vec3, level: number): Immersion {
  const sums = emptyImmersion();
  addImmersed(body, up, level, sums);
  return sums;
}

function contribution(part: Weighed, wet: Immersion | null, density: number, midships: number): Contribution {
  const volume = wet?.volume ?? 0;
  return {
    volume,
    net: part.mass - density * volume,
    aft: part.mass * (part.centroid[0] - midships) - density * ((wet?.mx ?? 0) - midships * volume),
    starboard: part.mass * part.centroid[1] - density * (wet?.my ?? 0),
  };
}

function sided(
  moment: number,
  units: Analysis['boat']['units'],
  [positive, negative]: readonly [string, string],
): string {
  const size = momentText(Math.abs(moment), units);
  return /[1-9]/.test(size) ? `${size} ${moment > 0 ? positive : negative}` : 'none';
}

/** Mass, centroid and reserve buoyancy of the bare hull and the list up to and with this entry. */
function runningWords({ boat, bodies }: Analysis, part: Part): string {
  const { units } = boat;
  const upTo = boat.payload.slice(0, boat.payload.indexOf(part) + 1);
  const aboard: readonly Weighed[] = [...boat.shells, ...boat.compartments, ...upTo];
  const mass = aboard.reduce((sum, entry) => sum + entry.mass, 0);
  const moment = aboard.reduce<Vec3>((sum, entry) => add(sum, scale(entry.centroid, entry.mass)), [0, 0, 0]);
  const [station, offset, height] = scale(moment, 1 / mass);
  const reserve = bodies.density * bodies.volume - mass;
  const left =
    reserve >= 0
      ? `${massText(reserve, units)} of reserve buoyancy left`
      : `${massText(-reserve, units)} more than the boat can float`;
  return `After the list up to here: ${massText(mass, units)}, centre of mass at station ${lengthText(station, units)}, ${offsetWords(offset, units)}, height ${lengthText(height, units)}; ${left}.`;
}
