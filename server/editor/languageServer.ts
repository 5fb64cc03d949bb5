import {
  CodeActionKind,
  CodeLensRefreshRequest,
  type Connection,
  type InitializeResult,
  PositionEncodingKind,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Analysis } from '../core/analysis/analysis.ts';
import type { MeshLookup } from '../core/meshFiles/meshFile.ts';
import { createAnalysisCache } from './analysisCache.ts';
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
  type SummaryParams,
  summaryNotification,
} from './protocol.ts';
import type { BoatService } from './service.ts';
import { answerSheetRequests } from './sheetRequests.ts';
import { answerTextRequests, type OpenFile } from './textRequests.ts';

/** Timers, handed in so that a test can step time. */
export interface Clock {
  setTimeout(run: () => void, milliseconds: number): Timer;
  clearTimeout(timer: Timer): void;
}

export type Timer = ReturnType<typeof setTimeout> | number;

/** A pause in the typing after which the file is analysed: too short to be noticed, long enough to skip most keystrokes. */
const settleMilliseconds = 60;

/** What the server runs on. */
export interface ServerHost {
  readonly connection: Connection;
  readonly clock: Clock;
  readonly service: BoatService;
}

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
  const analyses = createAnalysisCache<Analysis>((document, previous) =>
    service.analyse(document.getText(), previous, meshesOf(document.uri)),
  );
  const pending = new Map<string, Timer>();
  let checksVersions = false;
  let showsHints = true;
  let renewsHints = false;
  let renewsLenses = false;
  let reference: string | null = null;
  const host: GuardHost = {
    defer: run => void clock.setTimeout(run, 0),
    log: message => connection.console.error(message),
  };

  connection.onInitialize(({ capabilities, initializationOptions }): InitializeResult => {
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

  const cancel = (uri: string): void => {
    const timer = pending.get(uri);
    if (timer !== undefined) clock.clearTimeout(timer);
    pending.delete(uri);
  };

  /** Meshes that no open file names are let go. */
  const letMeshesGo = (): void =>
    attempt(
      host,
      'letting meshes go',
      () =>
        meshes.keepOnly(documents.all().map(other => ({ boatUri: other.uri, names: analyses.get(other).wantedFiles }))),
      () => {},
    );

  /** Tells the editor what is known of a file, and the caller whether that is all. */
  const tell = (document: TextDocument): boolean => {
    const { uri, version } = document;
    const told = attempt(
      host,
      'analysis',
      () => {
        const analysis = analyses.get(document);
        const isAll = analysis.stepToFindings();
        return { isAll, diagnostics: service.diagnostics(analysis, reference), summary: service.summary(analysis) };
      },
      reason => ({ ...service.ownFault(reason), isAll: true }),
    );
    void connection.sendDiagnostics({ uri, version, diagnostics: [...told.diagnostics] });
    const summary: SummaryParams = { uri, ...told.summary };
    void connection.sendNotification(summaryNotification, summary);
    return told.isAll;
  };

  /** One step towards the findings that take a while; the editor is told once they are there, unless the file has changed. */
  const findTheRest = (uri: string, version: number): void => {
    const document = documents.get(uri);
    if (document?.version !== version || pending.has(uri)) return;
    const isThere = attempt(
      host,
      'findings',
      () => analyses.get(document).stepToFindings(),
      () => true,
    );
    if (isThere) tell(document);
    else host.defer(() => findTheRest(uri, version));
  };

  /** Analyses a file as it is now and tells the editor; a run that a newer change or a close overtook never starts. */
  const publish = (uri: string): void => {
    pending.delete(uri);
    const document = documents.get(uri);
    if (!document) return;
    const { version } = document;
    if (!tell(document)) host.defer(() => findTheRest(uri, version));
  };

  /** Analyses anew every open file that names mesh files: one of them came or changed. */
  const renew = (): void => {
    for (const document of documents.all()) {
      if (analyses.get(document).wantedFiles.length === 0) continue;
      analyses.outdate(document.uri);
      publish(document.uri);
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

  documents.onDidChangeContent(({ document: { uri } }) => {
    cancel(uri);
    pending.set(
      uri,
      clock.setTimeout(() => publish(uri), settleMilliseconds),
    );
  });
  documents.onDidClose(({ document: { uri } }) => {
    cancel(uri);
    analyses.drop(uri);
    letMeshesGo();
    void connection.sendDiagnostics({ uri, diagnostics: [] });
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
  connection.onRequest(reportRequest, ({ uri }: ReportParams, token) =>
    guard<ReportResult>(
      host,
      'report',
      token,
      { text: 'The report could not be made.' },
      () => {
        const document = documents.get(uri);
        return { text: document ? service.report(analyses.get(document)) : 'Open the boat file to see its report.' };
      },
      () => {
        const document = documents.get(uri);
        if (!document) return true;
        const analysis = analyses.get(document);
        return analysis.stepToCorrections() && analysis.stepToFindings();
      },
    ),
  );
  connection.onRequest(newTrialRequest, ({ uri }: NewTrialParams, token) =>
    guard<unknown>(host, 'new trial', token, null, () => {
      const document = documents.get(uri);
      const splice = document && service.newTrial(analyses.get(document));
      if (!document || !splice) return null;
      const range = { start: document.positionAt(splice.start), end: document.positionAt(splice.end) };
      return { range, snippet: splice.text } satisfies NewTrialResult;
    }),
  );
  connection.onRequest(newBoatRequest, ({ name }: NewBoatParams, token) =>
    guard<NewBoatResult>(host, 'new boat', token, { text: '' }, () => ({ text: service.newBoat(name) })),
  );

  documents.listen(connection);
  connection.listen();
}
