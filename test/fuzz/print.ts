/** Edits samples so many times at random: `npm run fuzz -- --edits COUNT [--seed SEED]`. */
import { parseArgs } from 'node:util';
import { fuzz } from './fuzz.ts';

const { values } = parseArgs({
  args: process.argv.slice(3),
  options: { edits: { type: 'string', default: '1000' }, seed: { type: 'string', default: '1' } },
});
const { edits: count, seed } = values;
const started = performance.now();
let told = 0;
const { faults, edits, mends, restored, slowest } = fuzz(Number(count), Number(seed), done => {
  if (done - told < 500) return;
  told = done;
  console.error(`${done} edits, ${(process.memoryUsage().heapUsed / 1024 / 1024).toFixed(0)} MB`);
});
for (const { round, what, how, text } of faults) console.log(`\n${round}: ${how}\n${what}\n${JSON.stringify(text)}`);
const minutes = (performance.now() - started) / 60_000;
console.log(
  `\n${edits} edits by seed ${seed} in ${minutes.toFixed(1)} min: ${faults.length} faults; ${mends} mends taken, ${restored} texts restored, the slowest edit with all its answers ${slowest.toFixed(0)} ms.`,
);
process.exitCode = faults.length > 0 ? 1 : 0;
