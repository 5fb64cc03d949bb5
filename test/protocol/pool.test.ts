import { readFileSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import {
  type PoolsideResult,
  poolsideRequest,
  type TakeTrialsResult,
  takeTrialsRequest,
} from '../../server/editor/protocol.ts';
import { type Session, startSession } from '../helpers/client.ts';

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');
const uri = 'file:///petrel.boat.yaml';

let session: Session;
afterEach(() => session.end());

const DAY = `boat: Petrel
trials:
  - date: 2026-05-02
    condition: surfaced
    heel: -1°
`;

const take = (text: string, at = uri) =>
  session.connection.sendRequest<TakeTrialsResult>(takeTrialsRequest, { uri: at, text });

test('the page gets the boat, what is asked of it and the names of its meshes', async () => {
  session = await startSession();
  await session.open(uri, sample('petrel'));
  const asked = await session.connection.sendRequest<PoolsideResult>(poolsideRequest, { uri });
  expect(asked).toMatchObject({ name: 'Petrel', text: sample('petrel'), files: [], view: { isSettled: true } });
  await session.open('file:///guillemot.boat.yaml', sample('guillemot'));
  const meshed = await session.connection.sendRequest<PoolsideResult>(poolsideRequest, {
    uri: 'file:///guillemot.boat.yaml',
  });
  expect(meshed).toMatchObject({ files: ['guillemot-hull.stl'] });
  expect(await session.connection.sendRequest(poolsideRequest, { uri: 'file:///closed' })).toBeNull();
});

test('trials are taken by an edit, once', async () => {
  session = await startSession();
  await session.open(uri, sample('petrel'));
  const { edit, words } = await take(DAY);
  expect(words).toBe('One trial to take.');
  if (edit.status !== 'done') throw new Error(edit.reason);
  const taken = TextDocument.applyEdits(TextDocument.create(uri, 'boat', 1, sample('petrel')), [...edit.edits]);
  expect(taken).toContain('heel: -1°');
  await session.change(uri, 2, taken);
  expect(await take(DAY)).toEqual({
    edit: { status: 'done', version: 2, edits: [] },
    words: 'Nothing new: the trial stands in the file already.',
  });
});

test('why they are not taken is said', async () => {
  session = await startSession();
  await session.open(uri, sample('petrel'));
  expect((await take('no trials')).edit).toMatchObject({ status: 'refused' });
  expect((await take(DAY, 'file:///closed')).edit).toEqual({ status: 'refused', reason: 'Open the boat file first.' });
});
