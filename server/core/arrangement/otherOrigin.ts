import { isRange } from '../../../schema/forms.ts';
import { countedAt, type FileOrigin, placedAt } from '../../../schema/places.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Change, Mend } from '../findings/finding.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { extentText } from '../wording/exactText.ts';
import type { Occupant } from './occupant.ts';

/** Where stations may have been counted from instead of where the file says. */
export interface StationOrigin {
  readonly stations: FileOrigin['stations'];
  readonly words: string;
}

const ORIGINS: readonly StationOrigin[] = [
  { stations: 'bow', words: 'from the bow tip' },
  { stations: 'stern', words: 'from the stern' },
  { stations: 'aft of midships', words: 'aft of midships' },
  { stations: 'forward of midships', words: 'forward of midships' },
];

/** All but the file's own. */
export const otherOrigins = ({ origin }: FileUnits): readonly StationOrigin[] =>
  ORIGINS.filter(({ stations }) => stations !== (origin?.stations ?? 'bow'));

/** The hull's length, m, and how the file counts. */
interface Counting {
  readonly length: number;
  readonly units: FileUnits;
}

/** How much further aft a thing lies if its station was counted from elsewhere, m; null where its station stands at no key of its own. */
export function shiftFrom({ stations }: StationOrigin, thing: Occupant, { length, units }: Counting): number | null {
  if (!hasStation(thing)) return null;
  const { from, to } = thing.bounds;
  const middle = (from[0] + to[0]) / 2;
  const written = countedAt(middle, 'station', units);
  return placedAt(written, 'station', { origin: { stations, heights: 'baseline', length, waterline: 0 } }) - middle;
}

/** The thing so much further aft, m. */
export function movedAft(thing: Occupant, by: number): Occupant {
  const { from, to } = thing.bounds;
  const move = (place: Vec3): Vec3 => [place[0] + by, place[1], place[2]];
  return { ...thing, form: thing.form && formAft(thing.form, by), bounds: { from: move(from), to: move(to) } };
}

function hasStation({ checked, kind }: Occupant): boolean {
  if (kind === 'bay') return true;
  return checked?.station !== undefined && !checked.profile && !checked.sections && !checked.mesh && !checked.forms;
}

/** Rewrites the stations of things that were counted from elsewhere. */
export function originMend(origin: StationOrigin, things: readonly Occupant[], counting: Counting): Mend {
  const { units } = counting;
  const changes = things.map((thing): Change => {
    const { entry, checked, bounds } = thing;
    const by = shiftFrom(origin, thing, counting)!;
    const written = checked?.station ?? { from: bounds.from[0], to: bounds.to[0], sigma: null, unit: units.length };
    const extent = { isRange: isRange(written), unit: written.unit, sigma: written.sigma };
    const text = extentText(extent, [bounds.from[0] + by, bounds.to[0] + by], units, 'station');
    return { kind: 'replace', place: { on: 'value', path: [...entry.path, 'station'] }, text };
  });
  const [first] = changes;
  const whose =
    things.length === 1
      ? `Its station was counted ${origin.words}`
      : `${things.length} stations were counted ${origin.words}`;
  const to = things.length === 1 && first?.kind === 'replace' ? `change it to ${first.text}` : 'change them all';
  return { title: `${whose}: ${to}`, changes };
}

function formAft(form: Form, by: number): Form {
  switch (form.shape) {
    case 'ball':
      return { ...form, centre: [form.centre[0] + by, form.centre[1], form.centre[2]] };
    case 'revolved':
      return { ...form, origin: [form.origin[0] + by, form.origin[1], form.origin[2]] };
    case 'compound':
      return { ...form, parts: form.parts.map(part => formAft(part, by)) };
    case 'polyhedron':
      return { ...form, vertices: form.vertices.map((value, i) => (i % 3 === 0 ? value + by : value)) };
  }
}
