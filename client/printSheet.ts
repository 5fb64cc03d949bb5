/** Writes the sheet for the bench as one HTML file and opens it for printing. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type PrintParams, type PrintResult, printRequest } from '../server/editor/protocol.ts';
import { savePage } from './savePage.ts';

type PaperChoice = vscode.QuickPickItem & Pick<PrintParams, 'paper' | 'appendix'>;

const APPENDIX = 'the two pages, then all figures, views, plots and blank forms';
const papers: readonly PaperChoice[] = [
  { label: 'A4', description: 'two pages, 210 x 297 mm', paper: 'a4', appendix: false },
  { label: 'Letter', description: 'two pages, 8 1/2 x 11 in', paper: 'letter', appendix: false },
  { label: 'A4 with appendix', description: APPENDIX, paper: 'a4', appendix: true },
  { label: 'Letter with appendix', description: APPENDIX, paper: 'letter', appendix: true },
];

export async function printSheet(client: BaseLanguageClient, boat: vscode.Uri | null): Promise<void> {
  if (!boat) {
    await vscode.window.showInformationMessage('Open a boat file first (NAME.boat.yaml), then print its trim sheet.');
    return;
  }
  const choice = await vscode.window.showQuickPick(papers, { title: 'Print trim sheet: which paper?' });
  if (!choice) return;
  const { paper, appendix } = choice;
  const params: PrintParams = { uri: boat.toString(), paper, appendix };
  const { html } = await client.sendRequest<PrintResult>(printRequest, params);
  if (html === null) return;
  await savePage(boat, {
    html,
    kind: 'sheet',
    title: 'Save the trim sheet',
    said: name => `The trim sheet is saved as ${name}.`,
    open: 'Open to print',
  });
}
