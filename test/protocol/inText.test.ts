import { readFileSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type {
  CodeLens,
  InlayHint,
  Location,
  TextDocumentEdit,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver-types';
import { type Session, startSession } from '../helpers/client.ts';

const uri = 'file:///petrel.boat.yaml';
const petrel = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');
const document = TextDocument.create(uri, 'boat', 1, petrel);
const used = document.positionAt(petrel.indexOf('in: dry cylinder') + 6);

let session: Session;
afterEach(() => session.end());

const ask = <T>(method: string, params: object): Promise<T> =>
  session.connection.sendRequest<T>(method, { textDocument: { uri }, ...params });

async function openPetrel(): Promise<void> {
  session = await startSession();
  await session.open(uri, petrel);
}

test('what the server offers besides', async () => {
  session = await startSession();
  expect(session.initialized.capabilities).toMatchObject({
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
    inlayHintProvider: true,
    codeLensProvider: {},
    foldingRangeProvider: true,
  });
});

test('a compartment is found, listed and renamed from one of its uses', async () => {
  await openPetrel();
  const definition = await ask<Location>('textDocument/definition', { position: used });
  expect(document.getText(definition.range)).toBe('dry cylinder');
  expect(document.getText({ ...definition.range, start: { ...definition.range.start, character: 0 } })).toContain(
    '- name: dry',
  );
  const references = await ask<Location[]>('textDocument/references', {
    position: used,
    context: { includeDeclaration: true },
  });
  const count = petrel.split('dry cylinder').length - 1;
  expect(references).toHaveLength(count);
  expect(await ask<unknown[]>('textDocument/documentHighlight', { position: used })).toHaveLength(count);
  expect(await ask('textDocument/prepareRename', { position: used })).toMatchObject({ placeholder: 'dry cylinder' });
  const edit = await ask<WorkspaceEdit>('textDocument/rename', { position: used, newName: 'tube' });
  const [change] = edit.documentChanges as TextDocumentEdit[];
  expect(change?.textDocument).toEqual({ uri, version: 1 });
  expect(TextDocument.applyEdits(document, change?.edits as TextEdit[])).toBe(
    petrel.replaceAll('dry cylinder', 'tube'),
  );
});

test('a name that is taken is refused in words', async () => {
  await openPetrel();
  await expect(ask('textDocument/rename', { position: used, newName: 'battery' })).rejects.toThrow(
    'Something else is called “battery” already.',
  );
});

test('hints come until they are turned off, and come back', async () => {
  await openPetrel();
  const range = { start: { line: 0, character: 0 }, end: document.positionAt(petrel.length) };
  const hints = () => ask<InlayHint[]>('textDocument/inlayHint', { range });
  const all = await hints();
  expect(all.map(({ label }) => label)).toContainEqual(expect.stringMatching(/^318 g in water, .* bow down$/));
  await session.connection.sendNotification('workspace/didChangeConfiguration', {
    settings: { trimwright: { hints: false } },
  });
  expect(await hints()).toEqual([]);
  await session.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
  expect(await hints()).toEqual(all);
});

test('lines over hull and payload, and folds', async () => {
  await openPetrel();
  const lenses = await ask<CodeLens[]>('textDocument/codeLens', {});
  expect(lenses).toHaveLength(2);
  expect(lenses[0]?.command).toMatchObject({ title: expect.stringContaining('bow down'), arguments: [uri] });
  const folds = await ask<{ startLine: number }[]>('textDocument/foldingRange', {});
  const lines = petrel.split('\n');
  expect(folds.map(({ startLine }) => lines[startLine]?.trim())).toEqual(
    expect.arrayContaining(['hull:', 'shells:', '- name: battery']),
  );
});
