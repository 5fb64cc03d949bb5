/** What one trim sheet panel shows, and what it does to the text. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type EditResult,
  type MoveParams,
  moveRequest,
  type ProposalParams,
  proposalRequest,
} from '../server/editor/protocol.ts';
import type { FromPanel } from './panel/messages.ts';
import { light, reveal } from './sheetCursor.ts';
import { createDrawing, preview, type SheetDrawing } from './sheetDrawing.ts';
import { writeEdit } from './sheetEdits.ts';
import { cursorIn, newSheetPage, post, postNothing, type SheetPage } from './sheetPage.ts';

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
  const page = newSheetPage(client, panel);
  const drawing = createDrawing(page);
  const hear = listener(page, deedsOn(page, drawing, print), drawing);
  const subscriptions = [drawing, ...eventsFor(page, hear, uri => void follow(page, drawing, uri))];
  return {
    boat: () => page.boat?.uri ?? null,
    follow: uri => void follow(page, drawing, uri),
    refresh(boatUri) {
      if (page.boat?.uri.toString() !== boatUri) return;
      // Another text has other proposals.
      page.chosen = 0;
      void drawing.draw(false);
    },
    dispose() {
      page.isReady = false;
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
}

type Deeds = { readonly [K in FromPanel['kind']]: (message: Extract<FromPanel, { kind: K }>) => void };

/** What each message of the page does. */
function deedsOn(page: SheetPage, drawing: SheetDrawing, print: SheetHost['print']): Deeds {
  const write = writerFor(page, drawing);
  return {
    ready({ width, names }) {
      page.isReady = true;
      page.room = { width, names };
      if (page.boat) void drawing.draw(true).then(() => light(page, cursorIn(page.boat)));
      else postNothing(page);
    },
    seen({ pictures }) {
      page.seen = pictures.length > 0 ? pictures : null;
    },
    room({ width, names }) {
      page.room = { width, names };
      void drawing.draw(true);
    },
    reveal: ({ path }) => void reveal(page, path),
    preview: message => void preview(page, message),
    drop: ({ path, metres }) => write(moveRequest, { path, by: { metres } } satisfies Omit<MoveParams, 'uri'>),
    nudge: ({ path, marks }) => write(moveRequest, { path, by: { marks } } satisfies Omit<MoveParams, 'uri'>),
    choose({ proposal }) {
      page.chosen = proposal;
      void drawing.draw(true);
    },
    take: ({ proposal }) => write(proposalRequest, { proposal } satisfies Omit<ProposalParams, 'uri'>),
    print: () => page.boat && void print(page.boat.uri),
  };
}

/** One edit after the other: each is asked for once the text has the one before. */
function writerFor(page: SheetPage, drawing: SheetDrawing): (request: string, params: object) => void {
  let writing: Promise<void> = Promise.resolve();
  return (request, params) => {
    const document = page.boat;
    if (!document) return;
    const run = async (): Promise<void> => {
      const said = await writeEdit(document, () =>
        page.client.sendRequest<EditResult>(request, { uri: document.uri.toString(), ...params }),
      ).catch(problem => String(problem));
      post(page, { kind: 'say', words: said ?? '' });
      // Not all deeds change the text: the page may still show what was held.
      void drawing.draw(false);
    };
    writing = writing.then(run);
  };
}

const listener =
  (page: SheetPage, deeds: Deeds, drawing: SheetDrawing) =>
  async <K extends FromPanel['kind']>(message: Extract<FromPanel, { kind: K }>): Promise<void> => {
    // A file that no editor shows is closed after a while; what is done on its sheet opens it again.
    if (page.boat?.isClosed) await follow(page, drawing, page.boat.uri);
    deeds[message.kind as K](message);
  };

const eventsFor = (
  page: SheetPage,
  hear: ReturnType<typeof listener>,
  reopen: (boat: vscode.Uri) => void,
): readonly vscode.Disposable[] => [
  page.panel.webview.onDidReceiveMessage(hear),
  page.panel.onDidChangeViewState(() => {
    // The page is thrown away and begins anew; it will say when it listens.
    if (!page.panel.visible) page.isReady = false;
  }),
  vscode.window.onDidChangeTextEditorSelection(({ textEditor, selections }) => {
    if (textEditor.document === page.boat) void light(page, selections[0]?.active);
  }),
  vscode.workspace.onDidOpenTextDocument(document => {
    // Closed and opened again, a file is another document.
    if (page.boat?.isClosed && document.uri.toString() === page.boat.uri.toString()) reopen(document.uri);
  }),
];

async function follow(page: SheetPage, drawing: SheetDrawing, uri: vscode.Uri | null): Promise<void> {
  if (page.boat && !page.boat.isClosed && uri?.toString() === page.boat.uri.toString()) return;
  const document = uri && (await vscode.workspace.openTextDocument(uri).then(undefined, () => null));
  page.boat = document;
  page.chosen = 0;
  page.panel.title = document ? `Trim sheet of ${nameOf(document.uri)}` : 'Trim sheet';
  if (!document) postNothing(page);
  await drawing.draw(false);
  await light(page, cursorIn(document));
}

/** "petrel" of `petrel.boat.yaml`. */
const nameOf = ({ path }: vscode.Uri): string => path.replace(/^.*\//, '').replace(/\.boat\.ya?ml$/, '');
