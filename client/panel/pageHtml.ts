/** Where the page of the sheet has its style and its script from, and what lets the script run. */
interface PageParts {
  readonly style: string;
  readonly script: string;
  /** Content policy; the script bears the same nonce. */
  readonly policy: string;
  readonly nonce: string;
}

/** The page of the trim sheet, empty until the extension sends pictures. */
export const pageHtml = ({ style, script, policy, nonce }: PageParts): string => `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trim sheet</title>
<link rel="stylesheet" href="${style}">
</head>
<body class="empty">
<header>
<h1 id="verdict" aria-live="polite">The boat is being drawn.</h1>
<p id="words"></p>
<p id="said" role="status"></p>
<div class="tools">
<div id="offer" hidden>
<label for="choice">Proposed:</label>
<select id="choice"></select>
<button id="take" type="button">Take</button>
</div>
<button id="names" type="button" class="quiet" aria-pressed="false">All names</button>
<button id="print" type="button" class="quiet">Print…</button>
</div>
<p id="proposed" hidden></p>
</header>
<main aria-label="Trim sheet">
<div id="gauges"></div>
<p id="legend"></p>
<div id="pictures"></div>
</main>
<div hidden>
<p id="keys-entry">Enter goes to its line in the boat file.</p>
<p id="keys-part">Enter goes to its line in the boat file. Left and right arrow move it along the boat by one mark of the tape, with Shift by ten.</p>
<p id="keys-ghost">Enter takes what is proposed into the boat file.</p>
</div>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
