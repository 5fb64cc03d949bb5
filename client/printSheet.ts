/** Writes the sheet for the bench as one HTML file and opens it for printing. */
import * as vscode from 'vscode';
import { type BaseLanguageClient, ProgressType } from 'vscode-languageclient';
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
  const html = await askForPage(client, { uri: boat.toString(), paper, appendix });
  if (html === null) return;
  await savePage(boat, {
    html,
    kind: 'sheet',
    title: 'Save the trim sheet',
    said: name => `The trim sheet is saved as ${name}.`,
    open: 'Open to print',
  });
}

/** The page; a long one comes in pieces. */
async function askForPage(client: BaseLanguageClient, params: PrintParams): Promise<string | null> {
  const partialResultToken = crypto.randomUUID();
  let begun = '';
  const heard = client.onProgress(new ProgressType<string>(), partialResultToken, piece => {
    begun += piece;
  });
  try {
    const { html } = await client.sendRequest<PrintResult>(printRequest, { ...params, partialResultToken });
    return html === null ? null : begun + html;
  } finally {
    heard.dispose();
  }
}
