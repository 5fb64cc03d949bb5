/** The status bar line: both conditions of the boat in the active editor. */
import * as vscode from 'vscode';
import type { SummaryParams, SummaryState } from '../server/editor/protocol.ts';
import { boatLanguage } from './boatLanguage.ts';

/** Told by shape, not by colour. */
const icons: Readonly<Record<SummaryState, string>> = {
  inTrim: 'check',
  outOfTrim: 'warning',
  faulty: 'error',
  open: 'question',
};

export type SummaryBar = vscode.Disposable & { readonly show: (summary: SummaryParams) => void };

/** @param command run by a click on the line */
export function createSummaryBar(command: string): SummaryBar {
  const item = vscode.window.createStatusBarItem('trimwright.summary', vscode.StatusBarAlignment.Left, 0);
  item.name = 'Boat trim';
  item.command = command;
  const summaries = new Map<string, SummaryParams>();

  function update(): void {
    const document = vscode.window.activeTextEditor?.document;
    const summary = document?.languageId === boatLanguage ? summaries.get(document.uri.toString()) : undefined;
    if (summary === undefined) {
      item.hide();
      return;
    }
    item.text = `$(${icons[summary.state]}) ${summary.text}`;
    item.tooltip = new vscode.MarkdownString(summary.tooltip);
    item.show();
  }

  const subscriptions = [
    vscode.window.onDidChangeActiveTextEditor(update),
    vscode.workspace.onDidCloseTextDocument(document => {
      summaries.delete(document.uri.toString());
      update();
    }),
  ];
  return {
    show(summary) {
      summaries.set(summary.uri, summary);
      update();
    },
    dispose() {
      for (const subscription of [...subscriptions, item]) {
        subscription.dispose();
      }
    },
  };
}
