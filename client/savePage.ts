/** Saves a page that was made of a boat file, wherever the editor's files are, and opens it for whoever wants to see it. */
import * as vscode from 'vscode';
import { offerDownload } from './downloadPanel.ts';

export interface MadePage {
  readonly html: string;
  /** What it is called beside the boat file: `sheet` for `petrel.sheet.html`. */
  readonly kind: string;
  /** Of the dialogue. */
  readonly title: string;
  /** What is said of it once it is saved under a name, and on the button that opens it. */
  readonly said: (name: string) => string;
  readonly open: string;
}

export async function savePage(boat: vscode.Uri, { html, kind, title, said, open }: MadePage): Promise<void> {
  const beside = boat.path.replace(/(?:\.boat)?\.ya?ml$/, '').concat(`.${kind}.html`);
  const proposed = boat.scheme === 'untitled' ? {} : { defaultUri: boat.with({ path: beside }) };
  const target = await vscode.window.showSaveDialog({ ...proposed, title, filters: { 'Web page': ['html'] } });
  if (!target) return;
  await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(html));
  const name = target.path.replace(/^.*\//, '');
  if ((await vscode.window.showInformationMessage(said(name), open)) !== open) return;
  // A browser cannot open a file of the machine that serves the editor: it is handed over to it.
  const isHere = vscode.env.uiKind === vscode.UIKind.Desktop && target.scheme === 'file' && !vscode.env.remoteName;
  if (!(isHere && (await vscode.env.openExternal(target)))) offerDownload(name, html, open);
}
