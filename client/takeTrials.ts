/** Brings the trials of the poolside page into the boat file of the active editor. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type TakeTrialsParams, type TakeTrialsResult, takeTrialsRequest } from '../server/editor/protocol.ts';
import { boatLanguage } from './boatLanguage.ts';
import { chosenText } from './chosenText.ts';
import { writeEdit } from './sheetEdits.ts';

type Way = vscode.QuickPickItem & { readonly read: () => Thenable<string | null> };

const ways: readonly Way[] = [
  {
    label: 'Paste',
    description: 'what was copied or shared on the page',
    read: () => vscode.env.clipboard.readText(),
  },
  {
    label: 'Choose a file',
    description: 'that was saved on the page',
    read: () => chosenText({ title: 'Trials from the poolside page' }),
  },
];

export async function takePoolsideTrials(client: BaseLanguageClient): Promise<void> {
  const document = vscode.window.activeTextEditor?.document;
  if (document?.languageId !== boatLanguage) {
    await vscode.window.showInformationMessage('Open the boat file first (NAME.boat.yaml), then take its trials.');
    return;
  }
  const way = await vscode.window.showQuickPick(ways, { title: 'Take trials from the poolside page' });
  const text = way && (await way.read());
  if (text === undefined || text === null) return;
  let words = '';
  const problem = await writeEdit(document, async () => {
    const params: TakeTrialsParams = { uri: document.uri.toString(), text };
    const taken = await client.sendRequest<TakeTrialsResult>(takeTrialsRequest, params);
    words = taken.words;
    return taken.edit;
  });
  if (problem === null) await vscode.window.showInformationMessage(words);
  else await vscode.window.showWarningMessage(problem);
}
