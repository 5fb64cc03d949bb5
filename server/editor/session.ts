import {
  CodeActionKind,
  CodeLensRefreshRequest,
  type Connection,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  type InitializeResult,
  PositionEncodingKind,
  ResponseError,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import type { Settings, StartOptions } from './protocol.ts';
import { sendOff } from './sendOff.ts';

/** What the editor has said of itself and asked for. */
export interface Session {
  /** Why nothing is answered: the editor has not introduced itself yet, or has taken leave; null while it is there. */
  refusal(): ResponseError<void> | null;
  /** Whether the editor runs the extension, with its commands, summaries and files; any other knows the protocol only. */
  isExtension(): boolean;
  /** Whether the editor checks versions of edits. */
  checksVersions(): boolean;
  showsHints(): boolean;
  /** The address of `schema/REFERENCE.md`; null where there is none. */
  reference(): string | null;
  /** Has hints and lenses asked for again, where the editor can. */
  renewMarks(): void;
}

/** Answers to what comes before the editor has introduced itself, and after it has taken leave (LSP 3.17, “Lifecycle Messages”). */
const refusals = {
  new: new ResponseError<void>(ErrorCodes.ServerNotInitialized, 'initialize comes first'),
  ended: new ResponseError<void>(ErrorCodes.InvalidRequest, 'the server has been shut down'),
};

const offered: ServerCapabilities = {
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
  foldingRangeProvider: true,
};

/** Listens to how the session with the editor begins, is set up, and ends. */
export function openSession(connection: Connection): Session {
  let state: 'new' | 'running' | 'ended' = 'new';
  let capabilities = { versions: false, hints: false, lenses: false, watching: false };
  let isExtension = false;
  let showsHints = true;
  let reference: string | null = null;
  const renewHints = (): void => {
    if (capabilities.hints) void sendOff(() => connection.languages.inlayHint.refresh());
  };
  connection.onInitialize(({ capabilities: { workspace }, initializationOptions }): InitializeResult => {
    state = 'running';
    const start = initializationOptions as Partial<StartOptions> | null | undefined;
    isExtension = start?.isExtension ?? false;
    reference = start?.reference ?? null;
    capabilities = {
      versions: workspace?.workspaceEdit?.documentChanges ?? false,
      hints: workspace?.inlayHint?.refreshSupport ?? false,
      lenses: workspace?.codeLens?.refreshSupport ?? false,
      watching: workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false,
    };
    // A line over a section is a command of the extension's.
    const lenses = isExtension ? { codeLensProvider: {} } : {};
    return { serverInfo: { name: 'Trimwright' }, capabilities: { ...offered, ...lenses } };
  });
  connection.onInitialized(() => {
    // The extension watches mesh files by itself.
    if (isExtension || !capabilities.watching) return;
    const watchers = [{ globPattern: '**/*.{stl,3mf}' }];
    void sendOff(() => connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }));
  });
  connection.onShutdown(() => {
    state = 'ended';
  });
  connection.onDidChangeConfiguration(({ settings }: { readonly settings: Settings | null }) => {
    showsHints = settings?.trimwright?.hints ?? true;
    renewHints();
  });
  return {
    refusal: () => (state === 'running' ? null : refusals[state]),
    isExtension: () => isExtension,
    checksVersions: () => capabilities.versions,
    showsHints: () => showsHints,
    reference: () => reference,
    renewMarks() {
      renewHints();
      if (capabilities.lenses) void sendOff(() => connection.sendRequest(CodeLensRefreshRequest.type));
    },
  };
}
