/** The poolside page of one boat, put together from what was built. It imports nothing: the client uses it too. */

/** The files that the page is made of, below `dist`. */
export const POOLSIDE_FILES = { page: 'poolside.html', worker: 'worker.js', licences: 'LICENCES.txt' } as const;
/** Their texts. */
export type PoolsideFiles = Readonly<Record<keyof typeof POOLSIDE_FILES, string>>;

/** The page with its worker and a boat in it; `boat`: a `PoolBoat`, plain data. */
export function poolsidePage({ page, worker, licences }: PoolsideFiles, boat: object): string {
  // Where the worker's source can be looked at is of no use on a phone.
  const code = worker.replace(/\n\/\/# sourceMappingURL=\S*\s*$/, '\n');
  const slots: Readonly<Record<string, unknown>> = { boat, worker: code, licences };
  return page.replace(/\{\{(boat|worker|licences)\}\}/g, (_, name: string) => scriptJson(slots[name]));
}

/** JSON that may stand between script tags: with no `<` in it nothing can end them. */
const scriptJson = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c');
