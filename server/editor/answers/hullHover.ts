import { type Path, samePath } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Entry } from '../../core/boat/boat.ts';
import { findSlots } from '../../core/corrections/room/slots.ts';
import { addImmersed, emptyImmersion } from '../../core/geometry/cut/immersion.ts';
import { BLOW_CAUTION, blowWords } from '../../core/judges/blowWords.ts';
import { tankWords } from '../../core/planning/wantedWords.ts';
import { capital } from '../../core/wording/capital.ts';
import { lengthText, massText, percentText, volumeText } from '../../core/wording/numbers.ts';
import { endsCounted } from '../../core/wording/places.ts';
import { timesName } from '../../core/wording/times.ts';
import { escapedMarkdown } from './markdown.ts';

const entryAt = <E extends Entry>(entries: readonly E[], path: Path): E | null =>
  entries.find(entry => samePath(entry.path, path)) ?? null;

/** A shell: its wall, how thick that makes it, and how much of it the tank must sink. */
export function shellHover(analysis: Analysis, index: number): string | null {
  const { boat } = analysis;
  const shell = entryAt(boat.shells, ['hull', 'shells', index]);
  if (!shell) return null;
  const wall = analysis.shapes.wallOf(shell.form, shell.endsClosed);
  const thick = lengthText(shell.volume / wall.area, boat.units);
  const buoyancy = massText(boat.water.density * shell.volume, boat.units);
  return `**${escapedMarkdown(timesName(shell))}**: free-flooding, only its wall displaces: ${volumeText(shell.volume, boat.units)}, as if ${thick} thick all over. It weighs ${massText(shell.mass, boat.units)} and is buoyed up by ${buoyancy} under water.${aboveWords(analysis, shell)}${formWords(shell)}`;
}

/** A compartment: what it displaces whole, and what of it floats the boat. */
export function compartmentHover(analysis: Analysis, index: number): string | null {
  const { boat } = analysis;
  const compartment = entryAt(boat.compartments, ['hull', 'compartments', index]);
  if (!compartment) return null;
  const inside = boat.payload.filter(part => part.inside === compartment.name);
  const load = inside.reduce((sum, part) => sum + part.mass, 0);
  const buoyancy = massText(boat.water.density * compartment.volume, boat.units);
  return `**${escapedMarkdown(timesName(compartment))}**: watertight, displaces ${volumeText(compartment.volume, boat.units)}, so that it is buoyed up by ${buoyancy}. Empty it weighs ${massText(compartment.mass, boat.units)}; ${inside.length} parts in it weigh ${massText(load, boat.units)}.${aboveWords(analysis, compartment)}${formWords(compartment)}`;
}

/** What was worked out of its form, or read of its mesh. */
const formWords = ({ worked }: { readonly worked: readonly string[] }): string =>
  worked.length > 0 ? `\n\nForm: ${escapedMarkdown(worked.join('; '))}.` : '';

/** How much of a displacing entry stands out of the water when surfaced: that much the tank must sink. */
function aboveWords({ boat, bodies, surfaced }: Analysis, entry: Entry): string {
  const body = bodies.displacers.find(displacer => displacer.entry === entry)?.body;
  // A shell of no mass is a wall of no thickness: nothing of it is anywhere.
  if (!body || !(body.volume > 0) || surfaced.status !== 'afloat') return '';
  const sums = emptyImmersion();
  addImmersed(body, surfaced.up, surfaced.level, sums);
  const above = body.volume - sums.volume;
  if (above < 1e-4 * body.volume) return ' Surfaced, all of it is under water.';
  const water = massText(bodies.density * above, boat.units);
  return ` Surfaced, ${percentText(above / body.volume)} of it stands out of the water: ${water} that the tank must sink.`;
}

/** All tanks together: what they should hold. */
export const tanksHover = ({ boat, wanted }: Analysis): string | null =>
  wanted && wanted.tank.water > 0 ? tankWords(wanted, boat) : null;

/** A tank: its capacity, the neutral fill, and what its free surface costs. */
export function tankHover(analysis: Analysis, index: number): string | null {
  const { blows, boat, submerged } = analysis;
  const tank = entryAt(boat.tanks, ['hull', 'tanks', index]);
  if (!tank) return null;
  const { units } = boat;
  const surface =
    tank.kind === 'piston' || tank.kind === 'bladder'
      ? 'Its water has no free surface.'
      : `Its water stays level as the boat tilts${tank.copies > 1 ? ', in each by itself' : ''}${tank.cells > 1 ? `, in ${tank.cells} cells` : ''}. Baffles with holes only slow it down and do not count.`;
  const lines = [
    `**${escapedMarkdown(timesName(tank))}**: holds ${volumeText(tank.capacity, units)}. ${surface}${formWords(tank)}`,
  ];
  if (submerged.status === 'neutral') {
    const { bg, bgEffective, bgEffectiveLongitudinal } = submerged;
    const eaten = (left: number) => lengthText(Math.max(0, bg - left), units);
    const lost = `The free surfaces take ${eaten(bgEffectiveLongitudinal)} in trim and ${eaten(bgEffective)} in heel from the ${lengthText(bg, units)} that B lies above G.`;
    const hasSurface = tank.kind === 'sealed' || tank.kind === 'vented';
    const water = volumeText(submerged.fill * tank.capacity, units);
    lines.push(
      submerged.heldDown === null
        ? `Submerged, the boat hangs neutral at ${percentText(submerged.fill)}: ${water} in this tank.${hasSurface ? ` ${lost}` : ''}`
        : `Submerged it is full, and its planes hold ${massText(submerged.heldDown, units)} down.`,
    );
  }
  const blow = blows.find(candidate => candidate.tank === tank);
  if (blow) lines.push(`${capital(blowWords(blow, units))}. ${BLOW_CAUTION}`);
  if (tank.kind === 'sealed')
    lines.push(
      'A sealed tank is a pressure vessel when it fills: keep to what its maker rates it for, and test it away from faces.',
    );
  return lines.join('\n\n');
}

/** A bay: how much lead or foam still goes in, cut from the stock. */
export function bayHover(analysis: Analysis, index: number): string | null {
  const { boat } = analysis;
  const bay = entryAt(boat.bays, ['bays', index]);
  if (!bay) return null;
  const { units } = boat;
  const free = findSlots(analysis.boatToTrim?.boat ?? boat).filter(slot => slot.bay.name === bay.name);
  if (free.length === 0)
    return `**${escapedMarkdown(bay.name)}**: no ${bay.takes} from the stock fits in: its room is taken, or the strip is too thick.`;
  const mass = free.reduce((sum, slot) => sum + slot.massPerLength * (slot.station[1] - slot.station[0]), 0);
  const room = free
    .map(slot =>
      endsCounted(slot.station, 'station', units)
        .map(end => lengthText(end, units))
        .join(' to '),
    )
    .join(' and ');
  return `**${escapedMarkdown(bay.name)}**: takes up to ${massText(mass, units)} of ${bay.takes} from the stock; free from station ${room}.`;
}
