/** The report of a boat as a page beside its file, written anew whenever the boat is. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type ReportParams, type ReportResult, reportRequest } from '../server/editor/protocol.ts';
import { activeBoat } from './activeBoat.ts';
import { reportHtml } from './reportHtml.ts';

export type ReportView = vscode.Disposable & {
  readonly openForActiveEditor: () => Promise<void>;
  /** Writes the report of the boat file `boatUri` anew, if it is open. */
  readonly refresh: (boatUri: string) => void;
};

export function createReportView(client: BaseLanguageClient): ReportView {
  const open = new Map<string, vscode.WebviewPanel>();

  async function send(boatUri: string): Promise<void> {
    const params: ReportParams = { uri: boatUri };
    const { html } = await client.sendRequest<ReportResult>(reportRequest, params);
    await open.get(boatUri)?.webview.postMessage({ html });
  }

  function show(boatUri: string): void {
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const options = { enableScripts: true, enableFindWidget: true, localResourceRoots: [] };
    const panel = vscode.window.createWebviewPanel('trimwright.report', titleOf(boatUri), place, options);
    open.set(boatUri, panel);
    panel.onDidDispose(() => open.delete(boatUri));
    // It says so when it is made, and again when it was hidden and comes back.
    panel.webview.onDidReceiveMessage(() => void send(boatUri));
    panel.webview.html = reportHtml();
  }

  return {
    async openForActiveEditor() {
      const boat = activeBoat();
      if (!boat) {
        await vscode.window.showInformationMessage('Open a boat file first (NAME.boat.yaml), then ask for its report.');
        return;
      }
      const uri = boat.toString();
      const panel = open.get(uri);
      if (panel) panel.reveal(undefined, true);
      else show(uri);
    },
    refresh(boatUri) {
      if (open.get(boatUri)?.visible) void send(boatUri);
    },
    dispose() {
      for (const panel of [...open.values()]) panel.dispose();
    },
  };
}

/** What the tab is called. */
const titleOf = (boatUri: string): string =>
  `Report of ${vscode.Uri.parse(boatUri)
    .path.replace(/^.*\//, '')
    .replace(/\.boat\.ya?ml$/, '')}`;
