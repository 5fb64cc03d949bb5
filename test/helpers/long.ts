/** Whether this is `npm run test:long`: as many boats as the laws were set for. `npm test` draws the first few of them. */
export const isLong = process.env.MODE === 'long';
