/** The JSON Schema alone, in an editor that knows YAML only: a general YAML language server, as such editors run it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Diagnostic, Hover } from 'vscode-languageserver-types';
import { projectRoot } from '../../client/launch/install.mjs';
import { setUpPeer } from '../benchmark/peer/setUp.ts';
import { startTalk, type Talk } from '../benchmark/peer/talk.ts';

const folder = join(projectRoot, 'samples');
const samples = readdirSync(folder).filter(name => name.endsWith('.boat.yaml'));

let talk: Talk;
const sent = new Map<string, readonly Diagnostic[]>();
beforeAll(async () => {
  talk = await startTalk({
    name: 'theirs',
    script: setUpPeer(),
    languageId: 'yaml',
    started: { execArgv: [], env: {} },
  });
  talk.connection.onNotification(
    'textDocument/publishDiagnostics',
    ({ uri, diagnostics }: { readonly uri: string; readonly diagnostics: readonly Diagnostic[] }) =>
      void sent.set(uri, diagnostics),
  );
});
afterAll(() => talk.end());

async function openAs(name: string, text: string): Promise<string> {
  const uri = `file:///${name}`;
  talk.open(uri, text);
  await expect.poll(() => sent.has(uri), { timeout: 30_000 }).toBe(true);
  return uri;
}

test.each(samples)('%s has no fault by the schema', async name => {
  const uri = await openAs(name, readFileSync(join(folder, name), 'utf8'));
  expect(sent.get(uri)).toEqual([]);
});

test('a key that there is not is told, and a key that there is explains itself', async () => {
  const uri = await openAs(
    'slip.boat.yaml',
    `hull: { length: 300 mm, waterline: 30 mm }
paylod: []
`,
  );
  await expect
    .poll(() =>
      sent
        .get(uri)
        ?.map(({ message }) => message)
        .join(),
    )
    .toMatch(/paylod/);
  const hover = await talk.connection.sendRequest<Hover>('textDocument/hover', {
    textDocument: { uri },
    position: { line: 0, character: 26 },
  });
  expect(JSON.stringify(hover.contents)).toMatch(/painted waterline/);
});
