/** What the panel's page and the extension say to each other: types only. */

/** One drawing, as the server makes it. */
export type PanelPicture = {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** A whole `<svg>` element. */
  readonly svg: string;
};

/** A figure against its limit; what it is called, says and shows, as the server has it. */
export type PanelGauge = {
  readonly name: string;
  readonly heading: string;
  readonly title: string;
  readonly value: string;
  readonly proposed: string | null;
  readonly limit: string;
  readonly ends: readonly [left: string, right: string];
  readonly standing: 'in' | 'out' | 'open';
  readonly verdict: string;
  readonly path: string | null;
  readonly svg: string;
};

/** The boat at a glance. */
export type PanelGlance = {
  readonly verdict: { readonly state: 'in' | 'out' | 'open' | 'unknown'; readonly words: string };
  readonly gauges: readonly PanelGauge[];
};

/** What is named in the pictures by itself. */
export type PanelNames = 'few' | 'all';

export type ToPanel =
  | {
      readonly kind: 'sheet';
      /** The boat file, kept by the page so that the panel comes back with the window. */
      readonly uri: string;
      readonly glance: PanelGlance;
      readonly pictures: readonly PanelPicture[];
      /** All pictures; otherwise the others are out of date until they come. */
      readonly isWhole: boolean;
      /** What can be proposed to mend the trim, the best first, and which of them the pictures show. */
      readonly proposals: readonly string[];
      readonly chosen: number;
    }
  /** The sheet as it would be with the part where it is being dragged. */
  | {
      readonly kind: 'preview';
      readonly drag: number;
      /** Where the part is. */
      readonly words: string;
      readonly glance: PanelGlance;
      readonly pictures: readonly PanelPicture[];
    }
  /** The entry that the cursor is in, by its path; null for none. */
  | { readonly kind: 'light'; readonly path: string | null }
  | { readonly kind: 'say'; readonly words: string }
  /** No sheet can be shown, and why. */
  | { readonly kind: 'nothing'; readonly words: string };

export type FromPanel =
  /** The page listens, and has so much room for pictures, px; nothing may be sent before. */
  | { readonly kind: 'ready'; readonly width: number; readonly names: PanelNames }
  /** Which pictures can be seen, wholly or in part. */
  | { readonly kind: 'seen'; readonly pictures: readonly string[] }
  /** The page has more or less room, or shall name more or less. */
  | { readonly kind: 'room'; readonly width: number; readonly names: PanelNames }
  | { readonly kind: 'reveal'; readonly path: string }
  /** `metres` aft of where the part is in the file; `drag` numbers the drag that asks. */
  | { readonly kind: 'preview'; readonly drag: number; readonly path: string; readonly metres: number }
  | { readonly kind: 'drop'; readonly path: string; readonly metres: number }
  /** Marks of the tape, aft positive. */
  | { readonly kind: 'nudge'; readonly path: string; readonly marks: number }
  | { readonly kind: 'choose'; readonly proposal: number }
  | { readonly kind: 'take'; readonly proposal: number }
  | { readonly kind: 'print' };

/** What the page remembers while it is hidden and when the window is opened again. */
export type PanelMemory = { readonly uri: string; readonly scroll: number; readonly names: PanelNames };
