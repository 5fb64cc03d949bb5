import {
  CodeActionKind,
  CodeLensRefreshRequest,
  type Connection,
  ErrorCodes,
  type InitializeResult,
  PositionEncodingKind,
  ResponseError,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Analysis } from '../core/analysis/analysis.ts';
import type { MeshLookup } from '../core/meshFiles/meshFile.ts';
import { createAnalysisCache } from './analysisCache.ts';
import type { Clock } from './clock.ts';
import { attempt, type GuardHost, guard } from './guard.ts';
import { createMeshStore } from './meshStore.ts';
import {
  type NewBoatParams,
  type NewBoatResult,
  type NewTrialParams,
  type NewTrialResult,
  newBoatRequest,
  newTrialRequest,
  type ReadFileParams,
  type ReadFileResult,
  type ReportParams,
  type ReportResult,
  readFileRequest,
  reportRequest,
  type Settings,
  type StartOptions,
} from './protocol.ts';
import type { BoatService } from './service.ts';
import { answerSheetRequests } from './sheetRequests.ts';
import { createTeller } from './teller.ts';
import { answerTextRequests, type OpenFile } from './textRequests.ts';

/** What the server runs on. */
export interface ServerHost {
  readonly connection: Connection;
  readonly clock: Clock;
  readonly service: BoatService;
}

/** Answers to what comes before the editor has introduced itself, and after it has taken leave (LSP 3.17, “Lifecycle Messages”). */
const refusals = {
  new: new ResponseError<void>(ErrorCodes.ServerNotInitialized, 'initialize comes first'),
  ended: new ResponseError<void>(ErrorCodes.InvalidRequest, 'the server has been shut down'),
};

/** Starts the language server on a connection. */
export function startServer({ connection, clock, service }: ServerHost): void {
  const documents = new TextDocuments(TextDocument);
  const meshes = createMeshStore(
    (uri, boatUri) =>
      connection.sendRequest<ReadFileResult>(readFileRequest, { uri, boatUri } satisfies ReadFileParams),
    () => renew(),
  );
  const meshesOf =
    (uri: string): MeshLookup =>
    name =>
      meshes.lookup(uri, name);
  const costs = new Map<string, number>();
  const analyses = createAnalysisCache<Analysis>((document, previous) => {
    const start = clock.now();
    const analysis = service.analyse(document.getText(), previous, meshesOf(document.uri));
    costs.set(document.uri, clock.now() - start);
    return analysis;
  });
  let checksVersions = false;
  let showsHints = true;
  let renewsHints = false;
  let renewsLenses = false;
  let reference: string | null = null;
  let state: 'new' | 'running' | 'ended' = 'new';
  const host: GuardHost = {
    // What fails in a timer would end the server.
    defer: run => void clock.setTimeout(() => attempt(host, 'deferred work', run, () => {}), 0),
    log: message => connection.console.error(message),
    refusal: () => (state === 'running' ? null : refusals[state]),
  };
  const teller = createTeller({
    connection,
    clock,
    service,
    guard: host,
    documents,
    analysisOf: analyses.get,
    costOf: uri => costs.get(uri) ?? 0,
    reference: () => reference,
  });

  connection.onInitialize(({ capabilities, initializationOptions }): InitializeResult => {
    state = 'running';
    reference = (initializationOptions as Partial<StartOptions> | undefined)?.reference ?? null;
    checksVersions = capabilities.workspace?.workspaceEdit?.documentChanges ?? false;
    renewsHints = capabilities.workspace?.inlayHint?.refreshSupport ?? false;
    renewsLenses = capabilities.workspace?.codeLens?.refreshSupport ?? false;
    return {
      serverInfo: { name: 'Trimwright' },
      capabilities: {
        positionEncoding: PositionEncodingKind.UTF16,
        textDocumentSync: TextDocumentSyncKind.Incremental,
        hoverProvider: true,
        completionProvider: { triggerCharacters: [' ', ':', '-', '{', '['] },
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite] },
        documentSymbolProvider: true,
        definitionProvider: true,
        referencesProvider: true,
        documentHighlightProvider: true,
        renameProvider: { prepareProvider: true },
        inlayHintProvider: true,
        codeLensProvider: {},
        foldingRangeProvider: true,
      },
    };
  });

  connection.onShutdown(() => {
    state = 'ended';
  });

  /** Meshes that no open file names are let go. */
  const letMeshesGo = (): void =>
    attempt(
      host,
      'letting meshes go',
      () =>
        meshes.keepOnly(
          documents.all().map(other => ({ boatUri: other.uri, names: analyses.get(other).file.wantedFiles })),
        ),
      () => {},
    );

  /** Analyses anew every open file that names mesh files: one of them came or changed. */
  const renew = (): void => {
    for (const document of documents.all()) {
      if (analyses.get(document).file.wantedFiles.length === 0) continue;
      analyses.outdate(document.uri);
      teller.publish(document.uri);
    }
    if (renewsHints) void connection.languages.inlayHint.refresh();
    if (renewsLenses) void connection.sendRequest(CodeLensRefreshRequest.type);
  };
  connection.onDidChangeConfiguration(({ settings }: { readonly settings: Settings | null }) => {
    showsHints = settings?.trimwright?.hints ?? true;
    if (renewsHints) void connection.languages.inlayHint.refresh();
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    if (changes.map(({ uri }) => meshes.forget(uri)).includes(true)) renew();
  });

  documents.onDidChangeContent(({ document }) => teller.changed(document.uri));
  documents.onDidClose(({ document: { uri } }) => {
    teller.closed(uri);
    analyses.drop(uri);
    costs.delete(uri);
    letMeshesGo();
  });

  const fileAt = (uri: string): OpenFile | undefined => {
    const document = documents.get(uri);
    return document && { document, analysis: analyses.get(document) };
  };
  answerSheetRequests({ connection, service, guard: host, fileAt, meshesOf });
  answerTextRequests({
    connection,
    service,
    guard: host,
    fileAt,
    checksVersions: () => checksVersions,
    showsHints: () => showsHints,
  });
  connection.onRequest(reportRequest, (...given: readonly unknown[]) =>
    guard<ReportParams, ReportResult>(
      host,
      { name: 'report', fallback: { text: 'The report could not be made.' }, given },
      ({ uri }) => {
        const document = documents.get(uri);
        return { text: document ? service.report(analyses.get(document)) : 'Open the boat file to see its report.' };
      },
      ({ uri }) => {
        const document = documents.get(uri);
        if (!document) return true;
        const analysis = analyses.get(document);
        return analysis.settled.step() && analysis.corrections.step();
      },
    ),
  );
  connection.onRequest(newTrialRequest, (...given: readonly unknown[]) =>
    guard<NewTrialParams, unknown>(host, { name: 'new trial', fallback: null, given }, ({ uri }) => {
      const document = documents.get(uri);
      const splice = document && service.newTrial(analyses.get(document));
      if (!document || !splice) return null;
      const range = { start: document.positionAt(splice.start), end: document.positionAt(splice.end) };
      return { range, snippet: splice.text } satisfies NewTrialResult;
    }),
  );
  connection.onRequest(newBoatRequest, (...given: readonly unknown[]) =>
    guard<NewBoatParams, NewBoatResult>(host, { name: 'new boat', fallback: { text: '' }, given }, ({ name }) => ({
      text: service.newBoat(name),
    })),
  );

  documents.listen(connection);
  connection.listen();
}
