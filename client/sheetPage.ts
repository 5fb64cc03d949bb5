/** One trim sheet panel: its page, and the boat file on it. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { PanelNames, ToPanel } from './panel/messages.ts';

export interface SheetPage {
  readonly client: BaseLanguageClient;
  readonly panel: vscode.WebviewPanel;
  /** The boat file that is shown; null for none. */
  boat: vscode.TextDocument | null;
  /** Which of the proposals is drawn. */
  chosen: number;
  /** The page listens; a page that was hidden begins anew. */
  isReady: boolean;
  /** Pictures that can be seen; null until the page tells. */
  seen: readonly string[] | null;
  /** Room for the pictures, px, and what is named in them. */
  room: { readonly width: number; readonly names: PanelNames };
}

export const newSheetPage = (client: BaseLanguageClient, panel: vscode.WebviewPanel): SheetPage => ({
  client,
  panel,
  boat: null,
  chosen: 0,
  isReady: false,
  seen: null,
  room: { width: 880, names: 'few' },
});

export function post({ panel, isReady }: SheetPage, message: ToPanel): void {
  if (isReady) void panel.webview.postMessage(message);
}

export const postNothing = (page: SheetPage): void =>
  post(page, { kind: 'nothing', words: 'Open a boat file (NAME.boat.yaml) to see it here.' });

/** The boat on a page that can be drawn on now; null while it cannot. */
export const boatInView = ({ boat, isReady, panel, client }: SheetPage): vscode.TextDocument | null =>
  isReady && panel.visible && client.isRunning() ? boat : null;

/** What the server has to know of the page to draw for it. */
export const lookOf = ({ seen, room }: SheetPage): SheetPage['room'] & { readonly seen?: readonly string[] } => ({
  ...room,
  ...(seen ? { seen } : {}),
});

export const cursorIn = (document: vscode.TextDocument | null): vscode.Position | undefined =>
  vscode.window.visibleTextEditors.find(editor => editor.document === document)?.selection.active;
