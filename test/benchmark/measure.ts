/** Milliseconds of one call, warm. */
export interface Times {
  /** By the clock, the median: other programs on the same cores are in it. */
  readonly clock: number;
  /** Of processor time, the mean: only this program's is in it, collecting garbage and all. */
  readonly processor: number;
}

export const medianTime = (call: () => unknown, budget = 400): number => timesOf(call, budget).clock;

/** Calls until the code runs as fast as it ever will, however little of the processor others leave. */
const WARM_CALLS = 30;

/** Times of many calls after as many unmeasured ones. */
export function timesOf(call: () => unknown, budget: number): Times {
  const warmUntil = performance.now() + budget;
  for (let calls = 0; calls < WARM_CALLS || performance.now() < warmUntil; calls++) call();
  const times: number[] = [];
  const until = performance.now() + budget;
  const before = process.cpuUsage();
  while (times.length < 9 || (performance.now() < until && times.length < 2000)) {
    const start = performance.now();
    call();
    times.push(performance.now() - start);
  }
  const { user, system } = process.cpuUsage(before);
  times.sort((a, b) => a - b);
  return { clock: times[times.length >> 1]!, processor: (user + system) / 1000 / times.length };
}

/** Milliseconds of the very first call. */
export function firstTime(call: () => unknown): number {
  const start = performance.now();
  call();
  return performance.now() - start;
}

/** Slope of log(time) against log(size) by least squares: 1 where cost grows with the size, 2 with its square. */
export function logSlope(points: readonly (readonly [size: number, time: number])[]): number {
  const logs = points.map(([size, time]) => [Math.log(size), Math.log(time)] as const);
  const meanX = logs.reduce((sum, [x]) => sum + x, 0) / logs.length;
  const meanY = logs.reduce((sum, [, y]) => sum + y, 0) / logs.length;
  const xy = logs.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  return xy / logs.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
}
