import { countedAt } from '../../../schema/places.ts';
import type { Boat } from '../boat/boat.ts';
import type { Change, Finding, Mend } from '../findings/finding.ts';
import { resizedTank, roundTank } from '../planning/tankMeasures.ts';
import type { StillWanted } from '../planning/wanted.ts';
import { massWanted, tankWords } from '../planning/wantedWords.ts';
import { bare, exactText } from '../wording/exactText.ts';
import { tapeStep, tapeText, volumeText } from '../wording/numbers.ts';
import { endsCounted } from '../wording/places.ts';
import { tankPlace } from './places.ts';

/** With more than this share of its displacement not entered yet, a boat is being planned: what it does is no alarm (common practice, no source). */
const BEING_PLANNED = 0.1;

/** Much of the boat is still to be entered. */
export const isHalfEntered = (wanted: StillWanted | null): boolean =>
  wanted !== null && wanted.mass > BEING_PLANNED * wanted.displacement;

/** What is still wanted of a boat that is half entered, and the tank that it wants. */
export function judgeWanted(boat: Boat, wanted: StillWanted | null): readonly Finding[] {
  if (!wanted) return [];
  const findings: Finding[] = [];
  if (isHalfEntered(wanted)) {
    findings.push({
      code: 'still-wanted',
      about: 'wanted',
      severity: 'information',
      message: `For the painted waterline the boat still wants ${massWanted(wanted, boat)}.`,
      place: { on: 'key', path: ['hull', 'waterline'] },
    });
  }
  const { tank } = wanted;
  if (tank.isRight || tank.water <= 0) return findings;
  findings.push({
    code: 'tank-wanted',
    about: 'wanted',
    severity: 'information',
    message: tankWords(wanted, boat),
    place: tankPlace(boat),
    mends: tankMends(boat, wanted),
  });
  return findings;
}

/** Writes the tank, or makes the one that there is as long as it takes. */
function tankMends(boat: Boat, { tank }: StillWanted): readonly Mend[] {
  const { units } = boat;
  const onTape = (metres: number): number => Math.round(metres / tapeStep(units)) * tapeStep(units);
  const stretch = (...stations: readonly [number, number]): string => {
    const [from, to] = endsCounted(stations, 'station', units);
    return `${bare(exactText(onTape(from), units))} to ${exactText(onTape(to), units)}`;
  };
  const longer = resizedTank(boat, tank);
  if (longer?.fits) {
    const change: Change = {
      kind: 'replace',
      place: { on: 'value', path: [...longer.tank.path, 'station'] },
      text: stretch(longer.from, longer.to),
    };
    const title = `Make “${longer.tank.name}” ${tapeText(longer.to - longer.from, units)} long`;
    return [{ title, changes: [change] }];
  }
  const round = tank.held > 0 ? null : roundTank(boat, tank);
  if (!round?.fits) return [];
  const offset: readonly (readonly [string, string])[] =
    Math.abs(round.offset) > 1e-9 ? [['offset', exactText(round.offset, units)]] : [];
  const entry = {
    fields: [
      ['name', 'main ballast'],
      ['in', round.compartment.name],
      ['round', exactText(onTape(round.diameter), units)],
      ['station', stretch(round.from, round.to)],
      ...offset,
      ['height', exactText(countedAt(round.height, 'height', units), units)],
      ['kind', 'piston'],
    ],
  } as const;
  return [
    {
      title: `Write a tank of ${volumeText(tank.capacity, units)} in “${round.compartment.name}”`,
      changes: [{ kind: 'append', path: ['hull', 'tanks'], entry }],
    },
  ];
}
