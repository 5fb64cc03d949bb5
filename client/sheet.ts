/** What one trim sheet panel shows, and what it does to the text. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type EditResult,
  type EntryAtParams,
  type EntryAtResult,
  type EntryRangeParams,
  type EntryRangeResult,
  entryAtRequest,
  entryRangeRequest,
  type MoveParams,
  moveRequest,
  type PreviewParams,
  type PreviewResult,
  type ProposalParams,
  previewRequest,
  proposalRequest,
  type SheetParams,
  type SheetResult,
  sheetRequest,
} from '../server/editor/protocol.ts';
import type { FromPanel, ToPanel } from './panel/messages.ts';
import { rangeOf, writeEdit } from './sheetEdits.ts';

/** Quiet after which proposals are worked out: they take longer than the pictures. */
const quietMilliseconds = 250;

/** In this time a panel that was clicked into has had its focus. */
const focusMilliseconds = 200;

export type SheetView = vscode.Disposable & {
  /** Shows this boat file from now on; null for none. */
  readonly follow: (boat: vscode.Uri | null) => void;
  /** A boat file was analysed anew. */
  readonly refresh: (boatUri: string) => void;
  /** The boat file that is shown; null for none. */
  readonly boat: () => vscode.Uri | null;
};

export interface SheetHost {
  readonly client: BaseLanguageClient;
  readonly panel: vscode.WebviewPanel;
  readonly print: (boat: vscode.Uri) => Promise<void>;
}

export function createSheet({ client, panel, print }: SheetHost): SheetView {
  let boat: vscode.TextDocument | null = null;
  let chosen = 0;
  /** The page listens; a page that was hidden begins anew. */
  let isReady = false;
  /** Pictures that can be seen; unknown until the page tells. */
  let seen: readonly string[] | null = null;
  let asking: vscode.CancellationTokenSource | null = null;
  let isOutdated = false;
  let quiet: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();

  const post = (message: ToPanel): void => {
    if (isReady) void panel.webview.postMessage(message);
  };
  const ask = <R>(request: string, params: object): Promise<R> => client.sendRequest<R>(request, params);

  /** Draws the boat as it is; a change meanwhile is drawn after it, so that one request is on its way at a time. */
  async function draw(withProposals: boolean): Promise<void> {
    clearTimeout(quiet);
    if (!isReady || !panel.visible || !boat || !client.isRunning()) return;
    if (asking) {
      isOutdated = true;
      asking.cancel();
      return;
    }
    const source = new vscode.CancellationTokenSource();
    asking = source;
    isOutdated = false;
    const document = boat;
    const uri = document.uri.toString();
    const params: SheetParams = { uri, proposal: withProposals ? chosen : null, ...(seen ? { seen } : {}) };
    const result = await client.sendRequest<SheetResult>(sheetRequest, params, source.token).catch(() => null);
    source.dispose();
    asking = null;
    if (boat !== document || isOutdated) {
      void draw(false);
      return;
    }
    if (result?.version !== document.version) return;
    const { pictures, isWhole, words, proposals } = result;
    post({ kind: 'sheet', uri, words, pictures, isWhole, proposals, chosen });
    if (!withProposals) quiet = setTimeout(() => void draw(true), quietMilliseconds);
  }

  async function light(position: vscode.Position | undefined): Promise<void> {
    if (!isReady || !panel.visible || !boat || !position || !client.isRunning()) return;
    const { line, character } = position;
    const params: EntryAtParams = { uri: boat.uri.toString(), position: { line, character } };
    const result = await ask<EntryAtResult>(entryAtRequest, params).catch(() => null);
    if (result) post({ kind: 'light', path: result.path });
  }

  async function reveal(path: string): Promise<void> {
    if (!boat) return;
    const params: EntryRangeParams = { uri: boat.uri.toString(), path };
    const { range } = await ask<EntryRangeResult>(entryRangeRequest, params);
    if (!range) return;
    const document = boat;
    const seen = vscode.window.visibleTextEditors.find(editor => editor.document === document);
    const start = rangeOf(range).start;
    const show = (): Thenable<vscode.TextEditor> =>
      vscode.window.showTextDocument(document, {
        viewColumn: seen?.viewColumn ?? vscode.ViewColumn.One,
        selection: new vscode.Range(start, start),
      });
    const editor = await show();
    editor.revealRange(rangeOf(range), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
    // The panel is told of a click into it later than we are, and takes the focus back.
    await new Promise(resolve => setTimeout(resolve, focusMilliseconds));
    if (isReady && panel.active) await show();
  }

  async function preview({ drag, path, metres }: Extract<FromPanel, { kind: 'preview' }>): Promise<void> {
    if (!boat) return;
    const params: PreviewParams = { uri: boat.uri.toString(), path, metres, ...(seen ? { seen } : {}) };
    const result = await ask<PreviewResult>(previewRequest, params).catch(() => null);
    const isCurrent = result?.version === boat?.version;
    post({ kind: 'preview', drag, pictures: isCurrent ? (result?.pictures ?? []) : [], words: result?.words ?? '' });
  }

  /** One edit after the other: each is asked for once the text has the one before. */
  function write(request: string, params: object): void {
    const document = boat;
    if (!document) return;
    const run = async (): Promise<void> => {
      const said = await writeEdit(document, () =>
        ask<EditResult>(request, { uri: document.uri.toString(), ...params }),
      ).catch(problem => String(problem));
      post({ kind: 'say', words: said ?? '' });
      // Not all deeds change the text: the page may still show what was held.
      void draw(false);
    };
    writing = writing.then(run);
  }

  const deeds: { readonly [K in FromPanel['kind']]: (message: Extract<FromPanel, { kind: K }>) => void } = {
    ready() {
      isReady = true;
      if (boat) void draw(true).then(() => light(cursorIn(boat)));
      else post({ kind: 'nothing', words: 'Open a boat file (NAME.boat.yaml) to see it here.' });
    },
    seen({ pictures }) {
      seen = pictures.length > 0 ? pictures : null;
    },
    reveal: ({ path }) => void reveal(path),
    preview: message => void preview(message),
    drop: ({ path, metres }) => write(moveRequest, { path, by: { metres } } satisfies Omit<MoveParams, 'uri'>),
    nudge: ({ path, marks }) => write(moveRequest, { path, by: { marks } } satisfies Omit<MoveParams, 'uri'>),
    choose({ proposal }) {
      chosen = proposal;
      void draw(true);
    },
    take: ({ proposal }) => write(proposalRequest, { proposal } satisfies Omit<ProposalParams, 'uri'>),
    print: () => boat && void print(boat.uri),
  };
  const hear = async <K extends FromPanel['kind']>(message: Extract<FromPanel, { kind: K }>): Promise<void> => {
    // A file that no editor shows is closed after a while; what is done on its sheet opens it again.
    if (boat?.isClosed) await follow(boat.uri);
    deeds[message.kind as K](message);
  };

  const subscriptions = [
    panel.webview.onDidReceiveMessage(hear),
    panel.onDidChangeViewState(() => {
      // The page is thrown away and begins anew; it will say when it listens.
      if (!panel.visible) isReady = false;
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor, selections }) => {
      if (textEditor.document === boat) void light(selections[0]?.active);
    }),
    vscode.workspace.onDidOpenTextDocument(document => {
      // Closed and opened again, a file is another document.
      if (boat?.isClosed && document.uri.toString() === boat.uri.toString()) void follow(document.uri);
    }),
  ];

  async function follow(uri: vscode.Uri | null): Promise<void> {
    if (boat && !boat.isClosed && uri?.toString() === boat.uri.toString()) return;
    const document = uri && (await vscode.workspace.openTextDocument(uri).then(undefined, () => null));
    boat = document;
    chosen = 0;
    panel.title = document ? `Trim sheet of ${nameOf(document.uri)}` : 'Trim sheet';
    if (!document) post({ kind: 'nothing', words: 'Open a boat file (NAME.boat.yaml) to see it here.' });
    await draw(false);
    await light(cursorIn(document));
  }

  return {
    boat: () => boat?.uri ?? null,
    follow: uri => void follow(uri),
    refresh(boatUri) {
      if (boat?.uri.toString() !== boatUri) return;
      // Another text has other proposals.
      chosen = 0;
      void draw(false);
    },
    dispose() {
      isReady = false;
      clearTimeout(quiet);
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
}

const cursorIn = (document: vscode.TextDocument | null): vscode.Position | undefined =>
  vscode.window.visibleTextEditors.find(editor => editor.document === document)?.selection.active;

/** "petrel" of `petrel.boat.yaml`. */
const nameOf = ({ path }: vscode.Uri): string => path.replace(/^.*\//, '').replace(/\.boat\.ya?ml$/, '');
