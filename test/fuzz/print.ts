/** Tries the program at random: `npm run fuzz -- [--edits COUNT] [--seed SEED] [--part edits|places|meshes|protocol]`. */
import { parseArgs } from 'node:util';
import { fuzzEdits, fuzzPlaces } from './fuzz.ts';
import type { Fault, Log } from './log.ts';
import { memoryNow, watchMemory } from './memory.ts';
import { fuzzMeshes } from './meshes.ts';
import { fuzzWire } from './wire.ts';

const { values } = parseArgs({
  args: process.argv.slice(3),
  options: {
    edits: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    part: { type: 'string', multiple: true, default: ['edits', 'meshes', 'protocol'] },
  },
});
/** No answer may take longer, ms. */
const LONGEST = 1000;
/** Runs of a kind until the machine has translated the program: the first are slow. */
const WARM = 50;
/** Many answers, one after the other. */
const JOBS = new Set(['actions', 'restored by the protocol']);

const [count, seed] = [Number(values.edits), Number(values.seed)];
const memory = watchMemory();
const tallies = new Map<string, { count: number; slowest: number }>();
let faults = 0;

const tell = ({ round, what, how, text }: Fault): void => {
  faults += 1;
  console.log(`\n${round}: ${how}\n${what}\n${JSON.stringify(text)}`);
};

const log: Log = {
  fault: tell,
  tried(what, about, milliseconds) {
    const tally = tallies.get(what) ?? { count: 0, slowest: 0 };
    tally.count += 1;
    tally.slowest = Math.max(tally.slowest, milliseconds);
    tallies.set(what, tally);
    if (milliseconds > LONGEST && tally.count > WARM && !JOBS.has(what))
      tell({ ...about, what: `${what}: ${milliseconds.toFixed(0)} ms` });
    if (what === 'answers') memory.look(tally.count);
    if (tally.count % 500 === 0) {
      const { held, resident } = memoryNow();
      console.error(
        `${tally.count} ${what}, ${held.toFixed(1)} MB held, ${resident.toFixed(0)} resident, ${faults} faults`,
      );
    }
  },
};

const started = performance.now();
const parts: Readonly<Record<string, () => void | Promise<void>>> = {
  edits: () => fuzzEdits(count, seed, log),
  places: () => fuzzPlaces(0, 1, log),
  meshes: () => fuzzMeshes(Math.ceil(count / 4), seed, log),
  protocol: () => fuzzWire(Math.ceil(count / 4), seed, log),
};
for (const name of values.part) {
  const part = parts[name];
  if (!part) throw new Error(`There is no part “${name}”; there are ${Object.keys(parts).join(', ')}.`);
  await part();
}
const growth = memory.growth();
const grown = growth && (Object.keys(growth.settled) as (keyof typeof growth.settled)[]);
const inWords = (grown ?? []).map(
  kind => `${kind} ${growth!.settled[kind].toFixed(1)} MB, at most ${growth!.most[kind].toFixed(1)} MB later`,
);
if (growth && growth.most.held > 1.1 * growth.settled.held)
  tell({ round: count, how: 'memory', what: inWords.join('\n'), text: '' });

const minutes = (performance.now() - started) / 60_000;
console.log(`\nSeed ${seed}, ${minutes.toFixed(1)} min: ${faults} faults.`);
for (const [what, { count: times, slowest }] of tallies)
  console.log(`  ${what}: ${times}, the slowest ${slowest.toFixed(0)} ms`);
for (const words of inWords) console.log(`  memory ${words}`);
process.exitCode = faults > 0 ? 1 : 0;
