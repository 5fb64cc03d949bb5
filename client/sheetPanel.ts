/** The trim sheet: one panel beside the editor, which follows the active boat file and comes back with the window. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { activeBoat } from './activeBoat.ts';
import { boatLanguage } from './boatLanguage.ts';
import type { PanelMemory } from './panel/messages.ts';
import { createSheet, type SheetView } from './sheet.ts';
import { sheetHtml } from './sheetHtml.ts';

const viewType = 'trimwright.sheet';

export type SheetPanel = vscode.Disposable & {
  /** Opens the sheet of a boat file, or of the one in the active editor. */
  readonly open: (boatUri: string | undefined) => Promise<void>;
  /** The boat file was analysed anew. */
  readonly refresh: (boatUri: string) => void;
  /** The boat file that is shown; null for none. */
  readonly boat: () => vscode.Uri | null;
};

export interface SheetPanelHost {
  readonly client: BaseLanguageClient;
  readonly extension: vscode.Uri;
  readonly print: (boat: vscode.Uri) => Promise<void>;
}

export function createSheetPanel({ client, extension, print }: SheetPanelHost): SheetPanel {
  let open: { readonly panel: vscode.WebviewPanel; readonly sheet: SheetView } | null = null;

  const attach = (panel: vscode.WebviewPanel, boat: vscode.Uri | null): void => {
    panel.webview.options = { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(extension, 'dist')] };
    panel.iconPath = vscode.Uri.joinPath(extension, 'client', 'media', 'icon.png');
    const sheet = createSheet({ client, panel, print });
    open = { panel, sheet };
    panel.onDidDispose(() => {
      sheet.dispose();
      if (open?.panel === panel) open = null;
    });
    panel.webview.html = sheetHtml(panel.webview, extension);
    sheet.follow(boat);
  };

  const follow = (editor: vscode.TextEditor | undefined): void => {
    if (editor?.document.languageId === boatLanguage) open?.sheet.follow(editor.document.uri);
  };

  const subscriptions = [
    vscode.window.onDidChangeActiveTextEditor(follow),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel: vscode.WebviewPanel, memory: PanelMemory | undefined) {
        attach(panel, memory ? vscode.Uri.parse(memory.uri, true) : activeBoat());
      },
    }),
  ];
  return {
    async open(boatUri) {
      const boat = boatUri === undefined ? activeBoat() : vscode.Uri.parse(boatUri, true);
      if (!boat) {
        await vscode.window.showInformationMessage(
          'Open a boat file first (NAME.boat.yaml), then ask for its trim sheet.',
        );
        return;
      }
      if (open) {
        open.sheet.follow(boat);
        open.panel.reveal(undefined, true);
        return;
      }
      const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
      attach(vscode.window.createWebviewPanel(viewType, 'Trim sheet', place, { enableFindWidget: true }), boat);
    },
    boat: () => open?.sheet.boat() ?? null,
    refresh: boatUri => open?.sheet.refresh(boatUri),
    dispose() {
      for (const subscription of subscriptions) subscription.dispose();
      open?.panel.dispose();
    },
  };
}
