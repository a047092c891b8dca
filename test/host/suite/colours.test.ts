import assert from "node:assert/strict";
import * as vscode from "vscode";
import { until, workbench } from "./driver";
import { closeAll, focusEditor, openUnit } from "./units";

const text = `---
title: The bicycle shop
---

## At the counter

A note = with / marks | in prose.

- o copo = the glass
- a tigela = the mug / the tankard = beer
  - A taça = cheia / vazia.
- ![a / b](img/spoon.png) = colher | faca
- Queria | um disco. = [...] please. <!-- allow order: yes -->
  - Um disco, | queria.
- c\\|d = \`x = y\` z

- [x] A Inês = mede / um sumo.

1. O pai = entra

\`\`\`activity
make: tiles
from: At the counter
\`\`\`

- after = the fence
`;

/** Where to look: a text that occurs once, the offset in it, and a scope that is (or after `not`, is not) there. */
const places: readonly (readonly [string, number, string, "not"?])[] = [
  ["copo = the", 5, "keyword.other.operator.pair.cutwork"],
  ["tigela = the", 7, "keyword.other.operator.pair.cutwork"],
  ["tankard = beer", 8, "keyword.other.operator.pair.cutwork", "not"],
  ["tankard = beer", 8, "meta.pair.right.cutwork"],
  ["mug / the", 4, "keyword.other.operator.alternative.cutwork"],
  ["note = with", 5, "keyword.other.operator.pair.cutwork", "not"],
  ["with / marks", 5, "keyword.other.operator.alternative.cutwork", "not"],
  ["marks | in", 6, "keyword.other.operator.bar.cutwork", "not"],
  ["taça = cheia", 5, "keyword.other.operator.pair.cutwork", "not"],
  ["cheia / vazia", 6, "keyword.other.operator.alternative.cutwork", "not"],
  ["[a / b]", 3, "keyword.other.operator.alternative.cutwork", "not"],
  ["png) = colher", 5, "keyword.other.operator.pair.cutwork"],
  ["colher | faca", 7, "keyword.other.operator.bar.cutwork", "not"],
  ["Queria | um", 7, "keyword.other.operator.bar.cutwork"],
  ["disco, | queria", 7, "keyword.other.operator.bar.cutwork"],
  ["[...]", 1, "variable.other.gap.cutwork"],
  ["allow order", 0, "keyword.other.remark.cutwork"],
  ["c\\|d", 2, "keyword.other.operator.bar.cutwork", "not"],
  ["`x = y`", 3, "keyword.other.operator.pair.cutwork", "not"],
  ["[x] A Inês", 1, "constant.language.task.cutwork"],
  ["[x] A Inês", 1, "markup.inserted.true.cutwork"],
  ["Inês = mede", 5, "keyword.other.operator.pair.cutwork", "not"],
  ["mede / um", 5, "keyword.other.operator.alternative.cutwork", "not"],
  ["pai = entra", 4, "keyword.other.operator.pair.cutwork", "not"],
  ["make: tiles", 6, "support.constant.kind.cutwork"],
  ["from: At", 0, "meta.embedded.block.yaml"],
  ["from: At", 0, "entity.name.tag.yaml"],
  ["title: The", 0, "meta.embedded.block.frontmatter"],
  ["after = the", 6, "keyword.other.operator.pair.cutwork"],
];

/** The scopes at a place, by VS Code's own view of them. */
async function scopesAt(editor: vscode.TextEditor, offset: number): Promise<readonly string[]> {
  const position = editor.document.positionAt(offset);
  editor.selection = new vscode.Selection(position, position);
  await vscode.commands.executeCommand("editor.action.inspectTMScopes");
  const cells = ".token-inspect-widget .tiw-metadata-value";
  const shown = await until("the scopes", async () => {
    const texts = await workbench.text(cells);
    return texts.some((each) => each.includes("text.html.markdown.cutwork")) ? texts : undefined;
  });
  await vscode.commands.executeCommand("editor.action.inspectTMScopes");
  await until("their end", async () => (await workbench.count(cells)) === 0);
  return shown.join("\n").split(/\s+/);
}

describe("colours", () => {
  let editor: vscode.TextEditor;
  before(async () => {
    editor = await openUnit("colours.unit.md", text);
    await focusEditor();
  });
  after(closeAll);

  it("say what is what", async function () {
    this.timeout(180_000);
    const wrong: string[] = [];
    for (const [near, at, scope, not] of places) {
      const scopes = await scopesAt(editor, text.indexOf(near) + at);
      if (scopes.includes(scope) !== (not === undefined)) wrong.push(`${near}: ${not ?? ""} ${scope}`);
    }
    assert.deepEqual(wrong, []);
  });
});
