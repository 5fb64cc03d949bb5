import { samePath } from '../../../schema/path.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Part, Weighed } from '../../core/boat/boat.ts';
import { effectOfMore, effectOfWhole } from '../../core/corrections/balance/partEffects.ts';
import { changedName, effectWords, littleWords } from '../../core/corrections/words/effectWords.ts';
import { add, scale, type Vec3 } from '../../core/geometry/form/vector.ts';
import { capital } from '../../core/wording/capital.ts';
import { massText, offsetWords, volumeText } from '../../core/wording/numbers.ts';
import { heightText, stationText } from '../../core/wording/places.ts';
import { timesName } from '../../core/wording/times.ts';
import { type Contribution, contributionsOf, sidedMoment } from './contribution.ts';
import { escapedMarkdown, table } from './markdown.ts';

/** A payload entry: what it weighs and displaces in both conditions, and the running sums after it. */
export function partHover(analysis: Analysis, index: number): string | null {
  const { boat } = analysis;
  const part = boat.payload.find(candidate => samePath(candidate.path, ['payload', index]));
  if (!part) return null;
  const where =
    part.inside === null ? 'in the flooded hull' : `in ${escapedMarkdown(part.inside)}, so it displaces nothing`;
  const weighed = part.massFrom === 'form' ? ' by its form and density' : '';
  const each = part.copies > 1 ? ` (${massText(part.mass / part.copies, boat.units)} each)` : '';
  const worked = part.worked.length > 0 ? `; ${part.worked.join(', ')}` : '';
  return [
    `**${escapedMarkdown(timesName(part))}**: ${massText(part.mass, boat.units)}${each}${weighed}, ${where}${worked}.`,
    conditionsTable(analysis, part),
    ...(part.material === 'lead' || part.material === 'lead shot' || part.material === 'foam'
      ? [effectsTable(analysis, part)]
      : []),
    runningWords(analysis, part),
  ].join('\n\n');
}

/** Lead and foam are there to trim the boat: what the piece does to each figure, and what a little more of it would. */
function effectsTable(analysis: Analysis, part: Part): string {
  const { kept, scheme, boat } = analysis;
  const whole = effectOfWhole(part, analysis, kept.cache, scheme.figures);
  const more = effectOfMore(part, analysis, kept.cache, scheme.figures);
  const { units } = boat;
  return table([
    ['', 'With this piece', capital(littleWords(part, units))],
    ...more.map(change => {
      const all = whole.find(({ figure, condition }) => figure === change.figure && condition === change.condition);
      return [
        capital(changedName(change)),
        all ? effectWords(all, units) : 'none without it',
        effectWords(change, units),
      ];
    }),
  ]);
}

function conditionsTable(analysis: Analysis, part: Part): string {
  const { units } = analysis.boat;
  const columns = contributionsOf(analysis, part);
  const row = (name: string, show: (c: Contribution) => string) => [name, ...columns.map(([, c]) => show(c))];
  return table([
    ['', ...columns.map(([name]) => name)],
    row('Displaces', c => volumeText(c.volume, units)),
    row('Weight in water', c => (c.net < 0 ? `lifts ${massText(-c.net, units)}` : massText(c.net, units))),
    row('Moment about midships', c => sidedMoment(c.aft, analysis, ['bow up', 'bow down']) ?? 'none'),
    row('Moment about the centreline', c => sidedMoment(c.starboard, analysis, ['to starboard', 'to port']) ?? 'none'),
  ]);
}

const centreWords = ([station, offset, height]: Vec3, units: FileUnits): string =>
  `, centre of mass at station ${stationText(station, units)}, ${offsetWords(offset, units)}, height ${heightText(height, units)}`;

/** Mass, centroid and reserve buoyancy of the bare hull and the list up to and with this entry. */
function runningWords({ boat, bodies }: Analysis, part: Part): string {
  const { units } = boat;
  const upTo = boat.payload.slice(0, boat.payload.indexOf(part) + 1);
  const aboard: readonly Weighed[] = [...boat.shells, ...boat.compartments, ...upTo];
  const mass = aboard.reduce((sum, entry) => sum + entry.mass, 0);
  const moment = aboard.reduce<Vec3>((sum, entry) => add(sum, scale(entry.centroid, entry.mass)), [0, 0, 0]);
  const reserve = bodies.density * bodies.volume - mass;
  const left =
    reserve >= 0
      ? `${massText(reserve, units)} of reserve buoyancy left`
      : `${massText(-reserve, units)} more than the boat can float`;
  return `After the list up to here: ${massText(mass, units)}${mass > 0 ? centreWords(scale(moment, 1 / mass), units) : ''}; ${left}.`;
}
