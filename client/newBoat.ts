import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type NewBoatParams, type NewBoatResult, newBoatRequest } from '../server/editor/protocol.ts';

/** Asks what the boat is called, how it is measured and where its file shall lie, and opens the file to fill in. */
export async function openNewBoat(client: BaseLanguageClient): Promise<void> {
  const name = await vscode.window.showInputBox({
    title: 'New boat file',
    prompt: 'What is the boat called?',
    placeHolder: 'for example: Petrel',
    validateInput: text => (text.trim() === '' ? 'Type a name; it can be changed later.' : undefined),
  });
  if (name === undefined) return;
  const measured = await vscode.window.showQuickPick(
    [
      { label: 'Millimetres and grams', description: SMALL, units: 'metric' as const },
      { label: 'Inches and ounces', description: SMALL, units: 'inches' as const },
      {
        label: 'Millimetres and grams, planned',
        description: PLANNED,
        units: 'metric' as const,
        plan: '900, 90, 62, 1:60',
      },
      {
        label: 'Inches and ounces, planned',
        description: PLANNED,
        units: 'inches' as const,
        plan: '35 1/2, 3 1/2, 2 3/8, 1:60',
      },
    ],
    { title: `How do you measure ${name.trim()}?` },
  );
  if (measured === undefined) return;
  const plan = measured.plan === undefined ? undefined : await askForPlan(measured.plan);
  if (measured.plan !== undefined && plan === undefined) return;
  const params: NewBoatParams = { name: name.trim(), units: measured.units, ...(plan === undefined ? {} : { plan }) };
  const { text, problem } = await client.sendRequest<NewBoatResult>(newBoatRequest, params);
  if (problem !== undefined) {
    void vscode.window.showErrorMessage(problem);
    return;
  }
  const uri = await vscode.window.showSaveDialog({
    title: `Where shall ${name.trim()} lie?`,
    saveLabel: 'Make the boat file',
    defaultUri: beside(`${fileNameOf(name)}.boat.yaml`),
    // An ending of two parts is put behind a name that has it already, by the dialogue of a served editor.
    filters: { 'Boat file': ['yaml', 'yml'] },
  });
  if (uri === undefined) return;
  const file = withEnding(uri);
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
  // Not as a preview: that would take the place of the walkthrough.
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file), { preview: false });
}

const SMALL = 'a small boat in trim, to overwrite part by part';
const PLANNED = 'from length, beam, waterline and scale';

const askForPlan = (example: string): Thenable<string | undefined> =>
  vscode.window.showInputBox({
    title: 'Length, beam, waterline and scale',
    prompt: 'The waterline above the keel; the scale may be left out.',
    placeHolder: `for example: ${example}`,
    validateInput: text =>
      text.split(',').length < 3 ? `Three or four figures with commas between them, such as: ${example}` : undefined,
  });

/** In the folder that is open, or else beside the file that is. */
function beside(file: string): vscode.Uri | undefined {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const open = vscode.window.activeTextEditor?.document.uri;
  if (folder) return vscode.Uri.joinPath(folder, file);
  return open && open.scheme !== 'untitled' ? vscode.Uri.joinPath(open, '..', file) : undefined;
}

const fileNameOf = (name: string): string =>
  name
    .trim()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .toLowerCase() || 'boat';

/** The ending by which the editor knows a boat file. */
const withEnding = (uri: vscode.Uri): vscode.Uri =>
  /\.boat\.ya?ml$/i.test(uri.path) ? uri : uri.with({ path: `${uri.path.replace(/\.ya?ml$/i, '')}.boat.yaml` });
