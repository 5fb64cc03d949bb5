import { newNonce } from './nonce.ts';

/** The page of the report, empty until its content is sent. Nothing is fetched; what comes anew keeps the place that is read. */
export function reportHtml(): string {
  const once = newNonce();
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'nonce-${once}'; style-src 'nonce-${once}'">
<meta name="viewport" content="width=device-width">
<title>Report</title>
<style nonce="${once}">${STYLE}</style>
</head>
<body>
<main></main>
<script nonce="${once}">
addEventListener('message', ({ data }) => { document.querySelector('main').innerHTML = data.html; });
acquireVsCodeApi().postMessage('ready');
</script>
</body>
</html>`;
}

const STYLE = `
body { color: var(--vscode-foreground); font: var(--vscode-font-size) var(--vscode-font-family); line-height: 1.5; }
main { max-width: 110rem; }
h1 { font-size: 1.5em; }
h2 { font-size: 1.1em; margin: 1.2em 0 0.3em; }
.pairs { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 30rem), 1fr)); gap: 0 2rem; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: 0.15em 0.6em 0.15em 0; font-weight: normal; font-variant-numeric: tabular-nums; }
td:last-child { white-space: nowrap; }
tr { border-bottom: 1px solid var(--vscode-widget-border, transparent); }
.out { color: var(--vscode-errorForeground); font-weight: bold; }
pre { white-space: pre-wrap; overflow-wrap: anywhere; font-family: var(--vscode-editor-font-family); margin: 0; }
`;
