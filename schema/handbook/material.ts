/** A material of the trade with its density. A handbook's figure is a start: the part on the scale has the last word. */
export interface Material {
  /** The name that the program writes. */
  readonly key: string;
  /** Other names for it; case, hyphens and spaces do not count. */
  readonly names: readonly string[];
  /** Taken when nothing better is known, kg/m3. */
  readonly density: number;
  /** What is still likely for it, kg/m3. */
  readonly range: readonly [least: number, most: number];
  /** Of what is poured, with the gaps in it: what takes up room, and in water only its own density displaces. kg/m3. */
  readonly poured?: { readonly density: number; readonly range: readonly [least: number, most: number] };
  readonly source: string;
  /** Whether the source was read in a public copy, or is quoted from memory. */
  readonly known: 'seen' | 'from memory';
  /** What to mind when using the figure. */
  readonly note?: string;
  /** What to mind when handling it; local rules and qualified people come first. */
  readonly caution?: string;
}
