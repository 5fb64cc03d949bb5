/** The text of a file that is chosen in a box. */
import * as vscode from 'vscode';

/** Null, and said where something is wrong, when there is none. */
export async function chosenText(options: vscode.OpenDialogOptions): Promise<string | null> {
  const [file] = (await vscode.window.showOpenDialog(options)) ?? [];
  if (!file) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await vscode.workspace.fs.readFile(file));
  } catch (problem) {
    const name = file.path.replace(/^.*\//, '');
    await vscode.window.showWarningMessage(
      problem instanceof TypeError
        ? `${name} has characters that are not UTF-8, which would be lost. Save it as UTF-8, and do this again.`
        : `${name} could not be read.`,
    );
    return null;
  }
}
