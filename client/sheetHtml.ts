import * as vscode from 'vscode';
import { newNonce } from './nonce.ts';
import { pageHtml } from './panel/pageHtml.ts';

/** The page of the trim sheet, empty until the extension sends pictures. Nothing is fetched but its own script and style. */
export function sheetHtml(webview: vscode.Webview, extension: vscode.Uri): string {
  const asset = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(extension, 'dist', name)).toString();
  const once = newNonce();
  const policy = `default-src 'none'; script-src 'nonce-${once}'; style-src ${webview.cspSource}`;
  return pageHtml({ style: asset('panel.css'), script: asset('panel.js'), policy, nonce: once });
}
