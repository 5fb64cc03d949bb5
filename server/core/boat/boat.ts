import type { Path } from '../../../schema/path.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Vec3 } from '../geometry/form/vector.ts';

/** A boat read from its file: defaults filled in, names resolved, every number in SI (m, kg, rad) and boat axes. */
export interface Boat {
  readonly name: string;
  /** Model length over full-size length, e.g. 1/60; null when not given. */
  readonly scale: number | null;
  readonly units: FileUnits;
  readonly water: Water;
  /** Length of the hull from the bow tip, m. */
  readonly length: number;
  readonly waterline: Waterline | null;
  readonly shells: readonly Shell[];
  readonly compartments: readonly Compartment[];
  readonly tanks: readonly Tank[];
  readonly payload: readonly Part[];
  /** Payload entries that are no longer aboard: in no figure, but in those of earlier trials. */
  readonly ashore: readonly Part[];
  readonly bays: readonly Bay[];
  readonly stock: Stock;
  readonly limits: Limits;
  /** Entries and sections that could not be read and so are missing from the figures, by name. */
  readonly leftOut: readonly string[];
}

export interface Water {
  /** kg/m3. */
  readonly density: number;
  /** °C. */
  readonly temperature: number;
  /** How it came about, for people: "fresh, 18 °C". */
  readonly words: string;
}

/** Painted waterline: its height above the baseline at the bow tip and at the hull's length, m. */
export interface Waterline {
  readonly bow: number;
  readonly stern: number;
}

/** What every entry of the file has. */
export interface Entry {
  readonly path: Path;
  readonly name: string;
}

/** What one entry may stand for several of. */
interface Several {
  /** How many there are of it; all that is said of the entry is of all of them together. */
  readonly copies: number;
}

/** Anything with weight. */
export interface Weighed extends Entry, Several {
  /** kg. */
  readonly mass: number;
  /** Weighed by the builder, or worked out from form and material by the program. */
  readonly massFrom: 'scale' | 'form';
  /** Where it weighs, m. */
  readonly centroid: Vec3;
  /** Names of what is in it and weighed with it. */
  readonly holds: readonly string[];
}

/** Free-flooding: only its wall displaces. */
export interface Shell extends Weighed {
  readonly form: Form;
  /** False when the flat ends (and flat deck) of the form are open. */
  readonly endsClosed: boolean;
  /** Wall volume, m3. */
  readonly volume: number;
  /** What there is to say of its form, for people. */
  readonly worked: readonly string[];
}

/** Watertight: its outer form displaces. */
export interface Compartment extends Weighed {
  readonly form: Form;
  /** m3. */
  readonly volume: number;
  readonly worked: readonly string[];
}

export type TankKind = 'sealed' | 'vented' | 'piston' | 'bladder';

export interface Tank extends Entry, Several {
  readonly form: Form;
  /** m3. */
  readonly capacity: number;
  /** Its capacity was measured by itself: a longer form does not hold more. */
  readonly byJug: boolean;
  readonly kind: TankKind;
  /** The compartment it lies in; null for a tank out in the flooded hull, which displaces by its own form. */
  readonly inside: string | null;
  /** What is left in it when surfaced, 0..1. */
  readonly fill: number;
  /** Equal watertight cells, fore and aft. */
  readonly cells: number;
  /** The end that a piston's water occupies from. */
  readonly fillsFrom: 'forward' | 'aft';
  /** How fast it fills against the other tanks; 1 for tanks that fill together. */
  readonly share: number;
  /** The most that a sealed tank's pump or seals take over the air outside, Pa; null when not given. */
  readonly pressure: number | null;
  /** How it is emptied under water by air or gas; null where the file does not say. */
  readonly blow: Blowing | null;
  readonly worked: readonly string[];
}

/** From how deep a tank is blown, m, and with what. */
export interface Blowing {
  readonly depth: number;
  /** m3, and Pa over the air outside. */
  readonly bottle: { readonly volume: number; readonly pressure: number } | null;
  /** kg, and kg/mol. */
  readonly gas: { readonly mass: number; readonly molarMass: number } | null;
}

/** Something carried. */
export interface Part extends Weighed {
  /** What it displaces; null inside a compartment, where the form does not matter. */
  readonly form: Form | null;
  /** Displaced volume, m3; 0 inside a compartment. */
  readonly volume: number;
  /** The compartment it lies in, or null in the flooded hull. */
  readonly inside: string | null;
  /** By its name in the handbook, where that has it. */
  readonly material: string | null;
  /** The same as the file calls it, for people. */
  readonly materialWords: string | null;
  /** False when corrections may shrink, move or take it out. */
  readonly fixed: boolean;
  /** The file itself says that it stays where it is. */
  readonly pinned: boolean;
  /** What the trials have taught, not weighed. */
  readonly isLearned: boolean;
  /** Least and greatest corner of the space it takes up, m, as far as the file tells. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** What the program worked out, for people: "breadth 14.2 mm". */
  readonly worked: readonly string[];
  /** How its place stands in the file, for edits that move it; null when it is not placed by station and offset. */
  readonly written: WrittenPlace | null;
}

/** The keys of an entry that say where it is. */
export interface WrittenPlace {
  readonly station: WrittenExtent;
  readonly offset: WrittenExtent | null;
  /** How far the last of a row lies aft of the first, whose station it is, m. */
  readonly row: number;
  /** Its offset is that of the one to starboard of two. */
  readonly isPaired: boolean;
}

export interface WrittenExtent {
  readonly isRange: boolean;
  /** The unit that it is written in; null for a bare number. */
  readonly unit: string | null;
  /** Its tolerance as written, m. */
  readonly sigma: number | null;
}

export interface Bay extends Entry {
  readonly takes: 'lead' | 'foam';
  readonly inside: string | null;
  readonly from: Vec3;
  readonly to: Vec3;
}

/** What corrections are cut from. */
export interface Stock {
  readonly lead: StockMaterial;
  readonly foam: StockMaterial;
}

export interface StockMaterial {
  /** kg/m3. */
  readonly density: number;
  /** Cross-section of the strip, breadth by depth, m; null: any cross-section. */
  readonly strip: readonly [breadth: number, depth: number] | null;
  /** Masses of whole pieces, kg; empty: cut to any length. */
  readonly pieces: readonly number[];
  /** Loose lead shot that may be poured: its density as it is poured, kg/m3; null where there is none. */
  readonly shot: number | null;
}

/** What the boat is trimmed to. Angles rad, lengths m, fill 0..1. */
export interface Limits {
  readonly surfaced: {
    readonly trim: number;
    readonly heel: number;
    readonly draft: number;
    readonly gm: number;
  };
  readonly submerged: {
    readonly trim: number;
    readonly heel: number;
    readonly bg: number;
    readonly fill: readonly [least: number, most: number];
    /** Buoyancy that may be left with full tanks, kg, in place of a neutral fill; null for a boat that hangs neutral. */
    readonly reserve: readonly [least: number, most: number] | null;
  };
  /** On the way from the one to the other. */
  readonly transit: { readonly trim: number; readonly heel: number };
}
