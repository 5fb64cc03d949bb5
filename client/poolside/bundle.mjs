/** Builds the poolside page: one file with its style, its script and its worker in it, and a slot for a boat. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { contentsOf, licenceTexts } from '../launch/licences.mjs';

const file = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

export async function bundlePoolside() {
  const bundles = await Promise.all(['poolside.css', 'poolside.ts', 'worker.ts'].map(bundled));
  const [style, script, worker] = /** @type {[string, string, string]} */ (bundles.map(({ text }) => text));
  /** What all of it holds. @type {import('esbuild').Metafile} */
  const metafile = {
    inputs: Object.assign({}, ...bundles.map(({ metafile: { inputs } }) => inputs)),
    // Each bundle has the same name: here they are apart.
    outputs: Object.fromEntries(
      bundles.flatMap(({ metafile: { outputs } }, i) => Object.values(outputs).map(output => [i, output])),
    ),
  };
  // What runs is named by its hash: nothing else does, whatever stands in a boat file, and nothing is fetched or sent.
  const policy = [
    "default-src 'none'",
    `script-src ${hash(script)}`,
    `style-src ${hash(style)}`,
    'worker-src blob:',
    "connect-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const dataScript = (/** @type {string} */ id, /** @type {string} */ json) =>
    `<script type="application/json" id="${id}">${json}</script>\n`;
  const text = (/** @type {string} */ value) => JSON.stringify(value).replaceAll('<', '\\u003c');
  const licences = licenceTexts(file('../..'), Object.keys(contentsOf(metafile).packages).sort());
  const data = [
    dataScript('boat', '{{boat}}'),
    dataScript('worker', text(worker)),
    // They travel with what they are of.
    dataScript('licences', text(licences)),
  ].join('');
  const page = readFileSync(file('poolside.html'), 'utf8')
    .replace('<title>', () => `<meta http-equiv="Content-Security-Policy" content="${policy}">\n<title>`)
    .replace('</head>', () => `<style>${style}</style>\n</head>`)
    .replace('</body>', () => `${data}<script>${script}</script>\n</body>`);
  return { page, metafile };
}

const hash = (/** @type {string} */ text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

async function bundled(/** @type {string} */ entry) {
  const { outputFiles, metafile } = await build({
    entryPoints: [file(entry)],
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    legalComments: 'none',
    // Only ASCII, so that no bundle hangs on how the file is read.
    charset: 'ascii',
    logLevel: 'warning',
  });
  return { text: (outputFiles[0]?.text ?? '').trim(), metafile };
}
