/** What the panel's page and the extension say to each other: types only. */

import type { SheetGlance, SheetPicture } from '../../server/editor/protocol.ts';

/** What is named in the pictures by itself. */
export type PanelNames = 'few' | 'all';

export type ToPanel =
  | {
      readonly kind: 'sheet';
      /** The boat file, kept by the page so that the panel comes back with the window. */
      readonly uri: string;
      readonly glance: SheetGlance;
      readonly pictures: readonly SheetPicture[];
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
      /** m aft of where it is in the file. */
      readonly metres: number;
      /** Where the part is. */
      readonly words: string;
      readonly glance: SheetGlance;
      readonly pictures: readonly SheetPicture[];
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
