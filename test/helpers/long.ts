const mode = process.env.MODE;

/** Whether properties draw other boats each time, many of them (`vitest run --mode free FILE`); else a run is the same each time. */
export const drawsFreely = mode === 'free';

/** Whether this is `npm run test:long`: as many boats as the laws were set for. `npm test` draws the first few of them. */
export const isLong = mode === 'long' || drawsFreely;

/** How often a property is tried: by `npm test`, and by `npm run test:long`. */
export const runsOf = (few: number, many: number): { readonly numRuns: number } => ({ numRuns: isLong ? many : few });
