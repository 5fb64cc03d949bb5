import * as vscode from 'vscode';

/** Tells nobody anything: it only has to be another one each time. */
function nonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');
}

/** The page of the trim sheet, empty until the extension sends pictures. Nothing is fetched but its own script and style. */
export function sheetHtml(webview: vscode.Webview, extension: vscode.Uri): string {
  const asset = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(extension, 'dist', name)).toString();
  const once = nonce();
  const policy = `default-src 'none'; script-src 'nonce-${once}'; style-src ${webview.cspSource}`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trim sheet</title>
<link rel="stylesheet" href="${asset('panel.css')}">
</head>
<body class="empty">
<header>
<p id="words">The boat is being drawn.</p>
<p id="said" role="status"></p>
<div class="tools">
<div id="offer" hidden>
<label for="choice">Proposed:</label>
<select id="choice"></select>
<button id="take" type="button">Take</button>
</div>
<button id="print" type="button" class="quiet">Print…</button>
</div>
</header>
<div id="scroller"><main id="pictures" aria-label="Trim sheet"></main></div>
<div hidden>
<p id="keys-entry">Enter goes to its line in the boat file.</p>
<p id="keys-part">Enter goes to its line in the boat file. Left and right arrow move it along the boat by one mark of the tape, with Shift by ten.</p>
<p id="keys-ghost">Enter takes what is proposed into the boat file.</p>
</div>
<script nonce="${once}" src="${asset('panel.js')}"></script>
</body>
</html>`;
}
