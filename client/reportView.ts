/** The report of a boat as a read-only document beside its file, written anew whenever the boat is. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type ReportParams, type ReportResult, reportRequest } from '../server/editor/protocol.ts';
import { boatLanguage } from './boatLanguage.ts';

const reportScheme = 'trimwright-report';

export type ReportView = vscode.Disposable & {
  readonly openForActiveEditor: () => Promise<void>;
  /** Writes the report of the boat file `boatUri` anew, if it is open. */
  readonly refresh: (boatUri: string) => void;
};

export function createReportView(client: BaseLanguageClient): ReportView {
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const provider = vscode.workspace.registerTextDocumentContentProvider(reportScheme, {
    onDidChange: changed.event,
    provideTextDocumentContent: async uri => {
      const params: ReportParams = { uri: uri.query };
      const { text } = await client.sendRequest<ReportResult>(reportRequest, params);
      return text;
    },
  });
  return {
    async openForActiveEditor() {
      const boat = vscode.window.activeTextEditor?.document;
      if (boat?.languageId !== boatLanguage) {
        await vscode.window.showInformationMessage('Open a boat file first (NAME.boat.yaml), then ask for its report.');
        return;
      }
      const report = await vscode.workspace.openTextDocument(reportUri(boat.uri.toString()));
      await vscode.window.showTextDocument(report, { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true });
    },
    refresh(boatUri) {
      const uri = reportUri(boatUri).toString();
      const open = vscode.workspace.textDocuments.find(document => document.uri.toString() === uri);
      if (open !== undefined) {
        changed.fire(open.uri);
      }
    },
    dispose() {
      provider.dispose();
      changed.dispose();
    },
  };
}

/**
 * The boat file travels in the query; the path is only what the tab is called, without the ending that would make the
 * report itself a boat file.
 */
function reportUri(boatUri: string): vscode.Uri {
  const name = vscode.Uri.parse(boatUri)
    .path.replace(/^.*\//, '')
    .replace(/\.boat\.ya?ml$/, '');
  return vscode.Uri.from({ scheme: reportScheme, path: `/Report of ${name}`, query: boatUri });
}
