/** Whether this is `npm run test:long`: as many boats as the laws were set for. `npm test` draws the first few of them. */
export const isLong = process.env.MODE === 'long';

/** How often a property is tried: by `npm test` on the same few boats each time, by `npm run test:long` on many, others each time. */
export const runsOf = (few: number, many: number): { readonly numRuns: number; readonly seed?: number } =>
  isLong ? { numRuns: many } : { numRuns: few, seed: 1 };
