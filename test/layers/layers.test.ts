import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { codeOnly } from "./code-only";
import { type Violation, violationsIn } from "./rules";

const root = fileURLToPath(new URL("../..", import.meta.url));
const longest = 400;

const sources = readdirSync(path.join(root, "src"), { recursive: true, encoding: "utf8" })
  .map((file) => `src/${file.replaceAll("\\", "/")}`)
  .filter((file) => /\.(ts|mjs|css)$/.test(file) && !file.includes("/generated/"))
  .map((file) => ({ file, text: readFileSync(path.join(root, file), "utf8") }));

const typescript = sources.filter(({ file }) => file.endsWith(".ts"));

const told = ({ file, line, what }: Violation) => `${file}:${line} ${what}`;

describe("layers", () => {
  it("hold in every source file", () => {
    const found = typescript.flatMap(({ file, text }) => violationsIn(file, text));
    assert.equal(found.map(told).join("\n"), "");
  });

  it("keep every source file short", () => {
    const long = sources
      .map(({ file, text }) => ({ file, lines: text.trimEnd().split("\n").length }))
      .filter(({ lines }) => lines > longest);
    assert.deepEqual(long, []);
  });

  it("keep nothing at the top but what belongs there", () => {
    const folders = ["reference", "samples", "schemas", "src", "syntaxes", "test"];
    const files = ["DEVELOPERS.md", "LICENSE", "README.md", "package-lock.json", "package.json", "tsconfig.json"];
    const found = keptFiles().map((file) => file.split("/")[0] ?? "");
    const odd = found.filter((name) => !name.startsWith(".") && ![...folders, ...files].includes(name));
    assert.deepEqual([...new Set(odd)], []);
  });

  it("keep addresses of package registries out of every file", () => {
    const files = keptFiles();
    assert.ok(files.length > 0);
    const address =
      /\bhttps?:\/\/(?:registry|npm|deb|security|mirrors?|packages|proxy)\.[\w.-]+|\bregistry\.[a-z]+\.[a-z]+\b/;
    const found = files.flatMap((file) => {
      const text = readOrNothing(path.join(root, file));
      const match = address.exec(text);
      return match === null ? [] : [`${file}: ${match[0]}`];
    });
    assert.deepEqual(found, []);
    const resolved = /"resolved": "http/.test(readOrNothing(path.join(root, "package-lock.json")));
    assert.equal(resolved, false, "package-lock.json records where packages came from");
  });
});

/** What git keeps, or would. */
function keptFiles(): string[] {
  const listing = ["ls-files", "-z", "--cached", "--others", "--exclude-standard"];
  return execFileSync("git", listing, { cwd: root, encoding: "utf8" }).split("\0").filter(Boolean);
}

// A file may be deleted and not yet committed so.
function readOrNothing(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return "";
  }
}

describe("the layer rules", () => {
  const finds = (file: string, text: string) => violationsIn(file, text).map(({ line, what }) => `${line} ${what}`);

  const planted: readonly (readonly [name: string, file: string, text: string, finding: RegExp])[] = [
    ["a lower layer", "src/unit/a.ts", 'import { x } from "../page/sheet";', /^1 imports .*unit stands above page/],
    ["a type of a lower layer", "src/text/a.ts", 'import type { X } from "../make/x";', /^1 .*text stands above make/],
    ["a re-export", "src/base/a.ts", '\nexport * from "../unit/unit";', /^2 .*base stands above unit/],
    ["a late import", "src/prove/a.ts", 'const m = await import("../check/finding");', /^1 .*prove stands above check/],
    ["an import over lines", "src/match/a.ts", 'import {\n  a,\n  b,\n} from "../render/pdf";', /^4 .*match stands/],
    ["deep folders", "src/activities/tiles/a.ts", 'import "../../make/make";', /^1 .*activities stands above make/],
    ["the editor in a pure layer", "src/make/a.ts", 'import "../editor/units";', /^1 .*make may not use editor/],
    ["the editor in the command line", "src/cli/a.ts", 'import "../editor/units";', /^1 .*cli may not use editor/],
    [
      "the webview in the command line",
      "src/cli/a.ts",
      'import "../webview/protocol";',
      /^1 .*cli may not use webview/,
    ],
    ["the webview in the editor", "src/editor/a.ts", 'import "../webview/main";', /^1 .*editor may not use webview/],
    ["build scripts", "src/editor/a.ts", 'import "../build/bundle";', /^1 .*editor may not use build/],
    ["tests", "src/editor/a.ts", 'import "../../test/support/x";', /^1 .*outside src/],
    ["vscode", "src/check/a.ts", 'import * as vscode from "vscode";', /^1 imports vscode/],
    ["a Node module", "src/render/a.ts", 'import { readFile } from "node:fs/promises";', /^1 imports node:fs/],
    ["a Node module by its bare name", "src/render/a.ts", 'import fs from "fs";', /^1 imports fs/],
    ["a package that is not for all", "src/text/a.ts", 'import Ajv from "ajv/dist/2020";', /^1 imports ajv/],
    ["the page", "src/render/a.ts", 'const p = document.createElement("p");', /^1 document/],
    ["a DOM type", "src/render/a.ts", "function f(e: HTMLElement) {}", /^1 HTMLElement/],
    ["the window", "src/page/a.ts", "const w = window.innerWidth;", /^1 window/],
    ["the clock", "src/make/a.ts", "const t = new Date();", /^1 Date/],
    ["another clock", "src/make/a.ts", "\n\nconst t = performance.now();", /^3 performance/],
    ["a timer", "src/make/a.ts", "setTimeout(() => {}, 3);", /^1 setTimeout/],
    ["chance", "src/activities/a.ts", "const r = Math.random();", /^1 Math\.random/],
    ["chance, hidden", "src/activities/a.ts", 'const r = Math["random"]();', /^1 Math/],
    ["the process", "src/base/a.ts", "if (process.env) x();", /^1 process/],
    ["a Buffer", "src/render/a.ts", 'Buffer.from("x");', /^1 Buffer/],
    ["the network", "src/text/a.ts", "await fetch(url);", /^1 fetch/],
    ["globals by the back door", "src/text/a.ts", "globalThis.x", /^1 globalThis/],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the text of a program
    ["code in a template", "src/text/a.ts", "const t = `a ${`b ${Date.now()}`} c`;", /^1 Date/],
    ["code after a regular expression", "src/text/a.ts", 'x = /[/"]/.test(a) ? Date.now() : 0;', /^1 Date/],
    ["a choice", "src/text/a.ts", "x = a ? process : b;", /^1 process/],
  ];
  for (const [name, file, text, finding] of planted)
    it(`find ${name}`, () => {
      const found = finds(file, text);
      assert.equal(found.length, 1, found.join("; "));
      assert.match(found[0] ?? "", finding);
    });

  const allowed: readonly (readonly [name: string, file: string, text: string])[] = [
    ["an upper layer", "src/make/a.ts", 'import { read } from "../unit/read";'],
    ["the same layer", "src/activities/tiles/a.ts", 'import { plan } from "../plan";'],
    ["a schema", "src/check/a.ts", 'import schema from "../../schemas/tiles.schema.json";'],
    ["packages that run everywhere", "src/render/a.ts", 'import { PDFDocument } from "pdf-lib";'],
    ["Node in the command line", "src/cli/a.ts", 'import fs from "node:fs"; process.exit(Date.now());'],
    ["vscode in the editor", "src/editor/a.ts", 'import * as vscode from "vscode";'],
    ["the messages between editor and webview", "src/editor/a.ts", 'import type { M } from "../webview/protocol";'],
    [
      "the world's own objects",
      "src/text/a.ts",
      "new URL(a); Intl.Collator; Math.max(1); new TextEncoder(); WebAssembly;",
    ],
    ["words in comments", "src/text/a.ts", "// document, Date\n/* setTimeout\n process */ const a = 1;"],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the text of a program
    ["words in strings", "src/text/a.ts", "const a = \"new Date()\" + 'window' + `Math.random() ${1} process`;"],
    ["words in regular expressions", "src/text/a.ts", "const a = /window|'process/g; const b = 4 / 2;"],
    [
      "properties of that name",
      "src/text/a.ts",
      "interface A { readonly event: string; window?: number }\na.process(a.Date);",
    ],
    ["a name of one's own", "src/render/a.ts", "const document = await PDFDocument.create();\ndocument.save();"],
    ["a parameter of one's own", "src/render/a.ts", "export function f(document: PDFDocument) { document.save(); }"],
    ["longer words", "src/text/a.ts", "const windowSize = updateDate(processed);"],
  ];
  for (const [name, file, text] of allowed)
    it(`allow ${name}`, () => {
      assert.deepEqual(finds(file, text), []);
    });

  it("keep every place when they blank what is not code", () => {
    for (const { text, file } of typescript) {
      const code = codeOnly(text);
      assert.equal(code.length, text.length, file);
      const breaks = (of: string): number[] => [...of.matchAll(/\n/g)].map(({ index }) => index);
      assert.deepEqual(breaks(code), breaks(text), file);
    }
  });
});
