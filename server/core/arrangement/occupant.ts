import { isRange } from '../../../schema/forms.ts';
import type { Quantity, Range } from '../../../schema/quantity.ts';
import type { Bay, Entry, Part } from '../boat/boat.ts';
import { AXES, type AxisName, middle, type PlacedEntry, type PlacedForm } from '../boat/placed.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { once } from '../geometry/shapes/once.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { finish, pacer, type Steps } from '../steps/steps.ts';
import type { Editable } from '../uncertainty/edits.ts';
import { entryInputs } from '../uncertainty/entryInputs.ts';

/** Something with a known place. SI, boat axes. */
export interface Occupant {
  readonly kind: 'shell' | 'compartment' | 'tank' | 'part' | 'bay';
  readonly entry: Entry;
  /** The compartment that it says it lies in. */
  readonly inside: string | null;
  /** Its true form; null where the file tells only its mass and where that lies, or its ends along an axis or two. */
  readonly form: Form | null;
  /** The room that the file tells of, m; in an axis of which it tells the middle only, that middle twice. */
  readonly bounds: Bounds;
  /** Uncertainty of a face of it along each axis, m: of where its middle is, and of half its size. */
  readonly sigma: Vec3;
  /** What it displaces or weighs beside others, kg or m3: the lesser is the likelier one to lie wrong. */
  readonly size: number;
  /** It is meant to stand outside the hull: it says so itself, or by its name. */
  readonly outside: 'said' | 'by name' | null;
  /** It goes through other things, by its name. */
  readonly goesThrough: boolean;
  /** Lead is beaten and foam is cut to the run of the hull: so far its block may reach into what is round about, m. */
  readonly fitted: number;
  /** As its schema read it; null for a bay. */
  readonly checked: Editable | null;
}

/** What stands outside a hull, by its name. */
const OUTSIDE =
  /\b(fins?|skegs?|shafts?|prop(eller)?s?|screws?|(hydro|bow|stern|dive|diving|sail)?planes?|rudders?|masts?|periscopes?|snorkels?|snorts?|antennas?|aerials?|kort|nozzles?|struts?|brackets?|thrusters?|jackstaff|flag(staff)?|rail(ing)?s?|drop keel|keel bulb|bulb|stern tubes?|guards?|sonar|dome|saddle tanks?|sail|conning tower|casing|bollards?|cleats?|eyes?|hooks?|bumper|guns?|fairing)\b/i;

/** What goes through walls and other things, by its name. */
const THROUGH =
  /\b(shafts?|push ?rods?|rods?|linkages?|cables?|wires?|wiring|hoses?|tubing|pipes?|masts?|periscopes?|stern tubes?|glands?|penetrators?|screws?|bolts?|studs?|tie ?bars?)\b/i;

/** How far the block that a piece of ballast is written as departs from what lies in the boat, m (common practice, no source). */
export const FITTED = 0.004;

/** All things of a boat that have a place; those that were made before, by their entries, stay the same. */
export const occupantsOf = (...asked: Parameters<typeof occupantSteps>): readonly Occupant[] =>
  finish(occupantSteps(...asked));

/** Single forms of which the room is found in one step. */
const STEP = 2000;

/** The same in steps. */
export function* occupantSteps(
  source: BoatSource,
  shapes: Shapes,
  known: WeakMap<Entry, Occupant>,
): Steps<readonly Occupant[]> {
  const formed = (
    kind: 'shell' | 'compartment' | 'tank',
    { checked, entry }: { readonly checked: PlacedEntry & Editable; readonly entry: Entry & { readonly form: Form } },
    size: number,
    inside: string | null,
  ): Occupant =>
    once(known, entry, () => {
      const form = tellsForm(checked) ? entry.form : null;
      const bounds = form ? shapes.boundsOf(form) : toldRoom(checked, entry.form, shapes);
      return thing({ kind, entry, inside, form, bounds, size, checked });
    });
  const parts: Occupant[] = [];
  const isDue = pacer(STEP);
  for (const { checked, entry } of source.payload) {
    const isKnown = known.has(entry);
    parts.push(once(known, entry, () => partOccupant(checked, entry, shapes)));
    if (!isKnown && isDue(FEW + entry.copies)) yield;
  }
  return [
    ...source.shells.map(each => formed('shell', each, each.entry.mass, null)),
    ...source.compartments.map(each => formed('compartment', each, each.entry.volume, null)),
    ...source.tanks.map(each => formed('tank', each, each.entry.capacity, each.entry.inside)),
    ...parts,
    ...source.boat.bays.map(bay => once(known, bay, () => bayOccupant(bay, shapes))),
  ];
}

/** What is the same for all of a row takes as long as the rooms of so many. */
const FEW = 20;

function partOccupant(checked: Editable, entry: Part, shapes: Shapes): Occupant {
  const form = entry.form && tellsForm(checked) ? entry.form : null;
  const bounds = form ? shapes.boundsOf(form) : toldRoom(checked, entry.form, shapes, entry);
  return thing({ kind: 'part', entry, inside: entry.inside, form, bounds, size: entry.mass, checked });
}

const bayOccupant = (entry: Bay, shapes: Shapes): Occupant => ({
  kind: 'bay',
  entry,
  inside: entry.inside,
  form: entry.from.every((from, axis) => from < entry.to[axis]!) ? shapes.blockOf(entry) : null,
  bounds: { from: entry.from, to: entry.to },
  sigma: [0, 0, 0],
  size: 0,
  outside: null,
  goesThrough: false,
  fitted: FITTED,
  checked: null,
});

type Plain = Pick<Occupant, 'kind' | 'entry' | 'inside' | 'form' | 'bounds' | 'size'> & { readonly checked: Editable };

function thing(plain: Plain): Occupant {
  const { entry, kind, bounds, checked } = plain;
  const isHull = kind === 'shell' || kind === 'compartment';
  const isSaid = checked.outside;
  const named = OUTSIDE.test(entry.name) ? 'by name' : null;
  const { material } = entry as Partial<Part>;
  return {
    ...plain,
    fitted: material === 'lead' || material === 'foam' ? FITTED : 0,
    sigma: sigmasOf(checked, entry, { bounds, isHull }),
    outside: isSaid === undefined ? named : isSaid ? 'said' : null,
    goesThrough: kind === 'part' && THROUGH.test(entry.name),
  };
}

/** Where its middle is and how large it is are known apart: a face of it by both. */
function sigmasOf(
  checked: Editable,
  { path }: Entry,
  lying: { readonly bounds: Bounds; readonly isHull: boolean },
): Vec3 {
  const drafts = entryInputs(checked, path, lying);
  const lengths = drafts.filter(({ dimension }) => dimension === 'length');
  const places = ([0, 1, 2] as const).map(axis => lengths.find(({ noun }) => noun === AXES[axis])?.sigma ?? 0);
  const sizes = lengths.filter(({ noun }) => !AXES.includes(noun as AxisName) && !noun.includes('balance'));
  const half = (some: typeof sizes) => some.reduce((most, { sigma }) => Math.max(most, sigma), 0) / 2;
  const across = half(sizes.filter(({ noun }) => !noun.startsWith('length')));
  return [Math.hypot(places[0]!, half(sizes)), Math.hypot(places[1]!, across), Math.hypot(places[2]!, across)];
}

/** The entry tells its whole form but for one size, which follows from its volume. */
const tellsForm = (entry: PlacedEntry): boolean => (entry.forms ?? [entry]).every(form => missingSizes(form) <= 1);

function missingSizes(form: PlacedForm): number {
  if (form.round || form.box || form.ball || form.profile || form.sections || form.mesh) return 0;
  return AXES.filter(axis => !isExtended(form[axis])).length;
}

const isExtended = (extent: Quantity | Range | undefined): boolean => extent !== undefined && isRange(extent);

/** The room that the ranges of an entry tell of; sizes that were worked out from a volume are no room that is known. */
function toldRoom(entry: PlacedEntry, form: Form | null, shapes: Shapes, known?: Bounds): Bounds {
  const whole = form ? shapes.boundsOf(form) : known!;
  if (entry.forms) return whole;
  const ends = AXES.map((axis, i): readonly [number, number] => {
    const extent = entry[axis];
    if (extent && isRange(extent)) return [extent.from, extent.to];
    const at = extent ? middle(extent) : (whole.from[i]! + whole.to[i]!) / 2;
    return [at, at];
  });
  return {
    from: [ends[0]![0], ends[1]![0], ends[2]![0]],
    to: [ends[0]![1], ends[1]![1], ends[2]![1]],
  };
}

/** Places along an axis of a room that has no form. */
const ALONG = 7;

/** Places spread over a thing: its surface where its form is known, else the room that is told. */
export function placesOn(
  { form, bounds: { from, to } }: Pick<Occupant, 'form' | 'bounds'>,
  shapes: Shapes,
): readonly Vec3[] {
  if (form) return shapes.surfaceOf(form);
  const marks = ([0, 1, 2] as const).map(axis =>
    to[axis] > from[axis]
      ? Array.from({ length: ALONG }, (_, i) => from[axis] + ((to[axis] - from[axis]) * i) / (ALONG - 1))
      : [from[axis]],
  );
  return marks[0]!.flatMap(x => marks[1]!.flatMap(y => marks[2]!.map((z): Vec3 => [x, y, z])));
}

/** It has an extent along some axis, or a form. */
export const hasExtent = ({ form, bounds }: Occupant): boolean =>
  form !== null || bounds.from.some((from, axis) => from < bounds.to[axis]!);
