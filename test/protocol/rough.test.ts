import { PassThrough } from 'node:stream';
import { afterEach, describe, expect, test } from 'vitest';
import { createConnection, type Message, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { asMeant } from '../../server/editor/asMeant.ts';
import { plainClock } from '../../server/editor/clock.ts';
import { startServer } from '../../server/editor/languageServer.ts';
import { createBoatService } from '../../server/service/service.ts';
import { MACHINE_WORDS } from '../helpers/finite.ts';
import { PROBE } from '../helpers/probe.ts';
import { TEXT_REQUESTS } from '../helpers/textRequests.ts';

/** The real server, and messages to it as they may come from an editor that keeps no rules. */
function roughEditor() {
  const [toServer, toClient] = [new PassThrough(), new PassThrough()];
  const wire = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toClient), {
    messageStrategy: asMeant,
  });
  startServer({ connection: wire, clock: plainClock, service: createBoatService(), readFile: null });
  const writer = new StreamMessageWriter(toServer);
  const waiting = new Map<unknown, (answer: Answer) => void>();
  const told: string[] = [];
  new StreamMessageReader(toClient).listen(message => {
    const answer = message as unknown as Answer;
    if (answer.method !== undefined) told.push(answer.method);
    waiting.get(answer.id)?.(answer);
  });
  let id = 0;
  return {
    told,
    ask: (method: string, more: object = {}): Promise<Answer> => {
      id += 1;
      const mine = id;
      void writer.write({ jsonrpc: '2.0', id: mine, method, ...more } as unknown as Message);
      return new Promise(resolve => waiting.set(mine, resolve));
    },
    tell: (method: string, more: object = {}) =>
      writer.write({ jsonrpc: '2.0', method, ...more } as unknown as Message),
  };
}

interface Answer {
  readonly id?: number;
  readonly method?: string;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

const uri = 'file:///probe.boat.yaml';
const hello = { params: { processId: null, rootUri: null, capabilities: {} } };
const opened = { params: { textDocument: { uri, languageId: 'boat', version: 1, text: PROBE } } };

const REQUESTS = [
  ...TEXT_REQUESTS,
  'trimwright/report',
  'trimwright/newTrial',
  'trimwright/newBoat',
  'trimwright/unpack',
  'trimwright/sheet',
  'trimwright/preview',
  'trimwright/move',
  'trimwright/proposal',
  'trimwright/entryAt',
  'trimwright/entryRange',
  'trimwright/printSheet',
];
const NOTES = [
  'textDocument/didOpen',
  'textDocument/didChange',
  'textDocument/didClose',
  'workspace/didChangeConfiguration',
  'workspace/didChangeWatchedFiles',
];
const ODD: readonly object[] = [
  {},
  { params: null },
  { params: {} },
  { params: [] },
  { params: [1, 'two', null] },
  { params: { uri: 7, textDocument: null, position: 'here', range: [], contentChanges: {} } },
  { params: { uri, textDocument: { uri }, position: {}, range: {}, context: null, newName: 3, path: {}, by: 1 } },
  { params: { uri, textDocument: { uri }, position: { line: -1, character: 1e300 }, metres: 1e300, proposal: -0.5 } },
];

let editor = roughEditor();
afterEach(() => {
  editor = roughEditor();
});

const isAlive = async (): Promise<void> => {
  const { result } = await editor.ask('textDocument/hover', {
    params: { textDocument: { uri }, position: { line: 0, character: 1 } },
  });
  expect(result).toMatchObject({ contents: expect.anything() });
};

describe('an editor that keeps no rules', () => {
  test.each([
    {},
    { params: null },
    { params: [] },
    { params: { processId: null, capabilities: null } },
    { params: { capabilities: 'all', initializationOptions: null, workspaceFolders: null } },
    {
      params: {
        capabilities: { general: null, window: null, workspace: null, textDocument: null, experimental: null },
      },
    },
  ])('may introduce itself by %j', async greeting => {
    expect((await editor.ask('initialize', greeting)).result).toMatchObject({ capabilities: { hoverProvider: true } });
    await editor.tell('initialized', { params: {} });
    await editor.tell('textDocument/didOpen', opened);
    await isAlive();
  });

  test.each(REQUESTS)('gets an answer to %s whatever comes with it, and the server lives', async method => {
    await editor.ask('initialize', hello);
    await editor.tell('textDocument/didOpen', opened);
    for (const odd of ODD) {
      const { id, error } = await editor.ask(method, odd);
      expect(id).toBeGreaterThan(0);
      expect(error?.message ?? '').not.toMatch(MACHINE_WORDS);
    }
    await isAlive();
  });

  test.each(NOTES)('may send %s with anything, and the server lives', async method => {
    await editor.ask('initialize', hello);
    for (const odd of ODD) await editor.tell(method, odd);
    await editor.tell('textDocument/didOpen', opened);
    await isAlive();
  });

  test.each(REQUESTS)('is not answered %s before it introduces itself, nor after it has taken leave', async method => {
    const asked = { params: { uri, textDocument: { uri }, position: { line: 0, character: 1 }, name: 'Tern' } };
    await editor.tell('textDocument/didOpen', opened);
    // LSP 3.17, “ErrorCodes”: -32002 ServerNotInitialized, -32600 InvalidRequest (from memory).
    expect((await editor.ask(method, asked)).error?.code).toBe(-32002);
    expect(editor.told).not.toContain('textDocument/publishDiagnostics');
    await editor.ask('initialize', hello);
    await editor.ask('shutdown');
    expect((await editor.ask(method, asked)).error?.code).toBe(-32600);
  });
});
