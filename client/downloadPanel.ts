/** Hands a page over to the browser that the editor runs in, where it can be printed like any other. */
import * as vscode from 'vscode';
import { newNonce } from './nonce.ts';

/** A panel with a button that downloads the page: a page in the editor may neither print nor open a window. `title`: what it is for, "Open to print". */
export function offerDownload(name: string, html: string, title: string): void {
  const panel = vscode.window.createWebviewPanel('trimwright.page', `${title}: ${name}`, vscode.ViewColumn.Active, {
    enableScripts: true,
    localResourceRoots: [],
  });
  panel.webview.html = downloadHtml({ name, html, title }, newNonce());
}

/** What is handed over stands in the script as text that can end neither it nor a line of it. */
const literal = (text: string): string =>
  JSON.stringify(text).replace(
    /[<\u2028\u2029]/g,
    character => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

const downloadHtml = (
  { name, html, title }: { readonly name: string; readonly html: string; readonly title: string },
  nonce: string,
): string => `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'">
<title>${title}</title>
<style nonce="${nonce}">
body { padding: 24px; font-size: 1.1em; }
button { padding: 6px 16px; font: inherit; color: var(--vscode-button-foreground); background: var(--vscode-button-background); border: 1px solid var(--vscode-contrastBorder, transparent); }
</style>
</head>
<body>
<main>
<h1>${title}</h1>
<p>A page in the editor can neither print nor open another. The browser can: download it and open it there.</p>
<button id="download" type="button">Download the page</button>
<p id="done" role="status"></p>
</main>
<script nonce="${nonce}">
const name = ${literal(name)};
const page = ${literal(html)};
document.getElementById('download').addEventListener('click', () => {
  const link = document.createElement('a');
  link.download = name;
  link.href = URL.createObjectURL(new Blob([page], { type: 'text/html' }));
  link.click();
  document.getElementById('done').textContent = 'Handed over as ' + name + ': look among your downloads.';
});
</script>
</body>
</html>`;
