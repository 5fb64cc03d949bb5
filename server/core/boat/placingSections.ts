import type { Path } from '../../../schema/path.ts';
import type { Form } from '../geometry/form/form.ts';
import { movedForm } from '../geometry/form/moved.ts';
import { type Section, sectionsFormSteps } from '../geometry/mesh/sections.ts';
import { firstCrossing, loopArea, type Point2 } from '../geometry/outline/outline.ts';
import { finish, pacer, type Steps } from '../steps/steps.ts';
import { fairedSections } from './faired.ts';
import { fairedWords } from './fairedWords.ts';
import { type FromTheBow, fromTheBow } from './fromTheBow.ts';
import { measuredForm, middle, type Placed, type PlacedForm, tellUnused } from './placed.ts';
import { type Setting, tell } from './readingContext.ts';

/** A table of offsets, where it is tabulated; an `offset` puts it aside. */
export function placeSections(
  entry: PlacedForm,
  rows: NonNullable<PlacedForm['sections']>,
  setting: Setting,
): Placed | null {
  const forms = finish(tabulated(entry, rows, setting));
  if (!forms) return null;
  const { straight, form } = forms;
  tellUnused(entry, ['station', 'height', 'axis'], 'a table of offsets has its own stations and heights.', setting);
  const words = entry.faired ? [fairedWords(straight, form, setting)] : [];
  return measuredForm(form, setting.around.shapes.boundsOf(form), words);
}

/** Makes in steps what takes long to make of a table, so that it is at hand when it is placed. */
export function* sectionsReady(
  entry: PlacedForm,
  rows: NonNullable<PlacedForm['sections']>,
  { around, use, endsClosed }: Pick<Setting, 'around' | 'use' | 'endsClosed'>,
): Steps<void> {
  const forms = yield* tabulated(entry, rows, { around, use, endsClosed, path: [], findings: [] });
  if (!forms) return;
  yield;
  if (use === 'wall') yield* around.shapes.wallSteps(forms.form, endsClosed);
  else yield* around.shapes.solidSteps(forms.form);
}

interface Tabulated {
  /** With straight lines between its points. */
  readonly straight: Form;
  /** As it is asked for. */
  readonly form: Form;
}

/** The forms of a table, made once for its rows; null, with a finding, where they are none. */
function* tabulated(
  entry: PlacedForm,
  rows: NonNullable<PlacedForm['sections']>,
  setting: Setting,
): Steps<Tabulated | null> {
  const { units, shapes } = setting.around;
  const given = rows.map(
    ({ station, outline }): Section => ({
      station: station.value,
      outline: outline.map(([halfBreadth, height]): Point2 => [halfBreadth.value, height.value]),
    }),
  );
  const table = fromTheBow(given, ({ station }) => station, units);
  const aside = entry.offset ? middle(entry.offset) : 0;
  function* by(sections: readonly Section[]): Steps<Form> {
    const form = yield* sectionsFormSteps(sections, setting);
    return aside === 0 ? form : movedForm(form, [0, aside, 0]);
  }
  const as = `${setting.endsClosed} ${aside} ${table.isReversed}`;
  const straight = yield* shapes.tabulated(rows, `straight ${as}`, function* () {
    const before = setting.findings.length;
    yield* tellFaults(table, setting);
    return setting.findings.length > before ? null : yield* by(table.rows);
  });
  const form =
    straight && entry.faired
      ? yield* shapes.tabulated(rows, `faired ${as}`, () => by(fairedSections(table.rows)))
      : straight;
  return straight && form && { straight, form };
}

/** Pairs of stretches of an outline that are held against each other in one step. */
const PAIRS = 10_000;

function* tellFaults({ rows: sections, written, isReversed }: FromTheBow<Section>, setting: Setting): Steps<void> {
  const isDue = pacer(PAIRS);
  for (const [i, { station, outline }] of sections.entries()) {
    if (isDue(outline.length ** 2)) yield;
    const before = sections[i - 1];
    if (before && station <= before.station) {
      tell(
        setting,
        'sections-order',
        ['sections', written(i), 'station'],
        isReversed
          ? `Stations of a table of offsets run from end to end; section ${written(i) + 1} turns back, or lies where the next one does. For a step put the two a tenth of a millimetre apart.`
          : `Stations of a table of offsets rise from bow to stern; section ${i + 1} does not lie aft of the one before it. For a step put the two a tenth of a millimetre apart.`,
      );
    }
    tellOutlineFault(outline, written(i) + 1, ['sections', written(i), 'outline'], setting);
  }
  if (sections.every(({ outline }) => loopArea(halfLoop(outline)) === 0)) {
    tell(setting, 'sections-outline', ['sections'], 'None of these sections encloses anything: give half-breadths.');
  }
}

/** With the centreline between its ends. */
const halfLoop = (outline: readonly Point2[]): readonly Point2[] => [
  [0, outline[0]![1]],
  ...outline,
  [0, outline.at(-1)![1]],
];

function tellOutlineFault(outline: readonly Point2[], number: number, keys: Path, setting: Setting): void {
  const negative = outline.findIndex(([halfBreadth]) => halfBreadth < 0);
  if (negative >= 0) {
    tell(
      setting,
      'sections-outline',
      [...keys, negative, 0],
      'A half-breadth is measured from the centreline outward and cannot be negative; the port side is the mirror image.',
    );
    return;
  }
  const loop = halfLoop(outline);
  const crossing = firstCrossing(loop);
  if (crossing) {
    const [one, other] = crossing;
    // The loop has a centreline point before the outline's first one.
    tell(
      setting,
      'sections-outline',
      [...keys, Math.min(other, outline.length - 1)],
      `The outline of section ${number} crosses itself: ${stretch(one, outline.length)} meets ${stretch(other, outline.length)}. Check the order of its points, from keel to deck.`,
    );
    return;
  }
  if (loopArea(loop) < 0) {
    tell(
      setting,
      'sections-outline',
      keys,
      `The outline of section ${number} runs from deck to keel. Begin it at the keel.`,
    );
  }
}

/** A stretch of the loop in words; points of the outline count from 1. */
function stretch(from: number, points: number): string {
  if (from === 0) return 'the flat keel';
  return from >= points ? 'the flat deck' : `the line from point ${from} to ${from + 1}`;
}
