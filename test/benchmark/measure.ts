/** Milliseconds of one call, warm: the median of many calls after as many unmeasured ones. */
export function medianTime(call: () => unknown, budget = 400): number {
  const warmUntil = performance.now() + budget;
  while (performance.now() < warmUntil) call();
  const times: number[] = [];
  const until = performance.now() + budget;
  while (times.length < 9 || (performance.now() < until && times.length < 2000)) {
    const start = performance.now();
    call();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return times[times.length >> 1]!;
}

/** Slope of log(time) against log(size) by least squares: 1 where cost grows with the size, 2 with its square. */
export function logSlope(points: readonly (readonly [size: number, time: number])[]): number {
  const logs = points.map(([size, time]) => [Math.log(size), Math.log(time)] as const);
  const meanX = logs.reduce((sum, [x]) => sum + x, 0) / logs.length;
  const meanY = logs.reduce((sum, [, y]) => sum + y, 0) / logs.length;
  const xy = logs.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  return xy / logs.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
}
