import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, test } from 'vitest';
import { CancellationTokenSource, ProgressType } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { CodeAction, TextDocumentEdit, TextEdit } from 'vscode-languageserver-types';
import {
  type EditResult,
  type EntryAtResult,
  type EntryRangeResult,
  entryAtRequest,
  entryRangeRequest,
  moveRequest,
  type NewTrialResult,
  newTrialRequest,
  type PreviewResult,
  type PrintParams,
  type PrintResult,
  previewRequest,
  printRequest,
  proposalRequest,
  type SheetResult,
  sheetRequest,
} from '../../server/editor/protocol.ts';
import { boatOfParts } from '../benchmark/boatOfParts.ts';
import { type Session, startSession } from '../helpers/client.ts';

const uri = 'file:///petrel.boat.yaml';
const petrel = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');
const document = TextDocument.create(uri, 'boat', 1, petrel);
const battery = JSON.stringify(['payload', 0]);
const hull = JSON.stringify(['hull', 'shells', 0]);

let session: Session;
afterEach(() => session.end());

async function openPetrel(): Promise<void> {
  session = await startSession();
  await session.open(uri, petrel);
}

const ask = <R>(method: string, params: object = {}): Promise<R> =>
  session.connection.sendRequest<R>(method, { uri, width: 880, names: 'few', ...params });

const applied = (result: EditResult): string =>
  result.status === 'done' ? TextDocument.applyEdits(document, [...(result.edits as TextEdit[])]) : result.reason;

describe('the trim sheet', () => {
  test('comes with the version that it is of, both conditions in words, and proposals where they are wanted', {
    timeout: 60_000,
  }, async () => {
    await openPetrel();
    const plain = await ask<SheetResult>(sheetRequest, { proposal: null });
    expect(plain).toMatchObject({ version: 1, isWhole: false, proposals: [] });
    expect(plain?.words).toBe('');
    expect(plain?.glance.verdict).toMatchObject({
      state: 'out',
      words: expect.stringMatching(/^Not yet: 6 of 10 out; the worst is the submerged trim, 12\.2° bow down\.$/),
    });
    expect(plain?.glance.gauges.map(({ proposed }) => proposed)).toEqual(plain!.glance.gauges.map(() => null));
    expect(plain?.pictures.map(({ id }) => id)).toEqual(expect.arrayContaining(['surfaced-side', 'submerged-side']));
    expect(plain?.pictures[0]?.svg).not.toContain('data-correction');
    const proposed = await ask<SheetResult>(sheetRequest, { proposal: 0 });
    expect(proposed?.isWhole).toBe(true);
    const ids = proposed?.pictures.map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(plain!.pictures.map(({ id }) => id)));
    expect(ids).toContain('righting-lever');
    expect(proposed?.proposals[0]).toContain('both conditions within limits');
    expect(proposed?.glance.gauges.every(one => one.proposed !== null)).toBe(true);
    expect(proposed?.pictures[0]?.svg).toContain('data-correction="0"');
  });

  test('of what can be seen only, where that is told; a preview too', async () => {
    await openPetrel();
    const seen = ['submerged-side', 'righting-lever'];
    const quick = await ask<SheetResult>(sheetRequest, { proposal: null, seen });
    expect(quick?.pictures.map(({ id }) => id)).toEqual(['submerged-side']);
    const preview = await ask<PreviewResult>(previewRequest, { path: battery, metres: 0.01, seen });
    expect(preview?.pictures.map(({ id }) => id)).toEqual(['submerged-side']);
    const whole = await ask<SheetResult>(sheetRequest, { proposal: 0, seen });
    expect(whole?.pictures.length).toBeGreaterThan(8);
  });

  test('that is asked for no more is not drawn', async () => {
    await openPetrel();
    const source = new CancellationTokenSource();
    const asked = session.connection.sendRequest(
      sheetRequest,
      { uri, width: 880, names: 'few', proposal: 0 },
      source.token,
    );
    source.cancel();
    await expect(asked).rejects.toThrow('cancelled');
  });

  test('of a file that is not open is none, and nothing breaks', async () => {
    session = await startSession();
    expect(await ask(sheetRequest, { proposal: 0 })).toBeNull();
    expect(await ask(previewRequest, { path: battery, metres: 0.1 })).toBeNull();
    expect(await ask(moveRequest, { path: battery, by: { marks: 1 } })).toMatchObject({ status: 'refused' });
    expect(await ask(entryAtRequest, { position: { line: 0, character: 0 } })).toEqual({ path: null });
    expect(await ask(entryRangeRequest, { path: battery })).toEqual({ range: null });
  });
});

describe('a part that is dragged', () => {
  test('shows the boat as it will be when it is dropped there', async () => {
    await openPetrel();
    const preview = await ask<PreviewResult>(previewRequest, { path: battery, metres: 0.0304 });
    expect(preview?.words).toBe('“battery”: 312 mm aft of the bow tip');
    const text = applied(await ask<EditResult>(moveRequest, { path: battery, by: { metres: 0.0304 } }));
    expect(text).toBe(petrel.replace('station: 232 to 332 mm', 'station: 262 to 362 mm'));
    await session.change(uri, 2, text);
    const dropped = await ask<SheetResult>(sheetRequest, { proposal: null });
    expect(dropped?.version).toBe(2);
    expect(preview?.pictures).toEqual(dropped?.pictures);
    expect(preview?.glance).toEqual(dropped?.glance);
  });

  test('goes by marks of the tape from the keyboard', async () => {
    await openPetrel();
    const result = await ask<EditResult>(moveRequest, { path: battery, by: { marks: -10 } });
    expect(result).toMatchObject({ status: 'done', version: 1 });
    expect(applied(result)).toBe(petrel.replace('232 to 332 mm', '222 to 322 mm'));
  });

  test.each([
    ['a shell', hull],
    ['nothing', JSON.stringify(['payload', 99])],
    ['a slip', '["payload"'],
  ])('and is %s stays where it is', async (_, path) => {
    await openPetrel();
    expect(await ask(previewRequest, { path, metres: 0.01 })).toBeNull();
    expect(applied(await ask<EditResult>(moveRequest, { path, by: { marks: 1 } }))).toBe(
      'There is no such part any more.',
    );
  });
});

test('a proposal that is taken is the edit of its code action', async () => {
  await openPetrel();
  const position = document.positionAt(petrel.indexOf('main ballast'));
  const actions = await session.connection.sendRequest<readonly CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri },
    range: { start: position, end: position },
    context: { diagnostics: [] },
  });
  const { proposals } = (await ask<SheetResult>(sheetRequest, { proposal: 0 }))!;
  const action = actions.find(({ isPreferred }) => isPreferred);
  expect(action?.title).toBe(proposals[0]);
  const [change] = (action?.edit?.documentChanges ?? []) as TextDocumentEdit[];
  const expected = TextDocument.applyEdits(document, change!.edits as TextEdit[]);
  expect(applied(await ask<EditResult>(proposalRequest, { proposal: 0 }))).toBe(expected);
  expect(applied(await ask<EditResult>(proposalRequest, { proposal: 99 }))).toContain('no such proposal');
});

describe('between text and picture', () => {
  test.each([
    ['in the middle of a part', 'mass: 318', battery],
    ['on its name', 'battery', battery],
    ['in a shell', 'profile:', hull],
    ['in a bay on one line', 'keel aft, takes', JSON.stringify(['bays', 1])],
    ['on a section', 'payload:', null],
    ['on the boat’s name', 'boat: Petrel', null],
  ])('the cursor %s', async (_, piece, path) => {
    await openPetrel();
    const position = document.positionAt(petrel.indexOf(piece) + 1);
    expect(await ask<EntryAtResult>(entryAtRequest, { position })).toEqual({ path });
  });

  test('an entry of the picture has its name in the text', async () => {
    await openPetrel();
    const { range } = await ask<EntryRangeResult>(entryRangeRequest, { path: battery });
    expect(document.getText(range!)).toBe('battery');
    expect(await ask(entryRangeRequest, { path: '["payload",99]' })).toEqual({ range: null });
    expect(await ask(entryRangeRequest, { path: 'payload' })).toEqual({ range: null });
  });
});

test('the sheet to print is one page, for the paper that is wanted', async () => {
  await openPetrel();
  const { html } = await ask<PrintResult>(printRequest, { paper: 'letter' });
  expect(html).toMatch(/^<!doctype html>/i);
  expect(html).toContain('Petrel');
  expect(html).toMatch(/size:\s*letter/);
  expect(html).not.toBe((await ask<PrintResult>(printRequest, { paper: 'a4' })).html);
});

test('a long page comes in pieces to whom can take it so, whatever is typed meanwhile', async () => {
  session = await startSession();
  const many = boatOfParts(200).replace(/part \d+/, 'part 🦆');
  await session.open(uri, many);
  const params: PrintParams = { uri, paper: 'a4', appendix: true };
  const whole = await session.connection.sendRequest<PrintResult>(printRequest, params);
  expect(whole.html).toContain('part 🦆');
  const pieces: string[] = [];
  session.connection.onProgress(new ProgressType<string>(), 'pieces', (piece: string) => {
    pieces.push(piece);
    if (pieces.length === 1) void session.change(uri, 2, 'boat: Other');
  });
  const rest = await session.connection.sendRequest<PrintResult>(printRequest, {
    ...params,
    partialResultToken: 'pieces',
  });
  expect(pieces.length).toBeGreaterThan(1);
  expect(Math.max(...pieces.map(piece => piece.length))).toBeLessThan(600_000);
  expect(pieces.join('') + rest.html).toBe(whole.html);
});

test.each([
  ['file:///c%3A/Boats/Tern%20%231.boat.yaml', 'Tern #1.boat.yaml'],
  ['file://shed/boats/tern.boat.yaml?version=3#L7', 'tern.boat.yaml'],
  ['file:///c%3A%5CBoats%5Ctern.boat.yaml', 'tern.boat.yaml'],
  ['vscode-remote://ssh-remote%2Bshed/boats/%C5%BElu%C5%A5.boat.yaml', 'žluť.boat.yaml'],
  ['file:///boats/100%25.boat.yaml', '100%.boat.yaml'],
  ['file:///boats/100%.boat.yaml', '100%.boat.yaml'],
  ['file:///boats/%3Cb%3E&.boat.yaml', '&lt;b&gt;&amp;.boat.yaml'],
  ['untitled:Untitled-1', null],
  ['file:///boats/', null],
])('the sheet of %s is printed with the name %s', async (address, name) => {
  session = await startSession();
  await session.open(address, petrel);
  const { html } = await session.connection.sendRequest<PrintResult>(printRequest, { uri: address, paper: 'a4' });
  expect(html).toContain(`${name === null ? 'Petrel' : `Petrel · ${name}`} · revision`);
});

test('a new trial has its place in the text', async () => {
  await openPetrel();
  const trial = await ask<NewTrialResult>(newTrialRequest);
  expect(trial?.range.start).toEqual(document.positionAt(petrel.length));
  expect(trial?.snippet).toMatch(/^\n?trials:\n/);
});
