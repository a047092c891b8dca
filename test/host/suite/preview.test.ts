import assert from "node:assert/strict";
import * as vscode from "vscode";
import { arrived, keyboard, until, webview, workbench } from "./driver";
import { closeAll, codeOf, findingsIn, focusEditor, goTo, marketUnit, openUnit, replace } from "./units";

const page = webview("Sheets");

/** A unit whose tiles go together in more than one way, since every word has the same answer. */
const ambiguous = [
  "## Greetings",
  "",
  ...["olá", "oi", "bom dia", "boa tarde", "viva", "então", "alô", "ei", "ora", "pois", "bem", "e aí"].map(
    (word) => `- ${word} = hello`,
  ),
  "",
  "```activity",
  "make: tiles",
  "grid: 3 x 3",
  "```",
  "",
  "A note at the end.",
  "",
].join("\n");

async function preview(name: string, text: string): Promise<vscode.TextEditor> {
  const editor = await openUnit(name, text);
  await vscode.commands.executeCommand("cutwork.preview");
  await page.waitFor("rect.piece");
  return editor;
}

const line = async (): Promise<string> => (await page.text("#line")).join();
const chooseView = (label: string): Promise<void> => page.click(`#views button:text-is("${label}")`);

describe("the sheets beside the text", () => {
  afterEach(closeAll);

  it("shows what is to be cut, and the solution when asked", async () => {
    await preview("views.unit.md", marketUnit);
    assert.deepEqual(await page.text("#views button"), ["To cut", "Solved"]);
    assert.match(await line(), /One solution, proven/);
    const cut = (await page.text("figcaption")).join();
    await chooseView("Solved");
    await until("another sheet", async () => (await page.text("figcaption")).join() !== cut);
    assert.equal(await page.attribute('#views button:text-is("Solved")', "aria-checked"), "true");
  });

  it("shows a second solution beside the first, its pieces marked", async () => {
    await preview("two.unit.md", ambiguous);
    assert.match(await line(), /^6 ways/);
    assert.deepEqual(await page.text("#views button"), ["To cut", "Solved", "Both solutions"]);
    await chooseView("Both solutions");
    await until("two columns", async () => (await page.count("section:has(.paper)")) === 2);
    assert.deepEqual(await page.text("h2"), ["The solution", "Another solution"]);
    assert.equal(await page.count("section:first-of-type .piece.differs"), 0);
    assert.ok((await page.count("section:last-of-type .piece.differs")) > 0);
    const fill = await page.evaluate("getComputedStyle(document.querySelector('.piece.differs')).fill");
    assert.match(String(fill), /url/, "not by colour alone");
    await workbench.shot("second");
  });

  it("name the choice of a desk or a version by what it is", async () => {
    const story = "## The rescue\n\n1. A luz.\n2. O sino.\n3. O barco.\n4. A vela.\n\n";
    const choices = "#what label:has(#version):not([hidden])";
    const named = async (): Promise<string> =>
      String(await page.evaluate(`document.querySelector('${choices}').innerText`));
    const editor = await preview("desks.unit.md", `${story}\`\`\`activity\nmake: strips\ndesks: 4\n\`\`\`\n`);
    assert.match(await named(), /^Desk\s/);
    await replace(editor, "desks: 4", "versions: 2");
    await until("versions", async () => /^Version\s/.test(await named()));
  });

  it("follows the text while it is typed and keeps what did not change", async () => {
    const editor = await preview("follow.unit.md", marketUnit);
    await page.evaluate("void (window.kept = document.querySelector('.paper > svg'))");
    await replace(editor, "```\n", "```\n\nA note.\n");
    await replace(editor, "A note.", "- [] A note that has a finding.");
    await until("the finding", () =>
      findingsIn(editor.document.uri).some((one) => codeOf(one) === "meant-as-statement"),
    );
    await arrived();
    assert.equal(await page.evaluate("window.kept.isConnected"), true);
    await replace(editor, "the garlic", "the shallot");
    await until("the new word", async () => (await page.count('g.text[aria-label="the shallot"]')) > 0);
  });

  it("selects the pair of a tile that is clicked", async () => {
    const editor = await preview("click.unit.md", marketUnit);
    const label = await page.attribute("g.text[data-start]", "aria-label");
    await page.click("g.text[data-start]");
    const selected = await until("a selection", () => {
      const active = vscode.window.activeTextEditor;
      return active?.document === editor.document ? active.document.getText(active.selection) : undefined;
    });
    assert.match(selected, /^\S.* = .*\S$/);
    assert.ok(label && selected.includes(label));
  });

  it("can be worked with the keyboard alone", async () => {
    await preview("keys.unit.md", marketUnit);
    const focused = () =>
      page.evaluate("document.activeElement.getAttribute('data-piece') + ':' + document.activeElement.tagName");
    await page.focus('rect.piece[tabindex="0"]');
    const first = await focused();
    await keyboard.press("ArrowRight");
    assert.notEqual(await focused(), first);
    await keyboard.press("Enter");
    await until("a selection", () => !vscode.window.activeTextEditor?.selection.isEmpty);
    assert.equal(await page.count('rect.piece[tabindex="0"]'), 1);
    const unnamed =
      "[...document.querySelectorAll('rect.piece')].filter((piece) => !piece.getAttribute('aria-label')).length";
    assert.equal(await page.evaluate(unnamed), 0);
  });

  it("lights up the tiles of the item at the cursor", async () => {
    const editor = await preview("light.unit.md", marketUnit);
    await focusEditor();
    assert.equal(await page.count(".piece.lit"), 0);
    const used = await page.evaluate(
      "[...document.querySelectorAll('g.text[data-start]')].map((text) => text.getAttribute('aria-label'))",
    );
    assert.ok(Array.isArray(used));
    goTo(editor, String(used.find((text) => String(text).startsWith("the "))));
    await until("both tiles of the pair", async () => (await page.count(".piece.lit")) === 2);
    assert.equal(await page.count(".text.lit"), 2);
    goTo(editor, "```activity");
    await until("no tile", async () => (await page.count(".piece.lit")) === 0);
  });

  it("is made larger and smaller, and fits the width", async () => {
    await preview("zoom.unit.md", marketUnit);
    const percent = async (): Promise<number> => Number.parseInt((await page.text("#size")).join(), 10);
    const wide = "document.querySelector('main').scrollWidth > document.querySelector('main').clientWidth";
    const fitted = await percent();
    assert.equal(await page.evaluate(wide), false);
    await page.click("#larger");
    const larger = await percent();
    assert.ok(larger > fitted);
    await keyboard.press("-");
    await until("smaller", async () => (await percent()) < larger);
    await page.click("#size");
    assert.equal(await percent(), 100);
    assert.equal(await page.evaluate("Math.round(document.querySelector('.paper').offsetWidth)"), 794);
    await keyboard.press("0");
    await until("fitted", async () => (await percent()) === fitted);
  });

  it("keeps its lines as wide as a pixel when it is small, and as wide as on paper when it is large", async () => {
    await preview("lines.unit.md", marketUnit);
    const widths = async (): Promise<{ readonly least: number; readonly true: boolean }> => {
      const found = await page.evaluate(`(() => {
        const lines = [...document.querySelectorAll('.paper line')];
        const width = (line) => parseFloat(getComputedStyle(line).strokeWidth);
        return {
          least: Math.min(...lines.map((line) => width(line) * line.getScreenCTM().a * devicePixelRatio)),
          true: lines.every((line) => Math.abs(width(line) - Number(line.getAttribute('stroke-width'))) < 0.001),
        };
      })()`);
      const { least, true: same } = Object(found);
      return { least: Number(least), true: same === true };
    };
    const fitted = await widths();
    assert.ok(fitted.least > 0.95, String(fitted.least));
    assert.equal(fitted.true, false);
    await page.focus("#smaller");
    while (Number.parseInt((await page.text("#size")).join(), 10) > 10) await page.click("#smaller");
    const { least } = await widths();
    assert.ok(least > 0.95, String(least));
    while (Number.parseInt((await page.text("#size")).join(), 10) < 400) await page.click("#larger");
    assert.equal((await widths()).true, true);
    await keyboard.press("0");
  });

  it("puts small sheets beside one another", async () => {
    const story = ["O dia", "A loja", "O pão", "A conta", "A rua", "A noite"].map(
      (event, i) => `${i + 1}. ${event} vem.\n`,
    );
    const activity = "```activity\nmake: strips\n```\n";
    await preview("beside.unit.md", `---\nclasses: [24, 24]\n---\n\n## Today\n\n${story.join("")}\n${activity}`);
    await chooseView("Papers");
    await until("several sheets", async () => (await page.count("figure")) > 2);
    const tops = async (): Promise<readonly unknown[]> => {
      const found = await page.evaluate(
        "[...document.querySelectorAll('figure')].map((sheet) => Math.round(sheet.getBoundingClientRect().top))",
      );
      return Array.isArray(found) ? found : [];
    };
    const [first, second] = await tops();
    assert.ok(Number(first) < Number(second));
    while (Number.parseInt((await page.text("#size")).join(), 10) > 20) await page.click("#smaller");
    await until("rows of several", async () => new Set(await tops()).size < (await tops()).length);
    await keyboard.press("0");
  });

  it("comes back after a reload as it was left", async () => {
    await preview("reload.unit.md", marketUnit);
    await chooseView("Solved");
    await until(
      "the solution",
      async () => (await page.count('#views button[aria-checked="true"]:text-is("Solved")')) > 0,
    );
    await page.click("#larger");
    const size = (await page.text("#size")).join();
    await page.evaluate("void (window.old = true)");
    await vscode.commands.executeCommand("workbench.action.webview.reloadWebviewAction");
    await until("a new page", async () => (await page.evaluate("window.old !== true")) === true);
    await page.waitFor("rect.piece");
    assert.equal((await page.text("#size")).join(), size);
    assert.equal(await page.attribute('#views button:text-is("Solved")', "aria-checked"), "true");
  });

  it("reaches nothing outside", async () => {
    await preview("shut.unit.md", marketUnit);
    const broken = `new Promise((resolve) => {
      addEventListener('securitypolicyviolation', ({ effectiveDirective }) => resolve(effectiveDirective));
      fetch('https://example.org/').then(() => resolve('reached'), () => {});
    })`;
    assert.equal(await page.evaluate(broken), "connect-src");
    const policy = await page.attribute('meta[http-equiv="Content-Security-Policy"]', "content");
    assert.match(String(policy), /default-src 'none'/);
    assert.doesNotMatch(String(policy), /unsafe/);
  });
});

describe("the sheets of one of several activities", () => {
  const kinds = ["tiles", "loop", "board"];
  const text = kinds
    .map((make) => {
      const pairs = Array.from({ length: 12 }, (_, i) => `- ${make} ${"abcdefghijkl".charAt(i)}o = ${make}-${i}`);
      return `## The ${make}\n\n${pairs.join("\n")}\n\n\`\`\`activity\nmake: ${make}\n\`\`\`\n`;
    })
    .join("\n");
  const shown = (kind: string) =>
    until(`the ${kind}`, async () => (await page.value("#activity")) === `The ${kind} – ${kind}`);
  afterEach(closeAll);

  it("are those of the activity that they were asked for over, else of the one at the cursor", async () => {
    const editor = await openUnit("several.unit.md", text);
    goTo(editor, "loop do");
    await vscode.commands.executeCommand("cutwork.preview");
    await page.waitFor("rect.piece");
    await shown("loop");
    await vscode.commands.executeCommand("cutwork.preview", editor.document.uri, 2);
    await shown("board");
    goTo(editor, "tiles co");
    await vscode.commands.executeCommand("cutwork.preview");
    await shown("tiles");
  });

  it("leave nobody waiting who opens them while the unit is read", async () => {
    const desks = "## The rescue\n\n1. A luz.\n2. O sino.\n3. O barco.\n\n```activity\nmake: strips\ndesks: 4\n```\n\n";
    const several = Array.from({ length: 3 }, (_, i) => (desks + text).replace(/^## /gm, `## ${i} `)).join("\n");
    // Which of two readings ends last is a matter of luck.
    for (const round of [1, 2, 3]) {
      await openUnit(`waiting${round}.unit.md`, several);
      await vscode.commands.executeCommand("cutwork.preview");
      await page.waitFor("rect.piece");
      let idle = 0;
      await until("a status that stays idle", async () => {
        idle = (await workbench.count(".codicon-loading")) === 0 ? idle + 1 : 0;
        return idle === 12;
      });
      await closeAll();
    }
  });
});

describe("the sheets in every theme", () => {
  const themes = vscode.workspace.getConfiguration("workbench");
  after(async () => {
    await themes.update("colorTheme", undefined, vscode.ConfigurationTarget.Global);
    await closeAll();
  });

  for (const [name, theme] of [
    ["light", "Default Light Modern"],
    ["dark", "Default Dark Modern"],
    ["contrast", "Default High Contrast"],
  ]) {
    it(`have white paper: ${theme}`, async () => {
      await themes.update("colorTheme", theme, vscode.ConfigurationTarget.Global);
      const editor = await preview("themes.unit.md", marketUnit);
      goTo(editor, "o alho");
      await until("the light", async () => (await page.count(".piece.lit")) > 0);
      const background = (selector: string) =>
        page.evaluate(`getComputedStyle(document.querySelector('${selector}')).backgroundColor`);
      await until("the theme", async () => {
        const body = await background("body");
        return (body === "rgb(255, 255, 255)") === (name === "light");
      });
      assert.equal(await background(".paper"), "rgb(255, 255, 255)");
      await workbench.shot(`theme-${name}`);
    });
  }
});
