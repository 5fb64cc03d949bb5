import { type Connection, TextDocuments } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Fetched } from '../service/meshes.ts';
import type { BoatService } from '../service/service.ts';
import type { Clock } from './clock.ts';
import { fetchFile } from './fetchFile.ts';
import { answerFileRequests } from './fileRequests.ts';
import { attempt, type GuardHost } from './guard.ts';
import { createOpenFiles } from './openFiles.ts';
import { answerPoolRequests } from './poolRequests.ts';
import { answerPrintRequest } from './printRequest.ts';
import { type ReadFileParams, type ReadFileResult, readFileRequest, summaryNotification } from './protocol.ts';
import { sendOff } from './sendOff.ts';
import { openSession } from './session.ts';
import { answerSheetRequests } from './sheetRequests.ts';
import { createTeller } from './teller.ts';
import { answerTextRequests } from './textRequests.ts';

/** What the server runs on. */
export interface ServerHost {
  readonly connection: Connection;
  readonly clock: Clock;
  readonly service: BoatService;
  /** Reads a mesh file for editors that read none for the server; null where there are no files. */
  readonly readFile: ((asked: ReadFileParams) => Fetched) | null;
}

/** Starts the language server on a connection. */
export function startServer({ connection, clock, service, readFile }: ServerHost): void {
  const documents = new TextDocuments(TextDocument);
  const session = openSession(connection);
  const guard: GuardHost = {
    // What fails in a timer would end the server.
    defer: run => void clock.after(0, () => attempt(guard, 'deferred work', run, () => {})),
    now: clock.now,
    log: message => connection.console.error(message),
    refusal: session.refusal,
  };
  const files = createOpenFiles({
    async readFile(asked, pause) {
      if (readFile && !session.isExtension()) return readFile(asked);
      return fetchFile(asked, piece => connection.sendRequest<ReadFileResult>(readFileRequest, piece), pause);
    },
    clock,
    service,
    guard,
    documents,
    onOutdated(uris) {
      for (const uri of uris) teller.publish(uri);
      session.renewMarks();
    },
  });
  const teller = createTeller({
    connection,
    summarise(summary) {
      if (session.isExtension()) void sendOff(() => connection.sendNotification(summaryNotification, summary));
    },
    clock,
    service,
    guard,
    documents,
    read: files.read,
    analysisOf: files.analysisOf,
    step: files.step,
    costOf: files.costOf,
    reference: session.reference,
  });

  connection.onDidChangeWatchedFiles(({ changes }) => files.changedOnDisk(changes.map(({ uri }) => uri)));
  documents.onDidChangeContent(({ document }) => teller.changed(document.uri));
  documents.onDidClose(({ document: { uri } }) => {
    teller.closed(uri);
    files.closed(uri);
  });

  const asked = { connection, service, guard, fileAt: files.at };
  answerSheetRequests({ ...asked, meshesOf: files.meshesOf });
  answerPrintRequest(asked);
  answerTextRequests({ ...asked, checksVersions: session.checksVersions, showsHints: session.showsHints });
  answerFileRequests(asked);
  answerPoolRequests(asked);
  documents.listen(connection);
  connection.listen();
}
