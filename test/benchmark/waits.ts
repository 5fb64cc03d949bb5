import { SERVER_PROCESS } from '../../client/serverProcess.ts';
import { printRequest, reportRequest, sheetRequest } from '../../server/editor/protocol.ts';
import { type LongWork, longWorks } from './longWork.ts';
import { startTalk, type Talk, type Wait } from './peer/talk.ts';

/*
 * How long the server is held at a time: the real one, in a process just started, by what an editor asks of a file. Nothing
 * should hold it for more than 50 ms on a quiet machine. It asserts nothing.
 */

const MOST = 50;
/** What looking at the clock all the time takes between two looks at the process, ms. */
const LOOKING = 8;
const SERVER = { name: 'ours', script: 'dist/server.cjs', languageId: 'boat', started: SERVER_PROCESS } as const;
const BY = {
  clock: 'By the clock',
  own: 'But for the time in which others had the processors',
  processor: 'Of the processor',
} as const;
const URI = 'file:///long/work.boat.yaml';

/** What an editor asks, beside opening the file. */
function questions(text: string): readonly (readonly [method: string, params: object])[] {
  const textDocument = { uri: URI };
  const lines = text.split('\n');
  const line = Math.max(
    0,
    lines.findIndex(each => /waterline:|name:/.test(each)),
  );
  const position = { line, character: (lines[line]!.match(/waterline:|name:/)?.index ?? 0) + 2 };
  const at = { textDocument, position };
  const range = { start: position, end: position };
  const all = { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } };
  return [
    ['textDocument/hover', at],
    ['textDocument/completion', at],
    ['textDocument/inlayHint', { textDocument, range: all }],
    ['textDocument/documentSymbol', { textDocument }],
    ['textDocument/foldingRange', { textDocument }],
    ['textDocument/codeLens', { textDocument }],
    ['textDocument/codeAction', { textDocument, range, context: { diagnostics: [] } }],
    ['textDocument/definition', at],
    ['textDocument/references', { ...at, context: { includeDeclaration: true } }],
    ['textDocument/documentHighlight', at],
    ['textDocument/prepareRename', at],
    [sheetRequest, { uri: URI, width: 880, proposal: 0, names: 'few' }],
    [reportRequest, { uri: URI }],
    [printRequest, { uri: URI, paper: 'a4', appendix: true, partialResultToken: 'print' }],
  ];
}

interface Told extends Wait {
  readonly asked: string;
}

async function waitsOf({ text, mesh }: LongWork): Promise<readonly Told[]> {
  const talk = await startTalk(SERVER, mesh);
  await talk.longestWait();
  const told: Told[] = [];
  const after = async (asked: string, ask: (talk: Talk) => unknown): Promise<void> => {
    await ask(talk);
    await talk.atRest(LOOKING);
    told.push({ asked, ...(await talk.longestWait()) });
  };
  await after('opened', () => talk.open(URI, text));
  for (const [method, params] of questions(text))
    await after(method.replace(/.*\//, ''), ({ connection }) =>
      connection.sendRequest(method, params).catch(() => null),
    );
  const start = { line: 0, character: 0 };
  await after('typed', ({ connection }) =>
    connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: URI, version: 2 },
      contentChanges: [{ range: { start, end: start }, text: '# note\n' }],
    }),
  );
  talk.end();
  return told;
}

/** Prints for how long each long work holds the server at a time; only those with a word in their names, if one is given. */
export async function waits(word = ''): Promise<void> {
  console.log('The longest that the server is held at a time, ms:');
  console.log('by the clock; but for the time in which others had the processors; and of the processor');
  const all: (Told & { readonly what: string })[] = [];
  for (const work of longWorks().filter(({ what }) => what.includes(word))) {
    const told = await waitsOf(work);
    all.push(...told.map(each => ({ what: work.what, ...each })));
    const longest = [...told].sort((a, b) => b.processor - a.processor).slice(0, 4);
    const words = ({ asked, clock, own, processor }: Told) =>
      `${asked} ${[clock, own, processor].map(ms => ms.toFixed(0)).join('/')}`;
    console.log(`  ${work.what.padEnd(34)} ${longest.map(words).join(', ')}`);
  }
  for (const kind of ['clock', 'own', 'processor'] as const) {
    const long = all.filter(each => each[kind] > MOST);
    const longest = Math.max(...all.map(each => each[kind]));
    console.log(
      `\n${BY[kind]}: ${long.length} of ${all.length} over ${MOST} ms, the longest ${longest.toFixed(0)} ms.`,
    );
    for (const each of long) console.log(`  ${each.what}, ${each.asked}: ${each[kind].toFixed(0)} ms`);
  }
}
