/** Builds the poolside page: its style and its script in one file, with slots for the worker, its licences and a boat. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const file = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

export async function bundlePoolside() {
  const [style, { text: script, metafile }] = await Promise.all([bundled('poolside.css'), bundled('poolside.ts')]);
  // What runs is named by its hash: nothing else does, whatever stands in a boat file, and nothing is fetched or sent.
  const policy = [
    "default-src 'none'",
    `script-src ${hash(script)}`,
    `style-src ${hash(style.text)}`,
    'worker-src blob:',
    "connect-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const slots = ['boat', 'worker', 'licences'].map(
    name => `<script type="application/json" id="${name}">{{${name}}}</script>\n`,
  );
  const page = readFileSync(file('poolside.html'), 'utf8')
    .replace('<title>', () => `<meta http-equiv="Content-Security-Policy" content="${policy}">\n<title>`)
    .replace('</head>', () => `<style>${style.text}</style>\n</head>`)
    .replace('</body>', () => `${slots.join('')}<script>${script}</script>\n</body>`);
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
