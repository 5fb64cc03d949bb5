import { zeros } from './cholesky.ts';
import type { Normal } from './space.ts';

/** Mean and covariance of a mixture, by the laws of total expectation and total variance. */
export function mixed(parts: readonly (Normal & { readonly weight: number })[]): Normal {
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  const size = parts[0]?.mean.length ?? 0;
  const mean = new Array<number>(size).fill(0);
  const covariance = zeros(size);
  for (const part of parts) for (let i = 0; i < size; i++) mean[i]! += (part.weight / total) * part.mean[i]!;
  for (const part of parts) {
    const share = part.weight / total;
    for (let i = 0; i < size; i++) {
      const off = part.mean[i]! - mean[i]!;
      const row = part.covariance[i]!;
      for (let k = 0; k < size; k++) covariance[i]![k]! += share * (row[k]! + off * (part.mean[k]! - mean[k]!));
    }
  }
  return { mean, covariance };
}

/** ln Σ exp. */
export function logSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return Number.isFinite(most) ? most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0)) : most;
}
