// The one build script: every bundle of the extension and the command line, into dist/.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { contentsOf, licenceTexts } from './client/launch/licences.mjs';
import { bundlePoolside } from './client/poolside/bundle.mjs';

/** @type {import('esbuild').BuildOptions} */
const shared = {
  bundle: true,
  metafile: true,
  minify: true,
  sourcemap: 'linked',
  legalComments: 'none',
  target: 'es2022',
  logLevel: 'warning',
};

/** @type {import('esbuild').BuildOptions} */
const inNode = { ...shared, platform: 'node', format: 'cjs', target: 'node20' };

/** @type {Record<string, import('esbuild').BuildOptions>} */
const bundles = {
  extension: {
    ...inNode,
    entryPoints: ['client/extension.ts'],
    outfile: 'dist/extension.cjs',
    external: ['vscode'],
  },
  // A web extension host appends `.js` to any other ending.
  webExtension: {
    ...shared,
    platform: 'browser',
    format: 'cjs',
    entryPoints: ['client/webExtension.ts'],
    outfile: 'dist/webExtension.js',
    external: ['vscode'],
  },
  server: { ...inNode, entryPoints: ['server/main.ts'], outfile: 'dist/server.cjs' },
  worker: {
    ...shared,
    platform: 'browser',
    format: 'iife',
    entryPoints: ['server/worker.ts'],
    outfile: 'dist/worker.js',
  },
  // The page of the trim sheet.
  panel: {
    ...shared,
    platform: 'browser',
    format: 'iife',
    entryPoints: ['client/panel/panel.ts'],
    outfile: 'dist/panel.js',
  },
  panelStyle: { ...shared, entryPoints: ['client/panel/panel.css'], outfile: 'dist/panel.css' },
  // As an ES module it would fail: the yaml package calls require('process').
  commandLine: {
    ...inNode,
    entryPoints: ['server/cli.ts'],
    outfile: 'dist/trimwright.cjs',
    banner: { js: '#!/usr/bin/env node' },
  },
};

rmSync('dist', { recursive: true, force: true });
mkdirSync('dist');
const names = [...Object.keys(bundles), 'poolside'];
const results = await Promise.allSettled([
  ...Object.values(bundles).map(options => build(options)),
  // One file with everything in it, for a phone.
  bundlePoolside().then(({ page, metafile }) => {
    writeFileSync('dist/poolside.html', page);
    return { metafile };
  }),
]);
/** What is in each bundle, for the licences and for the test of what the package holds. */
const contents = Object.fromEntries(
  results.flatMap((result, index) =>
    result.status === 'fulfilled' && result.value.metafile
      ? [[names[index] ?? '', contentsOf(result.value.metafile)]]
      : [],
  ),
);
writeFileSync('dist/contents.json', JSON.stringify(contents));
const packages = Object.values(contents).flatMap(content => Object.keys(content.packages));
writeFileSync('dist/LICENCES.txt', licenceTexts('.', [...new Set(packages)].sort()));
const failed = names.filter((_, index) => results[index]?.status === 'rejected');
if (failed.length > 0) {
  console.error(`Build failed: ${failed.join(', ')} could not be bundled, see above.`);
  process.exitCode = 1;
}
