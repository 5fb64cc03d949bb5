import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type ReadFileResult, readFileRequest } from '../../server/editor/protocol.ts';
import { type Session, startSession } from '../helpers/client.ts';
import { MACHINE_WORDS } from '../helpers/finite.ts';
import { type Seeded, seeded } from '../helpers/seeded.ts';
import { TEXT_REQUESTS } from '../helpers/textRequests.ts';
import { URI } from './answers.ts';
import { anywhere, edited, pick } from './edits.ts';
import type { About, Log } from './log.ts';
import { hullBytes, samples } from './samples.ts';

const REQUESTS = [...TEXT_REQUESTS, 'trimwright/newTrial', 'trimwright/sheet', 'trimwright/entryAt'];

/** Edits between a sample and the same sample restored. */
const ROUND = 6;

/**
 * Edits samples by the protocol as an editor does, range by range, asks at random places without waiting for the answers,
 * and holds what is told of a restored sample against what a server just started tells of it.
 */
export async function fuzzWire(edits: number, seed: number, log: Log): Promise<void> {
  const random = seeded(seed);
  const session = await withMeshes();
  let document = TextDocument.create(URI, 'boat', 1, samples[0]!);
  await session.open(URI, document.getText());
  let sample = samples[0]!;
  let logged = 0;
  for (let round = 0; round < edits; round++) {
    const isRestored = round % ROUND === ROUND - 1;
    const from = document.getText();
    if (round % ROUND === 0) sample = pick(random, samples);
    const { how, text } =
      isRestored || round % ROUND === 0
        ? { how: 'restored', text: sample }
        : edited(from.length > 40_000 ? sample : from, random, pick(random, samples));
    const change = changeTo(document, text);
    document = TextDocument.update(document, [change], document.version + 1);
    const about = { round, how, text };
    await session.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: URI, version: document.version },
      contentChanges: [change],
    });
    await Promise.all([1, 2, 3].map(() => ask(session, document, random, about, log)));
    for (const what of session.logged.slice(logged)) log.fault({ ...about, what });
    logged = session.logged.length;
    if (isRestored) await compare(session, document, about, log);
  }
  session.end();
}

/** A server whose editor reads the mesh file of the sample that has one. */
async function withMeshes(): Promise<Session> {
  const session = await startSession();
  const base64 = Buffer.from(hullBytes).toString('base64');
  session.connection.onRequest<ReadFileResult, void>(readFileRequest, () => ({ status: 'read', base64 }));
  return session;
}

/** The change from one text to another, as an editor tells it: what lies between the same begin and the same end. */
function changeTo(document: TextDocument, now: string): TextDocumentContentChangeEvent {
  const was = document.getText();
  const most = Math.min(was.length, now.length);
  let start = 0;
  for (let i = 0; i < most && was[i] === now[i]; i++) start = i + 1;
  let end = 0;
  for (let i = 1; i <= most - start && was.at(-i) === now.at(-i); i++) end = i;
  const range = { start: document.positionAt(start), end: document.positionAt(was.length - end) };
  return { range, text: now.slice(start, now.length - end) };
}

async function ask(
  { connection }: Session,
  document: TextDocument,
  random: Seeded,
  about: About,
  log: Log,
): Promise<void> {
  const method = pick(random, REQUESTS);
  const position = document.positionAt(anywhere(random, document.getText()));
  const start = process.cpuUsage();
  try {
    const answer = await connection.sendRequest(method, {
      uri: URI,
      textDocument: { uri: URI },
      position,
      range: { start: position, end: position },
      context: { diagnostics: [], includeDeclaration: true },
      newName: 'new name',
      proposal: null,
      width: 880,
      names: 'few',
    });
    const found =
      typeof answer === 'object' && method === 'trimwright/sheet' ? /\bNaN\b/.exec(JSON.stringify(answer)) : null;
    if (found) log.fault({ ...about, what: `${method}: ${found[0]}` });
  } catch (problem) {
    // A name that cannot be given is refused in words.
    const words = problem instanceof Error ? problem.message : String(problem);
    if (method !== 'textDocument/rename' || MACHINE_WORDS.test(words))
      log.fault({ ...about, what: `${method} at ${position.line}:${position.character}: ${words}` });
  }
  log.tried(method, about, process.cpuUsage(start).user / 1000);
}

/** What is told and answered of the text now must be what a fresh server tells and answers. */
async function compare(session: Session, document: TextDocument, about: About, log: Log): Promise<void> {
  const start = process.cpuUsage();
  const fresh = await withMeshes();
  await fresh.open(URI, document.getText());
  const [told, wanted] = [await allTold(session), await allTold(fresh)];
  fresh.end();
  log.tried('restored by the protocol', about, process.cpuUsage(start).user / 1000);
  if (told !== wanted) log.fault({ ...about, what: `a restored text is told ${told}\nand a fresh one ${wanted}` });
}

/** What is told of the file once everything is known, and its outline. */
async function allTold({ connection, clock, published, settle }: Session): Promise<string> {
  const textDocument = { uri: URI };
  // The mesh file has to come, be read and be told of; what takes long waits for a pause in the typing.
  for (let i = 0; i < 4; i++) {
    await settle();
    clock.step(1000);
    await settle();
    const start = { line: 0, character: 0 };
    // Is answered when uncertainties and trials are in.
    await connection.sendRequest('textDocument/codeAction', {
      textDocument,
      range: { start, end: start },
      context: { diagnostics: [] },
    });
    await new Promise(resolve => setTimeout(resolve, 2));
  }
  const symbols = await connection.sendRequest('textDocument/documentSymbol', { textDocument });
  return JSON.stringify([published.at(-1)?.diagnostics, symbols]);
}
