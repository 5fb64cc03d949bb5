/** The text and the trim sheet beside it: what the cursor is in lights up, what is clicked is shown in the text. */
import * as vscode from 'vscode';
import {
  type EntryAtParams,
  type EntryAtResult,
  type EntryRangeParams,
  type EntryRangeResult,
  entryAtRequest,
  entryRangeRequest,
} from '../server/editor/protocol.ts';
import { editorRange } from './sheetEdits.ts';
import { boatInView, post, type SheetPage } from './sheetPage.ts';

/** In this time a panel that was clicked into has had its focus. */
const focusMilliseconds = 200;

/** Lights up the entry at a place in the text. */
export async function light(page: SheetPage, position: vscode.Position | undefined): Promise<void> {
  const boat = boatInView(page);
  if (!boat || !position) return;
  const { line, character } = position;
  const params: EntryAtParams = { uri: boat.uri.toString(), position: { line, character } };
  const result = await page.client.sendRequest<EntryAtResult>(entryAtRequest, params).catch(() => null);
  if (result) post(page, { kind: 'light', path: result.path });
}

/** Shows an entry in the text, and leaves the focus there. */
export async function reveal(page: SheetPage, path: string): Promise<void> {
  const document = page.boat;
  if (!document) return;
  const params: EntryRangeParams = { uri: document.uri.toString(), path };
  const { range } = await page.client.sendRequest<EntryRangeResult>(entryRangeRequest, params);
  if (!range) return;
  const seen = vscode.window.visibleTextEditors.find(editor => editor.document === document);
  const start = editorRange(range).start;
  const show = (): Thenable<vscode.TextEditor> =>
    vscode.window.showTextDocument(document, {
      viewColumn: seen?.viewColumn ?? vscode.ViewColumn.One,
      selection: new vscode.Range(start, start),
    });
  const editor = await show();
  editor.revealRange(editorRange(range), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  // The panel is told of a click into it later than we are, and takes the focus back.
  await new Promise(resolve => setTimeout(resolve, focusMilliseconds));
  if (page.isReady && page.panel.active) await show();
}
