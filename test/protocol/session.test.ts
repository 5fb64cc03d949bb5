import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CancellationTokenSource } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type {
  CodeAction,
  CompletionItem,
  DocumentSymbol,
  Hover,
  Position,
  TextDocumentEdit,
} from 'vscode-languageserver-types';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { entriesOf } from '../../server/core/text/reading/values.ts';
import { type BoatService, createBoatService } from '../../server/service/service.ts';
import { boatOfParts } from '../benchmark/boatOfParts.ts';
import { boat, boatText } from '../helpers/boatText.ts';
import type { Session } from '../helpers/client.ts';
import { sessionOfTest } from '../helpers/sessionOfTest.ts';

const uri = 'file:///tern.boat.yaml';
const petrel = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');

const positionOf = (text: string, offset: number): Position => TextDocument.create('', '', 0, text).positionAt(offset);

/** Where a piece of text stands. */
const at = (text: string, piece: string, within = 0): Position => positionOf(text, text.indexOf(piece) + within);

describe('diagnostics', () => {
  test('come without a pause, with the version that they are about', async () => {
    const session = await sessionOfTest();
    await session.open(
      uri,
      boatText`
        boat: Tern
        hull:
          length:900 mm
      `,
    );
    await expect.poll(() => session.published.length).toBe(1);
    expect(session.clock.waiting).toBe(0);
    const [first] = session.published;
    expect(first).toMatchObject({ uri, version: 1 });
    expect(first?.diagnostics.find(each => each.code === 'missing-space')).toMatchObject({
      range: { start: { line: 2, character: 2 }, end: { line: 2, character: 9 } },
      severity: 1,
      source: 'Trimwright',
    });
  });

  test('come once the typing pauses while an analysis takes long, and never of versions that were overtaken', async () => {
    const session = await sessionOfTest({ cost: 50 });
    await session.open(uri, 'boat: T');
    await expect.poll(() => session.published.length).toBe(1);
    for (let version = 2; version <= 20; version += 1) {
      await session.change(
        uri,
        version,
        boatText`
          boat: Tern ${version}
          scale:1
        `,
      );
      await session.settle();
      session.clock.step(20);
    }
    expect(session.clock.waiting).toBe(1);
    session.clock.step(100);
    await expect.poll(() => session.published.map(each => each.version)).toEqual([1, 20]);
    expect(session.summaries).toHaveLength(2);
  });

  test('of a file that takes long to read let other questions go before', async () => {
    const service = createBoatService();
    const session: Session = await sessionOfTest({
      service: {
        ...service,
        read: (...asked) => {
          const reading = service.read(...asked);
          const step = () => {
            // A turn is over with each step.
            session.clock.spend(10);
            return reading.step();
          };
          return { ...reading, step };
        },
      },
    });
    await session.open(uri, boatOfParts(60));
    await session.settle();
    expect(session.published).toEqual([]);
    await expect.poll(() => session.published.length, { timeout: 20_000 }).toBeGreaterThan(0);
  });

  test('that wait for uncertainties follow; until they are there, what they said last stays', async () => {
    const session = await sessionOfTest();
    const codesOf = (sent: { readonly diagnostics: readonly { readonly code?: unknown }[] } | undefined) =>
      (sent?.diagnostics ?? []).map(({ code }) => code);
    await session.open(uri, petrel);
    await expect.poll(() => codesOf(session.published.at(-1)), { timeout: 20_000 }).toContain('weigh-next');
    expect(codesOf(session.published[0])).not.toContain('weigh-next');
    const changed = petrel.replace(/mass: (\d)/, 'mass: 1$1');
    await session.change(uri, 2, changed);
    await session.change(uri, 3, changed.replace('mass: 1', 'mass: 2'));
    await expect.poll(() => session.published.at(-1)?.version, { timeout: 20_000 }).toBe(3);
    // While somebody types they wait for a pause.
    await session.settle();
    session.clock.step(300);
    const service = createBoatService();
    const known = service.diagnostics(service.analyse(changed.replace('mass: 1', 'mass: 2')), null);
    await expect.poll(() => session.published.at(-1)?.diagnostics, { timeout: 20_000 }).toEqual(known);
    const after = session.published.slice(session.published.findIndex(({ version }) => version === 3));
    expect(after.map(({ version }) => version)).toEqual(after.map(() => 3));
    expect(codesOf(after[0])).toContain('weigh-next');
  });

  test('go with the file when it is closed', async () => {
    const session = await sessionOfTest();
    await session.open(uri, 'boat:T');
    await expect.poll(() => session.published.length, { timeout: 20_000 }).toBeGreaterThan(0);
    await session.change(uri, 2, 'boat:TT');
    await session.close(uri);
    await session.settle();
    session.clock.step(100);
    await session.settle();
    // The change may be told before the file is closed, or not any more; nothing is told after it.
    const told = session.published.map(each => each.diagnostics.length > 0);
    expect(told[0]).toBe(true);
    expect(told.slice(1, -1)).not.toContain(false);
    expect(told.at(-1)).toBe(false);
  });

  test('come with a summary of both conditions', async () => {
    const session = await sessionOfTest();
    await session.open(uri, petrel);
    await session.settle();
    session.clock.step(100);
    await session.settle();
    expect(session.summaries).toHaveLength(1);
    expect(session.summaries[0]).toMatchObject({ uri, state: 'outOfTrim' });
    expect(session.summaries[0]?.text).toMatch(/bow down.*Submerged/);
  });
});

describe('requests', () => {
  test('what the server offers', async () => {
    const { initialized } = await sessionOfTest();
    expect(initialized.capabilities).toMatchObject({
      textDocumentSync: 2,
      hoverProvider: true,
      documentSymbolProvider: true,
      codeActionProvider: { codeActionKinds: ['quickfix', 'refactor.rewrite'] },
    });
  });

  test('a hover says what a part does, and marks it', async () => {
    const session = await sessionOfTest();
    await session.open(uri, petrel);
    const hover = await session.connection.sendRequest<Hover>('textDocument/hover', {
      textDocument: { uri },
      position: at(petrel, 'name: keel lead', 8),
    });
    expect(JSON.stringify(hover.contents)).toContain('690 g');
    const line = petrel.slice(0, petrel.indexOf('keel lead')).split('\n').length - 1;
    expect(hover.range).toEqual({ start: { line, character: 10 }, end: { line, character: 19 } });
  });

  test('a completion in a line that is half typed, right after the keystroke', async () => {
    const session = await sessionOfTest();
    const { text, caret } = boat`
      boat: Tern
      hull:
        length: 900 mm
      payload:
        - name: battery
          ma|
        - name: pump
    `;
    await session.open(uri, text.replace('ma', ''));
    await session.change(uri, 2, text);
    const items = await session.connection.sendRequest<readonly CompletionItem[]>('textDocument/completion', {
      textDocument: { uri },
      position: positionOf(text, caret),
    });
    expect(items.map(item => item.label)).toEqual(expect.arrayContaining(['mass', 'material']));
  });

  test('symbols: sections and entries with their mass', async () => {
    const session = await sessionOfTest();
    await session.open(uri, petrel);
    const symbols = await session.connection.sendRequest<readonly DocumentSymbol[]>('textDocument/documentSymbol', {
      textDocument: { uri },
    });
    expect(symbols.map(symbol => symbol.name)).toEqual(expect.arrayContaining(['boat', 'hull', 'payload', 'bays']));
    const payload = symbols.find(symbol => symbol.name === 'payload');
    expect(payload?.children?.[0]).toMatchObject({ name: 'battery', detail: expect.stringMatching(/^318 g, 282 mm/) });
  });

  test('report, new boat and files that are not open', async () => {
    const session = await sessionOfTest();
    await session.open(uri, petrel);
    const report = await session.connection.sendRequest<{ text: string; html: string }>('trimwright/report', { uri });
    expect(report.text).toContain('Petrel');
    expect(report.html).toMatch(/<h1>Petrel, 860 mm long.*Metacentric height.*12\.6.±.1\.4/s);
    expect(await session.connection.sendRequest('trimwright/unpack', { html: '<p>' })).toBeNull();
    const fresh = await session.connection.sendRequest<{ text: string }>('trimwright/newBoat', { name: 'Tern' });
    expect(fresh.text).toContain('boat: Tern');
    const other = { textDocument: { uri: 'file:///other.boat.yaml' }, position: { line: 0, character: 0 } };
    expect(await session.connection.sendRequest('textDocument/hover', other)).toBeNull();
    expect(await session.connection.sendRequest('textDocument/completion', other)).toEqual([]);
    const missing = await session.connection.sendRequest<{ text: string }>('trimwright/report', { uri: 'file:///x' });
    expect(missing.text).toMatch(/^Open the boat file/);
  });

  test('one that is cancelled while it waits is not worked on', async () => {
    const session = await sessionOfTest();
    await session.open(uri, petrel);
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri }, position: { line: 3, character: 2 } };
    const answer = session.connection.sendRequest('textDocument/hover', params, source.token);
    source.cancel();
    await expect(answer).rejects.toMatchObject({ code: -32800 });
    expect(session.logged).toEqual([]);
  });
});

describe('fixes', () => {
  const actionsAt = (session: Session, position: Position, only?: readonly string[]) =>
    session.connection.sendRequest<readonly CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri },
      range: { start: position, end: position },
      context: { diagnostics: [], ...(only ? { only } : {}) },
    });

  const applied = (text: string, action: CodeAction | undefined): string => {
    const changes = (action?.edit?.documentChanges ?? []) as readonly TextDocumentEdit[];
    const edits = changes.flatMap(each => each.edits as TextDocumentEdit['edits']);
    return TextDocument.applyEdits(TextDocument.create(uri, 'boat', 1, text), edits as never);
  };

  test('a mend changes its characters and nothing else', async () => {
    const session = await sessionOfTest();
    const text = boatText`
      boat: Tern\r
      hull:\r
        length:900 mm # tape\r
        waterline: 5 mm\r
    `;
    await session.open(uri, text);
    const actions = await actionsAt(session, { line: 2, character: 4 });
    const [first] = actions;
    expect(first).toMatchObject({ kind: 'quickfix', isPreferred: true, diagnostics: [{ code: 'missing-space' }] });
    expect(applied(text, first)).toBe(text.replace('length:900', 'length: 900'));
  });

  test('the preferred correction of the untrimmed sample goes in after the last part and clears the surfaced findings', async () => {
    const session = await sessionOfTest();
    await session.open(uri, petrel);
    const actions = await actionsAt(session, at(petrel, 'waterline', 2));
    const preferred = actions.filter(action => action.isPreferred);
    expect(preferred).toHaveLength(1);
    const changed = applied(petrel, preferred[0]);
    const before = entriesOf(readSyntax(petrel), ['payload']);
    const after = entriesOf(readSyntax(changed), ['payload']);
    expect(after.length).toBeGreaterThan(before.length);
    expect(after.slice(0, before.length).map(entry => entry.value)).toEqual(before.map(entry => entry.value));
    const [head, tail] = petrel.split(/^bays:/m);
    expect(changed.startsWith(head!.trimEnd())).toBe(true);
    expect(changed.slice(head!.trimEnd().length)).toMatch(/^\n {2}- name: /);
    expect(changed.split(/^bays:/m)[1]).toBe(tail);
    await session.change(uri, 2, changed);
    await session.settle();
    session.clock.step(100);
    await session.settle();
    const codes = session.published.at(-1)?.diagnostics.map(each => each.code) ?? [];
    expect(codes.filter(code => /^surfaced-(draft|trim|heel)$/.test(String(code)))).toEqual([]);
  });

  test('edits carry the version that they are for, where the editor checks it', async () => {
    const versioned = await sessionOfTest();
    await versioned.open(uri, 'boat:T');
    const [first] = await actionsAt(versioned, { line: 0, character: 1 });
    expect(first?.edit?.documentChanges).toMatchObject([{ textDocument: { uri, version: 1 } }]);
    const plain = await sessionOfTest({ documentChanges: false });
    await plain.open(uri, 'boat:T');
    const [second] = await actionsAt(plain, { line: 0, character: 1 });
    expect(Object.keys(second?.edit?.changes ?? {})).toEqual([uri]);
  });

  test('only where they are asked for', async () => {
    const session = await sessionOfTest();
    await session.open(
      uri,
      boatText`
        boat:T


        # far away
      `,
    );
    expect(await actionsAt(session, { line: 0, character: 1 }, ['quickfix'])).not.toEqual([]);
    expect(await actionsAt(session, { line: 0, character: 1 }, ['source.organizeImports'])).toEqual([]);
    expect(await actionsAt(session, { line: 3, character: 3 })).toEqual([]);
  });
});

describe('a fault of our own', () => {
  test('is said in the place of figures, logged, and costs nothing but that answer', async () => {
    const sound = createBoatService();
    const service: BoatService = {
      ...sound,
      conclude: (read, previous) => {
        if (read.syntax.text.includes('boom')) throw new Error('no such drawer');
        return sound.conclude(read, previous);
      },
      symbols: () => {
        throw new Error('lost the list');
      },
    };
    const session = await sessionOfTest({ service });
    await session.open(uri, 'boat: boom');
    await session.settle();
    session.clock.step(100);
    await session.settle();
    expect(session.published.at(-1)?.diagnostics).toMatchObject([
      { code: 'own-fault', message: expect.stringContaining('no such drawer') },
    ]);
    expect(session.summaries.at(-1)).toMatchObject({ uri, text: 'Not computed', state: 'faulty' });
    const document = { textDocument: { uri }, position: { line: 0, character: 1 } };
    expect(await session.connection.sendRequest('textDocument/hover', document)).toBeNull();
    expect(session.logged).toHaveLength(2);
    expect(session.logged[0]).toMatch(/^analysis failed: Error: no such drawer/);

    await session.change(uri, 2, 'boat: Tern');
    expect(await session.connection.sendRequest('textDocument/documentSymbol', document)).toEqual([]);
    expect(session.logged.at(-1)).toMatch(/^symbols failed: Error: lost the list/);
    expect(await session.connection.sendRequest('textDocument/hover', document)).not.toBeNull();
  });
});

describe('any text at all', { timeout: 120_000 }, () => {
  test('leaves the server working, without a fault of its own', async () => {
    const session = await sessionOfTest();
    await session.open(uri, '');
    let version = 1;
    const position = { line: 1, character: 3 };
    const pieces = fc.array(
      fc.constantFrom(
        ...['boat: T', 'hull:', '  length: 900 mm', 'payload:', '  - name: a', '    mass: 5 g', '|', '---'].map(
          line => `${line}\n`,
        ),
        '  - {',
        '}',
        '[',
        ']',
        ':',
        '\t',
        '"',
        "'",
        '&a',
        '*a',
        '<<: ',
        '- ',
        '  ',
        '\u0000',
        '\ud800',
        'x',
        '1e999',
        '-',
        '#',
      ),
      { maxLength: 25 },
    );
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          pieces.map(each => each.join('')),
        ),
        async text => {
          version += 1;
          await session.change(uri, version, text);
          const document = { textDocument: { uri }, position };
          await session.connection.sendRequest('textDocument/hover', document);
          await session.connection.sendRequest('textDocument/completion', document);
          await session.connection.sendRequest('textDocument/documentSymbol', document);
          await session.connection.sendRequest('textDocument/codeAction', {
            ...document,
            range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } },
            context: { diagnostics: [] },
          });
          session.clock.step(100);
          await session.settle();
          expect(session.logged).toEqual([]);
          expect(session.published.at(-1)).toMatchObject({ version });
        },
      ),
      { numRuns: 150 },
    );
  });
});
