import { BOATS } from './boats.ts';
import { slipsOf } from './slipKinds.ts';
import { tryMends } from './tryMends.ts';

/** Prints what becomes of every slip of the small boats: `npm run slips [-- KIND]`. */
const only = process.argv[3] ?? '';
const count = new Map<
  string,
  { slips: number; understood: number; mends: number; unmended: number; failures: number }
>();
let total = 0;
for (const [name, text] of Object.entries(BOATS)) {
  const all = slipsOf(text).filter(({ kind }) => kind.includes(only));
  for (const kind of new Set(all.map(slip => slip.kind))) {
    const slips = all.filter(slip => slip.kind === kind);
    const { understood, mends, unmended, failures } = tryMends(name, text, slips);
    const so = count.get(kind) ?? { slips: 0, understood: 0, mends: 0, unmended: 0, failures: 0 };
    count.set(kind, {
      slips: so.slips + slips.length,
      understood: so.understood + understood,
      mends: so.mends + mends,
      unmended: so.unmended + unmended.length,
      failures: so.failures + failures.length,
    });
    total += failures.length;
    for (const { slip, what, said } of [...failures, ...(only ? unmended : [])])
      console.log(`${name} | ${kind} | ${JSON.stringify(slip.was)} => ${JSON.stringify(slip.is)} | ${what} | ${said}`);
  }
}
console.table(Object.fromEntries(count));
console.log(`${total} failures`);
