import type { Boat } from '../../server/core/boat/boat.ts';
import { readText } from './arrange.ts';
import { type Nearing, nearings, STAGES } from './calibration.ts';
import type { Case } from './cases.ts';
import type { Told } from './desk.ts';
import { FIGURES, type Figure, type Miss, missesOf } from './figures.ts';
import type { Try } from './work.ts';

/** The measure of the whole job as Markdown lines. `wide`: the same boats, limits twice as wide. */
export function measureLines(cases: readonly Case[], wide: readonly Case[]): readonly string[] {
  return [
    '## The whole job',
    '',
    `A simulated builder trims ${Math.max(cases.length, wide.length)} true boats drawn about their files; half of them are floated by least energy, by other`,
    'means than the program’s, and half are weighed on two scales before the first try. He takes the first correction, tries',
    'the boat, writes down what he reads, takes the first correction again, which heeds the trials, and tries again. Counted',
    'are boats that can be trimmed when one knows the truth; and corrections that left the true boat further out, of those',
    'that were taken. By feel: a rule of three from the last piece, perfect eyes, any amount of lead and foam (rough, no',
    'source).',
    '',
    ...tableOf(
      ['In trim at try', 'boats', '1', '2', '3', '6', '12', 'made worse at the desk', 'after a try'],
      [...rowsOf('', cases), ...rowsOf('limits twice as wide: ', wide)],
    ),
    '',
    ...calibrationLines(cases),
  ];
}

function calibrationLines(cases: readonly Case[]): readonly string[] {
  if (cases.every(({ story }) => story.calibration.length === 0)) return [];
  return [
    'Figures within one and two of their ± of the true boat, on the first day in the water (68 and 95 % when the ± is',
    'right); before any trial no ± can know of what is hidden:',
    '',
    ...tableOf(
      ['Figure', ...HELD.flatMap(([words]) => STAGES.map(stage => `${words}: ${stage}`))],
      [...FIGURES, null].map(figure => [
        figure ?? 'all',
        ...HELD.flatMap(([, holds]) => calibrationCells(cases.filter(holds), figure)),
      ]),
    ),
    '',
    'Figures with the trials against those before: nearer to the truth; and nearer, or no further from it than a third of',
    'their ± (a figure that was right by chance can come no nearer). Last what is to be expected of the first by how much the',
    'readings narrow each ±, were nothing hidden: nine in ten come nearer only where it shrinks to less than a sixth.',
    '',
    ...tableOf(
      ['', 'figures', 'nearer', 'nearer, or as near as anybody can tell', 'nearer, to be expected'],
      [['all', () => true] as const, ...HELD].map(([words, holds]) => {
        const found = cases.filter(holds).flatMap(({ story }) => nearings(story.calibration));
        const expected = found.reduce((sum, nearing) => sum + nearing.expected, 0);
        const mean = percent(expected, found.length);
        const share = (one: (nearing: Nearing) => boolean) => percent(found.filter(one).length, found.length);
        return [words, `${found.length}`, share(({ isNearer }) => isNearer), share(({ isNear }) => isNear), mean];
      }),
    ),
    '',
  ];
}

type Kind = readonly [words: string, holds: (one: Case) => boolean];

const HELD: readonly Kind[] = [
  ['nothing hidden', ({ truth }) => truth.hidden.length === 0],
  ['something hidden', ({ truth }) => truth.hidden.length > 0],
];

type Row = readonly string[];

const tableOf = (head: Row, rows: readonly Row[]): readonly string[] =>
  [head, head.map(() => '---'), ...rows].map(cells => `| ${cells.join(' | ')} |`);

function rowsOf(prefix: string, all: readonly Case[]): readonly Row[] {
  const cases = all.filter(({ isTrimmable }) => isTrimmable);
  if (cases.length === 0) return [];
  const kinds: readonly Kind[] = [
    ['by the book', () => true],
    ...HELD,
    ['weighed on two scales first', ({ story }) => story.wasWeighed],
    ['not weighed', ({ story }) => !story.wasWeighed],
    ['floated by other means', ({ isPlain }) => isPlain],
    ['touchy boats', ({ boat }) => boat.plan.isTouchy],
  ];
  const rows = kinds.flatMap(([words, holds]) => {
    const some = cases.filter(holds);
    const worseOf = (tries: readonly Try[]): string => {
      const taken = tries.filter(({ correction }) => correction !== null);
      return `${taken.filter(({ madeWorse }) => madeWorse).length} of ${taken.length}`;
    };
    const atTheDesk = worseOf(some.flatMap(({ story }) => story.tries.slice(0, 1)));
    const afterTry = worseOf(some.flatMap(({ story }) => story.tries.slice(1)));
    const isAll = some.length === cases.length && words !== 'by the book';
    if (some.length === 0 || isAll) return [];
    const inTrim = [1, 2, 3, 6].map(by => share(some, by, ({ story }) => story.inTrimAt));
    return [[prefix + words, `${some.length}`, ...inTrim, '', atTheDesk, afterTry]];
  });
  const held = cases.filter(({ couldBe }) => couldBe.length > 0);
  const weighed = held.filter(({ story }) => story.wasWeighed);
  const expected = (some: readonly Case[], chanceAt: (one: Case, at: number) => number | null): readonly string[] =>
    [1, 2, 3].map(by => {
      const chances = some.map(one => {
        const at = Math.min(by, one.story.tries.length);
        return (one.story.inTrimAt ?? Number.POSITIVE_INFINITY) < by ? 1 : (chanceAt(one, at - 1) ?? 0);
      });
      return percent(
        chances.reduce((sum, chance) => sum + chance, 0),
        chances.length,
      );
    });
  const sureAt = ({ story }: Case, i: number) => story.tries[i]!.chance;
  const couldBeAt = ({ couldBe }: Case, i: number) => couldBe[i]!;
  const bounds = [
    ['as sure as the program was', held, sureAt],
    ['could be had', held, couldBeAt],
    ['could be had: weighed on two scales first', weighed, couldBeAt],
  ] as const;
  const bound = bounds
    .filter(([, some]) => some.length > 0)
    .map(([words, some, at]): Row => [prefix + words, `${some.length}`, ...expected(some, at), '', '', '', '']);
  const felt = [1, 2, 3, 6, 12].map(by => share(cases, by, ({ feltAt }) => feltAt));
  return [...rows, ...bound, [`${prefix}by feel`, `${cases.length}`, ...felt, '', '']];
}

const share = (cases: readonly Case[], by: number, at: (one: Case) => number | null): string =>
  percent(cases.filter(one => (at(one) ?? Number.POSITIVE_INFINITY) <= by).length, cases.length);

const percent = (part: number, whole: number): string => (whole === 0 ? '' : `${Math.round((100 * part) / whole)} %`);

function calibrationCells(cases: readonly Case[], figure: string | null): readonly string[] {
  const held = cases.flatMap(({ story }) => story.calibration);
  return STAGES.map(stage => {
    const some = held.filter(one => one.stage === stage && (figure === null || one.figure === figure));
    const within = (most: number) => percent(some.filter(({ off }) => Math.abs(off) <= most).length, some.length);
    return some.length === 0 ? '' : `${within(1)}, ${within(2)} (${some.length})`;
  });
}

/** What became of one boat, a line for the boat and one for each try. */
export function diagnosisOf({ boat, truth, story, isTrimmable, isPlain, feltAt, couldBe }: Case): readonly string[] {
  const { seed, plan, mass } = boat;
  const filed = readText(boat.text).boat;
  const hidden = truth.hidden.map(({ words }) => words).join(', ') || 'nothing hidden';
  const kind = `${plan.layout}, ${plan.care}${plan.isTouchy ? ', touchy' : ''}, ${plan.length} mm, ${mass.toFixed(0)} g`;
  const end =
    story.inTrimAt === null ? (isTrimmable ? 'NOT in trim' : 'cannot be trimmed') : `in trim at ${story.inTrimAt}`;
  return [
    `${seed}: ${kind}${isPlain ? ', floated plainly' : ''}; ${hidden}: ${end} (by feel ${feltAt ?? 'never'})`,
    ...story.tries.map(({ misses, told, lesson, correction, chance, madeWorse }, i) => {
      const before = toldInLimits(told, filed);
      const out = misses
        .filter(({ by }) => Math.abs(by) > 1)
        .map(({ figure, by }) => `${figure} ${by.toFixed(1)} (told ${before.get(figure) ?? 'nothing'})`);
      const words = out.length > 0 ? out.join(', ') : 'in trim';
      const sure = [chance, couldBe[i]].map(one => percentOf(one)).join(' of ');
      return `  try ${i + 1} (${sure}): ${correction ?? 'no correction'} | ${words}${madeWorse ? ' MADE WORSE' : ''} | ${lesson ?? 'no lesson'}`;
    }),
  ];
}

const percentOf = (chance: number | null | undefined): string =>
  chance === null || chance === undefined ? '?' : `${Math.round(100 * chance)}`;

/** Figures as they were told, in limits as the misses are. */
function toldInLimits(told: ReadonlyMap<Figure, Told>, filed: Boat): ReadonlyMap<Miss['figure'], string> {
  const at = (sigmas: number): readonly Miss[] => {
    const figure = (name: Figure): number => {
      const { value, sigma } = told.get(name) ?? { value: 0, sigma: 0 };
      return value + sigmas * sigma;
    };
    const afloat = { draft: figure('draft'), trim: figure('trim'), heel: figure('heel'), gm: figure('gm') };
    const [fill, trim, heel, bg] = [figure('fill'), figure('underTrim'), figure('underHeel'), figure('bg')];
    return missesOf({ afloat, hanging: { fill, trim, heel, bg, bgLeft: bg, stable: true } }, filed);
  };
  const [middle, off] = [at(0), at(1)];
  return new Map(
    middle
      .filter(({ figure }) => told.has(figure as Figure))
      .map(({ figure, by }, i) => [figure, `${by.toFixed(1)} ± ${Math.abs(off[i]!.by - by).toFixed(1)}`]),
  );
}
