import * as vscode from "vscode";

/**
 * The page's frame. It may load its own script and style and show pictures that are part of a drawing; nothing else, and
 * nothing from the network.
 */
export function pageHtml(webview: vscode.Webview, extension: vscode.Uri, unit: vscode.Uri): string {
  const nonce = newNonce();
  const file = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(extension, "dist", name)).toString();
  const policy = [
    "default-src 'none'",
    "img-src data:",
    `style-src 'nonce-${nonce}' ${webview.cspSource}`,
    `script-src 'nonce-${nonce}' ${webview.cspSource}`,
  ].join("; ");
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" nonce="${nonce}" href="${file("webview.css")}">
<title>Sheets</title>
</head>
<body data-unit="${escaped(unit.toString())}">
<header>
<div id="controls" role="toolbar" aria-label="What is shown">
<div id="what">
<label hidden>Activity<select id="activity"></select></label>
<label hidden>Level<select id="level"></select></label>
<label hidden><span id="versionName">Version</span><select id="version"></select></label>
</div>
<div id="how">
<div id="views" role="radiogroup" aria-label="View" hidden></div>
<div id="zoom" role="group" aria-label="Size" hidden>
<button type="button" id="smaller" aria-label="Smaller" title="Smaller (−)">−</button>
<button type="button" id="size" title="Size on the screen, in percent of the size on paper. Click for 100 %."></button>
<button type="button" id="larger" aria-label="Larger" title="Larger (+)">+</button>
<button type="button" id="fit" title="Fit the width (0)">Fit width</button>
</div>
</div>
</div>
<p id="line" role="status" aria-live="polite"></p>
<details id="remarks" hidden><summary></summary><ul></ul></details>
</header>
<svg class="patterns" aria-hidden="true"><defs>
<pattern id="differs" width="2.4" height="2.4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
<line x2="0" y2="2.4" stroke="#000" stroke-opacity="0.3" stroke-width="0.5"/>
</pattern>
</defs></svg>
<main id="sheets" tabindex="-1" aria-label="Sheets"></main>
<script nonce="${nonce}" src="${file("webview.js")}"></script>
</body>
</html>`;
}

function newNonce(): string {
  return [...crypto.getRandomValues(new Uint8Array(18))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;");
}
