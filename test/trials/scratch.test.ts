import { it } from 'vitest';
import { finish } from '../../server/steps.ts';
import { estimateBoat } from '../../server/trials/pool/estimate.ts';
import { figuresWithTrials } from '../../server/trials/pool/figures.ts';
import { likeliestBoat } from '../../server/trials/pool/likeliest.ts';
import { doubtsOf } from '../../server/doubt/doubts.ts';
import { assembleBodies } from '../../server/bodies/assemble.ts';
import { floatSurfaced } from '../../server/conditions/surfaced.ts';
import { floatSubmerged } from '../../server/conditions/submerged.ts';
import type { Doubts } from '../../server/doubt/doubts.ts';
import { drawPool, type Wrong, type Figures } from './syntheticPool.ts';
import { seeded } from '../helpers/seeded.ts';
const KINDS: Wrong[][] = [[], ['dry'], ['wet'], ['elsewhere'], ['slip'], ['slip', 'dry'], ['elsewhere', 'wet']];
const doubtOf = (d: Doubts, f: keyof Figures) => f === 'fill' ? d.submerged?.fill : f === 'bg' ? d.submerged?.bg : f === 'subTrim' ? d.submerged?.trim : f === 'subHeel' ? d.submerged?.heel : d.surfaced?.[f];
const N = Number(process.env['N'] ?? 5);
it('stats', () => {
  const random = seeded(Number(process.env['SEED'] ?? 77));
  const all: Record<string, number[]> = {}; const before: Record<string, number[]> = {};
  const shrink: Record<string, number[]> = {}; let nearer = 0, total = 0;
  let cpu: number[] = [];
  for (const wrong of KINDS) {
    const z: number[] = []; const mz: number[] = []; const sz: number[] = []; let done = 0; const top: Record<string, number> = {};
    while (done < N) {
      const pool = drawPool(random, wrong); if (!pool) continue; done++;
      const { lesson, figures } = pool;
      const t = process.cpuUsage().user;
      const e = finish(estimateBoat(lesson));
      const t1 = process.cpuUsage().user;
      if (!e) { top['null'] = (top['null'] ?? 0) + 1; continue; }
      const boat = likeliestBoat(lesson, e)!;
      const d = figuresWithTrials(lesson, e, boat);
      cpu.push((t1 - t) / 1e3, (process.cpuUsage().user - t1) / 1e3);
      const bodies = assembleBodies(lesson.source.boat, lesson.shelf);
      const fd = doubtsOf(lesson, bodies, floatSurfaced(bodies, lesson.source.boat.length), floatSubmerged(bodies));
      for (const f of Object.keys(figures) as (keyof Figures)[]) {
        const x = doubtOf(d, f), b = doubtOf(fd, f); if (!x) continue;
        const s = (x.value - figures[f]) / x.sigma; z.push(s); (all[f] ??= []).push(s);
        if (b) { (before[f] ??= []).push((b.value - figures[f]) / b.sigma); (shrink[f] ??= []).push(x.sigma / b.sigma);
        total++; if (Math.abs(x.value - figures[f]) < Math.abs(b.value - figures[f])) nearer++; }
      }
      const [first] = e.explanations;
      const name = [...first!.items.map(({ cause }) => cause.kind === 'slip' ? (cause.of.reading === pool.slip ? 'SLIP' : 'slip?') : cause.input.entryName === pool.strayed?.name ? 'MOVED' : 'moved?'), ...(first!.load ? [first!.load.cause.kind + (first!.load.cause.kind === 'unlisted' ? (first!.load.cause.inside ? ' dry' : ' wet') : '')] : [])].join('+') || 'none';
      top[name] = (top[name] ?? 0) + 1;
      if (pool.weight) { const ex = e.explanations.find(x => x.load?.cause.kind === 'unlisted' && (x.load.cause.inside !== null) === wrong.includes('dry')); if (ex) { mz.push((ex.facts.mean[0]! - pool.weight.mass) / Math.sqrt(ex.facts.covariance[0]![0]!)); sz.push((ex.facts.mean[2]! - pool.weight.station) / Math.sqrt(ex.facts.covariance[2]![2]!)); } }
    }
    const within = (zs: number[], k: number) => (100 * zs.filter(s => Math.abs(s) < k).length / zs.length).toFixed(0);
    const mean = (zs: number[]) => (zs.reduce((a, b) => a + b, 0) / zs.length).toFixed(2);
    console.log(wrong.join('+') || 'nothing', 'within', within(z, 1), within(z, 2), JSON.stringify(top), mz.length ? `mass z ${mean(mz)} within ${within(mz, 1)} ${within(mz, 2)} station ${mean(sz)} ${within(sz, 1)} ${within(sz, 2)}` : '');
  }
  const within = (zs: number[], k: number) => (100 * zs.filter(s => Math.abs(s) < k).length / zs.length).toFixed(0);
  for (const f of Object.keys(all)) console.log(f, 'with', within(all[f]!, 1), within(all[f]!, 2), 'before', within(before[f]!, 1), within(before[f]!, 2), 'sigma ratio', (shrink[f]!.reduce((a, b) => a + b, 0) / shrink[f]!.length).toFixed(2), 'worst', Math.max(...all[f]!.map(Math.abs)).toFixed(1));
  console.log('nearer', (100 * nearer / total).toFixed(0), 'cpu estimate', (cpu.filter((_, i) => i % 2 === 0).reduce((a, b) => a + b, 0) / cpu.length * 2).toFixed(0), 'figures', (cpu.filter((_, i) => i % 2).reduce((a, b) => a + b, 0) / cpu.length * 2).toFixed(0));
}, 600000);
