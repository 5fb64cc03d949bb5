/** Whether this is `npm run test:long`: as many boats as the laws were set for. `npm test` draws the first few of them. */
export const isLong = process.env.MODE === 'long';

/** How far a share of all but everything may be off by chance among so few: three standard deviations of 95 %. */
export const byChance = (count: number): number => (isLong ? 0 : 3 * Math.sqrt((0.95 * 0.05) / count));
