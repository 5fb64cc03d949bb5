import type { PartEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { TrialEntry } from '../../../schema/trials.ts';
import type { Finding } from '../findings/finding.ts';
import type { Part } from './boat.ts';
import { entryFault, valueFault } from './fault.ts';
import { balanceOf, supportsOf } from './readBench.ts';
import type { ReadingContext } from './readingContext.ts';
import { jug, kitchenScale, measured, READS } from './readingUncertainties.ts';
import { readPart } from './readPart.ts';
import { readWater } from './readWater.ts';
import type { Source } from './source.ts';
import type { Measured, Reading, Shift, TankReading, Trial } from './trial.ts';

/** Tilts past which a boat is no longer afloat as it should be, rad. */
const MOST_TILT = Math.PI / 3;

/** Readings that each condition can have; what else stands in the entry is told. */
const BELONGS: Readonly<Record<TrialEntry['condition'], readonly string[]>> = {
  surfaced: ['marks', 'freeboard', 'heel', 'trim', 'fill', 'water', 'level', 'tank'],
  submerged: ['heel', 'trim', 'fill', 'water', 'level', 'tank', 'proud'],
  inclining: ['mass', 'moved', 'heel', 'shifts', 'fill', 'water', 'level', 'tank'],
  bench: ['scales', 'balance', 'fill', 'water', 'level', 'tank'],
  hung: ['hooks', 'fill', 'water', 'level', 'tank'],
};
const ALWAYS = ['date', 'condition', 'slips', 'aboard', 'without', 'pool', 'note'];

/** A trial from its checked entry; readings that cannot be are told and left out. */
export function readTrial(entry: TrialEntry, path: Path, around: ReadingContext, findings: Finding[]): Trial {
  const number = Number(path.at(-1)) + 1;
  tellStrangers(entry, path, findings);
  const shifts = shiftsOf(entry, path, findings);
  const tank = tankReading(entry, path, findings);
  const isUnder = entry.condition === 'submerged';
  const readings = [...readingsOf(entry, path, shifts, findings), ...(isUnder && tank ? [tank] : [])];
  if (readings.length === 0 && !findings.some(({ severity }) => severity === 'error'))
    findings.push(nothingRead(entry, path));
  return {
    path,
    name: entry.date ?? `trial ${number}`,
    condition: entry.condition,
    date: entry.date ?? null,
    note: entry.note ?? null,
    readings,
    left: isUnder ? null : leftIn(entry, path, tank),
    proud:
      isUnder && entry.proud && !isStruck(entry, 'proud')
        ? measured(entry.proud, [...path, 'proud'], READS.proud)
        : null,
    shifts,
    aboard: aboardOf(entry, path, around, findings),
    without: entry.without ?? [],
    formerly: [],
    pool: entry.pool ?? null,
    water: entry.pool ? readWater(entry.pool, findings, [...path, 'pool']) : null,
  };
}

/** What was in the tanks of a boat that did not hang neutral; on the bench and on the hook nothing unless given. */
function leftIn(entry: TrialEntry, path: Path, tank: TankReading | null): TankReading | null {
  if (tank && !tank.isSlip) {
    const written = entry[tank.of]?.sigma ?? null;
    const isBrim = tank.of === 'fill' && (tank.value <= 0 || tank.value >= 1);
    return isBrim && written === null ? { ...tank, sigma: 0 } : tank;
  }
  if (entry.condition !== 'bench' && entry.condition !== 'hung') return null;
  return { path, of: 'fill', value: 0, sigma: 0, tank: null, isSlip: false };
}

/** Struck out by its key. */
const isStruck = ({ slips }: TrialEntry, key: string): boolean => slips?.some(slip => slip === key) ?? false;

type Shifted = Shift & { readonly tilt: Measured; readonly isSlip: boolean };

/** All that was read, but for what is in the tanks. */
function readingsOf(
  entry: TrialEntry,
  path: Path,
  shifts: readonly Shifted[],
  findings: Finding[],
): readonly Reading[] {
  switch (entry.condition) {
    case 'inclining':
      return shifts.map(({ tilt, isSlip }, shift) => ({ ...tilt, of: 'tilt', shift, isSlip }));
    case 'bench':
      return [...supportsOf('scale', entry.scales, [...path, 'scales'], findings), ...balanceOf(entry, path)];
    case 'hung':
      return supportsOf('hook', entry.hooks, [...path, 'hooks'], findings);
    default:
      return [
        ...(entry.condition === 'submerged' ? [] : [...marksOf(entry, path), ...freeboardsOf(entry, path)]),
        ...angleReading('trim', entry, path, findings),
        ...angleReading('heel', entry, path, findings),
      ];
  }
}

function aboardOf(
  entry: TrialEntry,
  path: Path,
  around: ReadingContext,
  findings: Finding[],
): readonly Source<PartEntry, Part>[] {
  return (entry.aboard ?? []).flatMap((checked, i) => {
    const part = readPart(checked, [...path, 'aboard', i], around, findings);
    return part ? [{ checked, entry: part }] : [];
  });
}

const marksOf = (entry: TrialEntry, path: Path): readonly Reading[] =>
  (entry.marks ?? []).map(({ station, height, slip = false }, i) => ({
    ...measured(height, [...path, 'marks', i, 'height'], READS.mark),
    of: 'mark',
    isSlip: slip,
    station: station.value,
  }));

const freeboardsOf = (entry: TrialEntry, path: Path): readonly Reading[] =>
  (entry.freeboard ?? []).map(({ station, height, of, slip = false }, i) => ({
    ...measured(height, [...path, 'freeboard', i, 'height'], READS.mark),
    of: 'freeboard',
    isSlip: slip,
    station: station.value,
    top: of ?? null,
  }));

function angleReading(of: 'trim' | 'heel', entry: TrialEntry, path: Path, findings: Finding[]): readonly Reading[] {
  const angle = entry[of];
  if (!angle || isTooFar(angle, [...path, of], findings)) return [];
  return [{ ...measured(angle, [...path, of], READS.angle), of, isSlip: isStruck(entry, of) }];
}

function isTooFar(angle: Quantity, path: Path, findings: Finding[]): boolean {
  if (Math.abs(angle.value) <= MOST_TILT) return false;
  findings.push(
    valueFault(
      'trial-impossible',
      path,
      'A boat that lies over by more than 60° is not in trim enough to be read. Give the angle in degrees from level, such as 2°.',
    ),
  );
  return true;
}

const WAYS = ['fill', 'water', 'level'] as const;

/** What was read of the tanks: one of the three ways. */
function tankReading(entry: TrialEntry, path: Path, findings: Finding[]): TankReading | null {
  const given = WAYS.filter(way => entry[way] !== undefined);
  const [of] = given;
  const quantity = of && entry[of];
  if (!of || !quantity) return null;
  for (const extra of given.slice(1)) {
    findings.push(
      valueFault(
        'trial-impossible',
        [...path, extra],
        `The water in the tanks is given twice, as “${of}” and as “${extra}”. Keep the one that was read; the other is left out.`,
        { mends: [{ title: `Remove “${extra}”`, changes: [{ kind: 'remove', path: [...path, extra] }] }] },
      ),
    );
  }
  const usual = of === 'fill' ? READS.fill : of === 'water' ? jug(quantity.value) : READS.mark;
  return { ...measured(quantity, [...path, of], usual), of, tank: entry.tank ?? null, isSlip: isStruck(entry, of) };
}

function shiftsOf(entry: TrialEntry, path: Path, findings: Finding[]): readonly Shifted[] {
  if (entry.condition !== 'inclining') return [];
  const single =
    entry.mass && entry.moved && entry.heel
      ? [{ mass: entry.mass, moved: entry.moved, heel: entry.heel, slip: isStruck(entry, 'heel'), at: path }]
      : [];
  const isHalf = single.length === 0 && (entry.mass ?? entry.moved ?? entry.heel) !== undefined;
  if (isHalf || (single.length === 0 && !entry.shifts?.length)) {
    findings.push(
      entryFault(
        'trial-impossible',
        path,
        'An inclining trial needs the weight that was moved, how far, and the heel that it made: “mass: 50 g”, “moved: 40 mm”, “heel: 4.2°”; or several of them under “shifts:”.',
      ),
    );
  }
  const several = (entry.shifts ?? []).map((shift, i) => ({ ...shift, at: [...path, 'shifts', i] }));
  return [...single, ...several].flatMap(({ mass, moved, heel, slip = false, at }) => {
    if (isTooFar(heel, [...at, 'heel'], findings) || isWrongWay(moved, heel, at, findings)) return [];
    return [
      {
        mass: measured(mass, [...at, 'mass'], kitchenScale(mass.value)),
        moved: measured(moved, [...at, 'moved'], READS.moved),
        tilt: measured(heel, [...at, 'heel'], READS.angle),
        isSlip: slip,
      },
    ];
  });
}

/** A weight moved to one side heels a boat that stays upright to that side. */
function isWrongWay(moved: Quantity, heel: Quantity, at: Path, findings: Finding[]): boolean {
  if (moved.value * heel.value > 0) return false;
  if (moved.value === 0 && heel.value === 0) return false;
  const message =
    moved.value === 0
      ? 'A weight that was not moved makes no heel. Say how far it was moved to starboard, or to port as a negative length.'
      : 'The weight was moved to one side and the boat is said to have heeled to the other, or not at all. To starboard both are positive, to port both negative.';
  findings.push(valueFault('trial-impossible', [...at, 'heel'], message));
  return true;
}

/** Keys that mean nothing in this condition. */
function tellStrangers(entry: TrialEntry, path: Path, findings: Finding[]): void {
  const { condition } = entry;
  const strangers = Object.keys(entry).filter(key => ![...BELONGS[condition], ...ALWAYS].includes(key));
  for (const key of strangers) {
    findings.push({
      code: 'trial-reading-unused',
      severity: 'warning',
      about: 'trials',
      message: `“${key}” is nothing that ${condition === 'inclining' ? 'an' : 'a'} ${condition} trial tells, and is left out. Here belong: ${BELONGS[condition].join(', ')}.`,
      place: { on: 'key', path: [...path, key] },
    });
  }
}

const MARKS = '“marks:” with a station and a height near each end';
const EXAMPLES: Readonly<Record<TrialEntry['condition'], string>> = {
  surfaced: MARKS,
  submerged: '“fill: 63 %” and “trim: 2°”',
  inclining: MARKS,
  bench: '“scales:” with a station and what each scale reads',
  hung: '“hooks:” with a station and what each spring balance reads',
};

function nothingRead({ condition }: TrialEntry, path: Path): Finding {
  const example = EXAMPLES[condition];
  return entryFault('trial-empty', path, `This trial has no readings yet, such as ${example}.`, 'information');
}
