import path from "node:path";
import { codeOnly } from "./code-only";

/** Something in a source file that its layer forbids. */
export interface Violation {
  /** Path from the top of the checkout, with slashes. */
  readonly file: string;
  /** From 1. */
  readonly line: number;
  readonly what: string;
}

/** The pure layers. Each may import from those before it. */
export const pureLayers = [
  "base",
  "unit",
  "match",
  "prove",
  "text",
  "page",
  "activities",
  "check",
  "render",
  "make",
] as const;

/** What stands on the pure layers; these never import each other. */
const outerLayers = ["editor", "webview", "cli"];

/** The one word between editor and webview: the shape of the messages that they send each other. */
const sharedModules = new Map([["src/webview/protocol", ["editor"]]]);

/** Packages that run everywhere. */
const purePackages = new Set(["bidi-js", "harfbuzzjs", "markdown-it", "pdf-lib", "yaml"]);

/** Globals that a pure layer must do without, whatever they are used for. */
const forbidden = words(`
  Date performance setTimeout setInterval setImmediate clearTimeout clearInterval queueMicrotask requestAnimationFrame
  process Buffer require __dirname __filename global globalThis console crypto
  fetch XMLHttpRequest WebSocket EventSource importScripts postMessage
  navigator localStorage sessionStorage indexedDB DOMParser XMLSerializer MutationObserver getComputedStyle
  HTMLElement SVGElement FontFace OffscreenCanvas CanvasRenderingContext2D HTMLCanvasElement
  SharedArrayBuffer eval Function`);

/** Globals whose names also make good names for one's own: forbidden unless the file declares them. */
const forbiddenUnlessOwn = words("document window self location history parent top event Element Node Image Worker");

function words(text: string): readonly string[] {
  return text.trim().split(/\s+/);
}

interface Import {
  readonly specifier: string;
  readonly at: number;
}

/** Everything that the layers forbid in one file under src. `file` is its path from the top of the checkout. */
export function violationsIn(file: string, source: string): readonly Violation[] {
  const layer = file.split("/")[1] ?? "";
  const code = codeOnly(source);
  const found: Violation[] = [];
  const report = (at: number, what: string) => {
    found.push({ file, line: source.slice(0, at).split("\n").length, what });
  };

  for (const { specifier, at } of importsIn(source, code)) {
    const objection = objectionTo(file, layer, specifier);
    if (objection !== undefined) report(at, objection);
  }
  if (isPure(layer)) for (const { name, at } of globalsIn(code)) report(at, `${name} is not for a pure layer`);
  return found.sort((a, b) => a.line - b.line);
}

const isPure = (layer: string): boolean => pureLayers.some((name) => name === layer);

/** Strings after `from`, `import`, `import(`, `require(`. */
function importsIn(source: string, code: string): readonly Import[] {
  return [...code.matchAll(/(?<![\w$.])(?:from|import|require)\s*\(?\s*(["'`])( *)\1/g)].map((match) => {
    const end = match.index + match[0].length - 1;
    const length = match[2]?.length ?? 0;
    return { specifier: source.slice(end - length, end), at: match.index };
  });
}

function objectionTo(file: string, layer: string, specifier: string): string | undefined {
  if (!specifier.startsWith(".")) {
    if (!isPure(layer)) return undefined;
    const name = specifier.startsWith("@") ? specifier.split("/").slice(0, 2).join("/") : specifier.split("/")[0];
    return purePackages.has(name ?? "") ? undefined : `imports ${specifier}: no package for a pure layer`;
  }
  const target = path.posix.join(path.posix.dirname(file), specifier);
  if (!target.startsWith("src/"))
    return target.endsWith(".json") ? undefined : `imports ${specifier}: code from outside src`;
  if (sharedModules.get(target)?.includes(layer)) return undefined;
  const other = target.split("/")[1] ?? "";
  if (other === layer) return undefined;
  const order: readonly string[] = pureLayers;
  if (!order.includes(other)) return `imports ${specifier}: ${layer} may not use ${other}`;
  if (outerLayers.includes(layer)) return undefined;
  if (!order.includes(layer)) return `is in no layer: ${layer}`;
  return order.indexOf(other) < order.indexOf(layer)
    ? undefined
    : `imports ${specifier}: ${layer} stands above ${other}`;
}

function globalsIn(code: string): readonly { readonly name: string; readonly at: number }[] {
  const found: { name: string; at: number }[] = [];
  const own = new Set(forbiddenUnlessOwn.filter((name) => isDeclared(code, name)));
  for (const name of [...forbidden, ...forbiddenUnlessOwn])
    if (!own.has(name))
      for (const match of code.matchAll(new RegExp(`(?<![\\w$.]|\\?\\.)${name}(?![\\w$])`, "g")))
        if (!isKey(code, match.index, name)) found.push({ name, at: match.index });
  for (const match of code.matchAll(/(?<![\w$.])Math\s*(?:\?\.|\.|\[)\s*random\b/g))
    found.push({ name: "Math.random", at: match.index });
  // By its string key the word itself is blanked: no computed access at all.
  for (const match of code.matchAll(/(?<![\w$.])Math\s*\[/g)) found.push({ name: "Math[…]", at: match.index });
  return found;
}

/** `{ name: … }` or `name?: …` in a type is a property's name, not a use. `a ? name : b` is a use. */
function isKey(code: string, at: number, name: string): boolean {
  const before = code.slice(0, at).trimEnd();
  return /^\??\s*:/.test(code.slice(at + name.length)) && /(?:[{,;(]|\breadonly)$/.test(before);
}

function isDeclared(code: string, name: string): boolean {
  const patterns = [
    `\\b(?:const|let|var|function|class|type|interface|enum)\\s+${name}\\b`, // a declaration
    `\\b(?:const|let|var)\\s*[{[][^=]*[{[,:\\s]${name}\\s*[,}\\]=]`, // taken apart
    `[(,]\\s*${name}\\s*\\??\\s*:[^:]`, // a parameter with its type
    `[(,]\\s*${name}\\s*(?:,[^()]*)?\\)\\s*=>`, // a parameter of an arrow function
    `(?<![\\w$.])${name}\\s*=>`, // the only one
    `\\bimport\\s+(?:type\\s+)?\\{[^}]*\\b${name}\\b[^}]*\\}`, // imported
  ];
  return patterns.some((pattern) => new RegExp(pattern).test(code));
}
