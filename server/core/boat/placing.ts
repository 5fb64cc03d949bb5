import type { PartEntry } from '../../../schema/hull.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Form } from '../geometry/form/form.ts';
import { lengthText } from '../wording/numbers.ts';
import { measuredForm, type Placed, type PlacedEntry, type PlacedForm, TAPE, tellUnused } from './placed.ts';
import { placeBox } from './placingBox.ts';
import { placeMesh } from './placingMesh.ts';
import { placeBall, placeProfile, placeRound } from './placingRound.ts';
import { placeSections } from './placingSections.ts';
import { type Setting, tell } from './readingContext.ts';
import { withSense } from './senseOfForm.ts';

const FORMS = ['round', 'box', 'ball', 'profile', 'sections', 'mesh', 'forms'] as const;

/**
 * Places an entry; null, with a finding, when it cannot be. `volume` is what it displaces by mass and density or by
 * dunking, m3, if known; with it the sizes that the entry leaves out follow: one missing is solved, two missing are
 * equal, three make a ball.
 */
export function placeEntry(entry: PlacedEntry, volume: number | null, setting: Setting): Placed | null {
  const given = FORMS.filter(key => entry[key] !== undefined);
  const second = given[1];
  if (second) {
    return tell(
      setting,
      'two-forms',
      [second],
      `This has two forms, “${given[0]}” and “${second}”. Keep one of them${second === 'forms' || given[0] === 'forms' ? '' : ', or list both under “forms”'}.`,
    );
  }
  if (entry.faired !== undefined && !entry.profile && !entry.sections) {
    tellUnused(entry, ['faired'], 'only the points of a “profile” or of “sections” are faired.', setting);
  }
  if (!entry.forms) return sensible(placeForm(entry, volume, setting), setting);
  tellUnused(entry, ['station', 'offset', 'height', 'axis', 'volume'], 'each of the “forms” has its own.', setting);
  return sensible(placeForms(entry.forms, setting), setting);
}

const sensible = (placed: Placed | null, setting: Setting): Placed | null => placed && withSense(placed, setting);

function placeForm(entry: PlacedForm, volume: number | null, setting: Setting): Placed | null {
  if (entry.profile) return placeProfile(entry, entry.profile, setting);
  if (entry.sections) return placeSections(entry, entry.sections, setting);
  if (entry.mesh) return placeMesh(entry, entry.mesh, setting);
  const { station, height } = entry;
  if (!station || !height) {
    const key = station ? 'height' : 'station';
    const example = key === 'station' ? 'station: 260 to 340 mm' : 'height: 24 mm';
    return tell(setting, 'missing-key', [], `This needs “${key}”, such as “${example}”.`);
  }
  const extents = [station, entry.offset ?? CENTRELINE, height] as const;
  if (entry.ball) return placeBall(extents, entry.ball.value, true);
  if (entry.round) return placeRound(entry, extents, entry.round, volume, setting);
  return placeBox(entry, extents, volume, setting);
}

const CENTRELINE: Quantity = { value: 0, sigma: null, unit: null };

/** Several forms as one; each must be whole by itself. */
function placeForms(entries: NonNullable<PartEntry['forms']>, setting: Setting): Placed | null {
  const placed = entries.map((entry, i): Placed | null => {
    const inside: Setting = { ...setting, path: [...setting.path, 'forms', i] };
    const one = placeEntry(entry, entry.volume?.value ?? null, inside);
    if (!one || one.form) return one;
    return tell(
      inside,
      'form-unknown',
      [],
      'This needs a form: “round: 76 mm” with a station range, a “profile”, or ranges for station, offset and height.',
    );
  });
  const whole = placed.filter(one => one !== null);
  const parts = whole.flatMap(({ form }) => form ?? []);
  if (parts.length < placed.length) return null;
  tellOverlaps(parts, setting);
  const form: Form = { shape: 'compound', parts };
  return measuredForm(
    form,
    setting.around.shapes.boundsOf(form),
    whole.flatMap(({ words }) => words),
  );
}

const shareRoom = (a: Bounds, b: Bounds): boolean =>
  ([0, 1, 2] as const).every(axis => Math.min(a.to[axis], b.to[axis]) - Math.max(a.from[axis], b.from[axis]) > TAPE);

function tellOverlaps(parts: readonly Form[], setting: Setting): void {
  const { shapes, units } = setting.around;
  const boxes = parts.map(part => shapes.boundsOf(part));
  for (const [i, part] of parts.entries()) {
    for (let k = 0; k < i; k++) {
      // Of most pairs the boxes tell that they are apart: nothing has to be found out, nor remembered.
      if (!shareRoom(boxes[k]!, boxes[i]!)) continue;
      const by = shapes.overlapOf(parts[k]!, part);
      if (by <= TAPE) continue;
      tell(
        { ...setting, path: [...setting.path, 'forms', i] },
        'forms-overlap',
        [],
        `Forms ${k + 1} and ${i + 1} of this overlap by ${lengthText(by, units)}, and what lies in both counts twice. Check their places and sizes.`,
        { severity: 'warning' },
      );
    }
  }
}
