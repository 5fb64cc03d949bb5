import type { Boat } from '../boat/boat.ts';
import { lengthText, massText, offsetWords, percentText, tapeText, volumeText } from '../wording/numbers.ts';
import { heightFromWords, stationTape } from '../wording/places.ts';
import { resizedTank, roundTank } from './tankMeasures.ts';
import type { StillWanted, TankWanted } from './wanted.ts';

/** Less than this share of the displacement is for the last piece of lead, not for planning (common practice, no source). */
const LAST_PIECE = 0.01;

/** A boat that is all there but for its last pieces of lead: what is wanted is no plan any more. */
export const isPlanned = ({ mass, displacement }: StillWanted): boolean => Math.abs(mass) <= LAST_PIECE * displacement;

/** What must come aboard, or go: "412 g more, its centre at station 455 mm, 2 mm to port, no higher than 31 mm". */
export function massWanted(wanted: StillWanted, { units }: Boat): string {
  const { mass, centre, highest, shift } = wanted;
  const amount = massText(Math.abs(mass), units);
  const most = mass > 0 ? `${amount} more` : `${amount} too much`;
  if (!centre) {
    const moves = [
      ...awayWords(shift[0], 'aft', 'forward', units),
      ...awayWords(shift[1], 'to starboard', 'to port', units),
    ];
    return moves.length === 0 ? most : `${most}; what is aboard has its centre to move ${moves.join(' and ')}`;
  }
  const place = `its centre at station ${stationTape(centre[0], units)}, ${offsetWords(centre[1], units)}`;
  return `${most}, ${place}${mass > 0 ? heightWords(highest, units) : ''}`;
}

type Units = Boat['units'];

function heightWords(highest: number | null, units: Units): string {
  if (highest === null) return '';
  // Under the keel there is no place for it: what is aboard already lies too high.
  if (highest < 0) return '; and lower than the keel: what is aboard already lies too high';
  return `, no higher than ${heightFromWords(highest, units)}`;
}

function awayWords(metres: number, positive: string, negative: string, units: Units): readonly string[] {
  const text = lengthText(Math.abs(metres), units);
  return /^0 /.test(text) ? [] : [`${text} ${metres > 0 ? positive : negative}`];
}

/** What the tanks should hold together, and where: "595 ml, its centre at station 431 mm; there are 402 ml". */
export function ballastWanted({ capacity, held, centre }: TankWanted, { units }: Boat): string {
  const place = centre ? `, its centre at station ${stationTape(centre[0], units)}` : '';
  const now = held > 0 ? `; there are ${volumeText(held, units)}` : '';
  return `${volumeText(capacity, units)}${place}${now}`;
}

/** What such a tank measures; null where that cannot be told. */
export function measuresWanted({ tank }: StillWanted, boat: Boat): string | null {
  const { units } = boat;
  const longer = resizedTank(boat, tank);
  if (longer) {
    const length = `“${longer.tank.name}” ${tapeText(longer.to - longer.from, units)} long`;
    return longer.fits ? `${length} holds that` : `${length} would hold that, more than its compartment is long`;
  }
  const round = tank.held > 0 ? null : roundTank(boat, tank);
  if (!round) return null;
  const size = `${tapeText(round.diameter, units)} round and ${tapeText(round.to - round.from, units)} long`;
  const where = `“${round.compartment.name}”`;
  return round.fits
    ? `a tube ${size} goes into ${where}`
    : `a tube ${size} does not go into ${where}: a longer or wider compartment, or less of the boat above its waterline`;
}

/** All of it in a sentence or two, for a hover or a finding. */
export function wantedWords(wanted: StillWanted, boat: Boat): string {
  const mass = isPlanned(wanted)
    ? `The boat weighs what its painted waterline asks, to ${massText(Math.abs(wanted.mass), boat.units)}.`
    : `For the painted waterline: ${massWanted(wanted, boat)}.`;
  return wanted.tank.water > 0 ? `${mass} ${tankWords(wanted, boat)}` : mass;
}

const massRange = ([least, most]: readonly [number, number], units: Units): string =>
  `${massText(least, units)} to ${massText(most, units)}`;

/** What the tanks should hold, and what such a tank measures, in a sentence. */
export function tankWords(wanted: StillWanted, boat: Boat): string {
  const { tank } = wanted;
  if (tank.isRight && tank.light)
    return `With its tanks full it is left light by ${massRange(tank.light, boat.units)}, as is asked.`;
  if (tank.isRight)
    return `The tanks take it down to neutral when they are ${percentText(tank.water / tank.held)} full then.`;
  const measures = measuresWanted(wanted, boat);
  const measured = measures === null ? '' : `: ${measures}`;
  if (tank.light)
    return `To be left light by ${massRange(tank.light, boat.units)} with full tanks it takes a ballast tank of ${ballastWanted(tank, boat)}${measured}.`;
  return `To hang neutral ${percentText(tank.fill)} full it takes a ballast tank of ${ballastWanted(tank, boat)}${measured}.`;
}
