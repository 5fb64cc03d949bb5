/** The poolside page of one boat: the page as it was built, with the boat in it. It imports nothing: the client uses it too. */

/** Where the boat stands in the page as built. */
const SLOT = '{{boat}}';

/** `built`: `dist/poolside.html`; `boat`: a `PoolBoat`, plain data. */
export const poolsidePage = (built: string, boat: object): string => built.replace(SLOT, () => scriptJson(boat));

/** JSON that may stand between script tags: with no `<` in it nothing can end them. */
const scriptJson = (value: object): string => JSON.stringify(value).replaceAll('<', '\\u003c');
