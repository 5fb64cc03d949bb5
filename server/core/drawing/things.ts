import { type Path, pathKey } from '../../../schema/path.ts';
import type { Analysis } from '../analysis/analysis.ts';
import type { Bay, Boat, Part } from '../boat/boat.ts';
import type { LoadedCondition } from '../conditions/loadingCondition.ts';
import type { Correction } from '../corrections/correction.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { Sight } from '../geometry/outline/sight.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { whenAsked } from '../steps/steps.ts';
import { lengthText, massText, offsetWords, volumeText } from '../wording/numbers.ts';
import { endsCounted } from '../wording/places.ts';
import { timesName } from '../wording/times.ts';
import { seen } from './turn.ts';

export type ThingKind = 'shell' | 'compartment' | 'tank' | 'lead' | 'foam' | 'part' | 'bay';

/** An entry of the file as something to draw. */
export interface Thing {
  readonly kind: ThingKind;
  readonly path: Path;
  readonly name: string;
  /** What it is, weighs and where it lies: for pointers and screen readers. */
  readonly words: string;
  /** It has a station in the file that a drag may rewrite. */
  readonly canMove: boolean;
  /** Null when the file does not tell it: then it is drawn by the room from `from` to `to`. */
  readonly form: Form | null;
  readonly from: Vec3;
  readonly to: Vec3;
}

export interface Things {
  readonly shells: readonly Thing[];
  readonly compartments: readonly Thing[];
  readonly tanks: readonly Thing[];
  readonly parts: readonly Thing[];
  readonly bays: readonly Thing[];
  /** Pieces and moved parts of a correction. */
  readonly ghosts: readonly Thing[];
  /** What the correction does, in a sentence, and its number among the corrections; null without one. */
  readonly proposal: Proposal | null;
}

export interface Proposal {
  readonly words: string;
  /** The boat with it done. */
  readonly boat: Boat;
  readonly index: number;
}

/** Everything that is drawn of a boat; `correction` is shown as ghosts. */
export function thingsOf(analysis: Analysis, correction: Correction | null): Things {
  const { boat, kept } = analysis;
  const { shapes } = kept.cache;
  const { units } = boat;
  const known = new Set(boat.payload);
  const formed = (
    kind: ThingKind,
    entry: { readonly path: Path; readonly name: string; readonly copies: number; readonly form: Form },
    what: string,
  ): Thing => {
    const { from, to } = shapes.boundsOf(entry.form);
    const words = `${called(timesName(entry))}: ${what}, ${placeWords(from, to, boat)}`;
    return { kind, path: entry.path, name: entry.name, words, canMove: false, form: entry.form, from, to };
  };
  return {
    shells: boat.shells.map(shell => formed('shell', shell, `free-flooding shell, ${massText(shell.mass, units)}`)),
    compartments: boat.compartments.map(compartment =>
      formed('compartment', compartment, `watertight compartment, ${massText(compartment.mass, units)}`),
    ),
    tanks: boat.tanks.map(tank => formed('tank', tank, `${tank.kind} tank, holds ${volumeText(tank.capacity, units)}`)),
    parts: boat.payload.map(part => thingOfPart(part, boat)),
    bays: boat.bays.map(bay => thingOfBay(bay, boat)),
    ghosts: correction
      ? correction.boat.payload.filter(part => !known.has(part)).map(part => thingOfPart(part, boat))
      : [],
    proposal: correction && {
      words: `Proposed: ${correction.title}`,
      boat: correction.boat,
      index: analysis.corrections.all().indexOf(correction),
    },
  };
}

/** What is aboard in a loading condition. */
export function aboardIn(things: Things, { source }: Pick<Analysis, 'source'>, { condition }: LoadedCondition): Things {
  if (condition.aboard === null) return things;
  const { boat } = condition.aboard(source);
  const aboard = new Set(boat.payload.map(({ path }) => pathKey(path)));
  const known = new Set(source.boat.payload);
  // What is carried there only is moved in the file by hand.
  const besides = boat.payload
    .filter(part => !known.has(part))
    .map(part => ({ ...thingOfPart(part, boat), canMove: false }));
  return { ...things, parts: [...things.parts.filter(({ path }) => aboard.has(pathKey(path))), ...besides] };
}

function thingOfPart(part: Part, boat: Boat): Thing {
  const { path, name, form, from, to } = part;
  const material = part.materialWords === null ? '' : `${part.materialWords}, `;
  const home = part.inside === null ? 'in the water' : `inside “${part.inside}”`;
  // Said when it is drawn: a boat of a thousand parts is drawn in steps.
  const words = whenAsked(
    () =>
      `${called(timesName(part))}: ${material}${massText(part.mass, boat.units)}, ${placeWords(from, to, boat)}, ${home}`,
  );
  return {
    kind: kindOf(part),
    path,
    name,
    get words() {
      return words();
    },
    canMove: part.written !== null,
    form,
    from,
    to,
  };
}

/** Lead and foam are what they are called; whatever is lighter than a third of water is foam to the eye as well. */
function kindOf({ material, volume, mass }: Part): ThingKind {
  if (material === 'lead' || material === 'lead shot') return 'lead';
  const isLight = volume > 0 && mass / volume < 330;
  return isLight || (material?.includes('foam') ?? false) ? 'foam' : 'part';
}

const thingOfBay = ({ path, name, takes, inside, from, to }: Bay, boat: Boat): Thing => ({
  kind: 'bay',
  path,
  name,
  words: `${called(name)}: bay for ${takes}, ${placeWords(from, to, boat)}${inside === null ? '' : `, inside “${inside}”`}`,
  canMove: false,
  form: null,
  from,
  to,
});

export const called = (name: string): string => (name === '' ? 'without a name' : name);

function placeWords(from: Vec3, to: Vec3, { units }: Boat): string {
  const range = (axis: 0 | 2): string => {
    const ends = endsCounted([from[axis], to[axis]], axis === 0 ? 'station' : 'height', units);
    const [a, b] = ends.map(end => lengthText(end, units));
    return a === b ? `${a}` : `${a} to ${b}`;
  };
  return `station ${range(0)}, height ${range(2)}, ${offsetWords((from[1] + to[1]) / 2, units)}`;
}

/** The outline of a thing along a line of sight, m; a thing of unknown size may be a line or a point. */
export function loopsOf({ form, from, to }: Thing, along: Sight, shapes: Shapes): readonly Loop[] {
  if (form) return shapes.silhouetteOf(form, along);
  const [a, b] = [seen(from, along), seen(to, along)];
  return [[a, [b[0], a[1]], b, [a[0], b[1]]]];
}
