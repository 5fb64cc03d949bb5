/** The poolside page of one boat: the page as it was built, with the boat in it. It imports nothing: the editor's client uses it too. */

/** What the page has to know; plain data. */
export interface PoolBoat {
  readonly name: string;
  /** The boat file. */
  readonly text: string;
  /** The mesh files that it names, as they are on the disk. */
  readonly meshes: readonly { readonly name: string; readonly base64: string }[];
  /** A `PoolView` of a day without readings: the page's first answer, before anything is figured on the phone. */
  readonly view: unknown;
}

/** Where the boat stands in the page as built. */
const SLOT = '{{boat}}';

/** `built`: `dist/poolside.html`. */
export const poolsidePage = (built: string, boat: PoolBoat): string => built.replace(SLOT, () => scriptJson(boat));

/** JSON that may stand between script tags: with no `<` in it nothing can end them. */
const scriptJson = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c');
