/** Builds the poolside page: one file with its style, its script and its worker in it, and a slot for a boat. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const file = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

/** @returns {Promise<string>} */
export async function bundlePoolside() {
  const [style, script, worker] = await Promise.all([
    bundled('poolside.css'),
    bundled('poolside.ts'),
    bundled('worker.ts'),
  ]);
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
  const json = (/** @type {string} */ id, /** @type {string} */ text) =>
    `<script type="application/json" id="${id}">${text}</script>\n`;
  const workerText = JSON.stringify(worker).replaceAll('<', '\\u003c');
  return readFileSync(file('poolside.html'), 'utf8')
    .replace('<title>', () => `<meta http-equiv="Content-Security-Policy" content="${policy}">\n<title>`)
    .replace('</head>', () => `<style>${style}</style>\n</head>`)
    .replace(
      '</body>',
      () => `${json('boat', '{{boat}}')}${json('worker', workerText)}<script>${script}</script>\n</body>`,
    );
}

const hash = (/** @type {string} */ text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

async function bundled(/** @type {string} */ entry) {
  const { outputFiles } = await build({
    entryPoints: [file(entry)],
    bundle: true,
    minify: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    legalComments: 'none',
    // Only ASCII, so that no bundle hangs on how the file is read.
    charset: 'ascii',
    logLevel: 'warning',
  });
  return (outputFiles[0]?.text ?? '').trim();
}
