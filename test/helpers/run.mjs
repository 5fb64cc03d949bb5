// Runs a TypeScript file of the tests: bundles it into the cache folder and starts it there.
// node test/helpers/run.mjs test/benchmark/benchmark.ts
import { basename, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const [, , entry] = process.argv;
if (!entry) throw new Error('Say which file to run, such as: node test/helpers/run.mjs test/benchmark/benchmark.ts');
const outfile = resolve('.cache/run', `${basename(entry, '.ts')}.mjs`);
await build({
  entryPoints: [entry],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  sourcemap: 'inline',
  logLevel: 'warning',
});
await import(pathToFileURL(outfile).href);
