/** What travels: the files of the package, what its bundles hold, under which licences, and that nothing of it goes online. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import { listFiles, PackageManager } from '@vscode/vsce';
import { describe, expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';

const read = (file: string): Buffer => readFileSync(join(projectRoot, file));

interface Content {
  readonly packages: Readonly<Record<string, number>>;
  readonly rooms: Readonly<Record<string, number>>;
  readonly imports: readonly string[];
}
const contents = JSON.parse(read('dist/contents.json').toString()) as Readonly<Record<string, Content>>;
const bundles = Object.keys(contents);

/** The protocol and, in the server, what reads and draws boats; nothing else gets in unnoticed. */
const PACKAGES = {
  client: [
    'balanced-match',
    'brace-expansion',
    'minimatch',
    'semver',
    'vscode-jsonrpc',
    'vscode-languageclient',
    'vscode-languageserver-protocol',
    'vscode-languageserver-textdocument',
    'vscode-languageserver-types',
  ],
  server: [
    'd3-array',
    'd3-color',
    'd3-format',
    'd3-interpolate',
    'd3-path',
    'd3-scale',
    'd3-shape',
    'fflate',
    'heap',
    'ml-matrix',
    'saxes',
    'vscode-jsonrpc',
    'vscode-languageserver',
    'vscode-languageserver-protocol',
    'vscode-languageserver-textdocument',
    'vscode-languageserver-types',
    'xmlchars',
    'yalps',
    'yaml',
    'zod',
  ],
} as const;

test('the package holds the bundles, the language, the schema and the samples, and nothing to build them from', {
  timeout: 60_000,
}, async () => {
  const files = await listFiles({ cwd: projectRoot, packageManager: PackageManager.None });
  expect(files.sort()).toEqual([
    'CHANGELOG.md',
    'LICENSE',
    'README.md',
    'SECURITY.md',
    'client/language/configuration.json',
    'client/language/grammar.json',
    'client/media/editor.webp',
    'client/media/icon.png',
    'client/media/sheet.webp',
    'client/media/sheetDark.webp',
    'dist/LICENCES.txt',
    'dist/extension.cjs',
    'dist/panel.css',
    'dist/panel.js',
    'dist/poolside.html',
    'dist/server.cjs',
    'dist/webExtension.js',
    'dist/worker.js',
    'package.json',
    'samples/EDITORS.md',
    'samples/README.md',
    'samples/curlew.boat.yaml',
    'samples/dunlin.boat.yaml',
    'samples/grebe.boat.yaml',
    'samples/guillemot-hull.stl',
    'samples/guillemot.boat.yaml',
    'samples/petrel.boat.yaml',
    'samples/sprat.boat.yaml',
    'samples/teal.boat.yaml',
    'schema/REFERENCE.md',
    'schema/boat.schema.json',
  ]);
  const packed = files.reduce((sum, file) => sum + deflateRawSync(read(file), { level: 9 }).length, 0);
  expect(packed / 1e6).toBeLessThan(1.5);
});

describe.each(bundles)('the bundle %s', bundle => {
  const { packages, rooms, imports } = contents[bundle]!;
  test('holds no package that it should not', () => {
    const known: readonly string[] = [...PACKAGES.client, ...PACKAGES.server];
    expect(Object.keys(packages).filter(name => !known.includes(name))).toEqual([]);
    const isClient = bundle === 'extension' || bundle === 'webExtension';
    const core = Object.keys(rooms).filter(room => room.startsWith('server/core'));
    if (isClient) expect(core).toEqual([]);
  });
  test('asks its host for no network', () => {
    // `net` is the pipe between an editor and its server.
    const online = /^(?:node:)?(?:https?|http2|dns|tls|dgram)(?:\/|$)/;
    expect(imports.filter(name => online.test(name))).toEqual([]);
  });
});

test.each([
  'server.cjs',
  'trimwright.cjs',
  'worker.js',
  'poolside.html',
  'panel.js',
  'extension.cjs',
  'webExtension.js',
])('%s knows no way of its own to go online', file => {
  expect(read(`dist/${file}`).toString()).not.toMatch(
    /XMLHttpRequest|sendBeacon|new WebSocket|EventSource\(|[^.\w]fetch\(|importScripts\(/,
  );
});

test('every package in a bundle has its licence in the file of licences, one that lets it travel', () => {
  const text = read('dist/LICENCES.txt').toString();
  const told = [...text.matchAll(/^([@a-z0-9/-]+) [\d.]+ \(([^)]+)\)\n\n\S/gm)].map(match => [match[1], match[2]]);
  const names = new Set(bundles.flatMap(bundle => Object.keys(contents[bundle]!.packages)));
  expect(told.map(([name]) => name)).toEqual([...names].sort());
  expect([...new Set(told.map(([, licence]) => licence))].sort()).toEqual(['BlueOak-1.0.0', 'ISC', 'MIT']);
});
