import type { SheetPicture } from '../../server/editor/protocol.ts';

/** What to do to the page so that it shows the next pictures; whatever is the same is not touched. */
export type Patch =
  | { readonly kind: 'keep'; readonly id: string }
  | { readonly kind: 'words'; readonly picture: SheetPicture }
  | { readonly kind: 'redraw'; readonly picture: SheetPicture }
  | { readonly kind: 'add'; readonly picture: SheetPicture };

export interface PatchList {
  /** Pictures that are shown no more. */
  readonly gone: readonly string[];
  /** One for each picture, in the order in which they shall stand. */
  readonly patches: readonly Patch[];
}

/** The least that turns one set of pictures into the next. */
export function patchesFor(shown: readonly SheetPicture[], next: readonly SheetPicture[]): PatchList {
  const before = new Map(shown.map(picture => [picture.id, picture]));
  const wanted = new Set(next.map(({ id }) => id));
  return {
    gone: shown.map(({ id }) => id).filter(id => !wanted.has(id)),
    patches: next.map((picture): Patch => {
      const was = before.get(picture.id);
      if (!was) return { kind: 'add', picture };
      if (was.svg !== picture.svg) return { kind: 'redraw', picture };
      const isSame = was.title === picture.title && was.description === picture.description;
      return isSame ? { kind: 'keep', id: picture.id } : { kind: 'words', picture };
    }),
  };
}

/** Pictures that came before the others, among those that are shown; the page with them, and what is out of date on it. */
export function joined(
  shown: readonly SheetPicture[],
  some: readonly SheetPicture[],
): { readonly pictures: readonly SheetPicture[]; readonly outdated: readonly string[] } {
  const fresh = new Map(some.map(picture => [picture.id, picture]));
  const known = new Set(shown.map(({ id }) => id));
  return {
    pictures: [...shown.map(picture => fresh.get(picture.id) ?? picture), ...some.filter(({ id }) => !known.has(id))],
    outdated: shown.map(({ id }) => id).filter(id => !fresh.has(id)),
  };
}
