import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { loadWASM, OnigScanner, OnigString } from "vscode-oniguruma";
import { type IGrammar, INITIAL, parseRawGrammar, Registry } from "vscode-textmate";

/*
 * The grammar as VS Code runs it: the same engine, and Markdown's and YAML's own grammars from the VS Code that the other tests
 * use.
 */

const { resolve } = createRequire(path.join(process.cwd(), "package.json"));

/** Where VS Code's extensions lie, once its tests have brought it; undefined before. */
function extensionsFolder(): string | undefined {
  const top = path.join(process.cwd(), ".vscode-test");
  const inside = ["extensions", "resources/app/extensions"];
  const hosts = existsSync(top) ? readdirSync(top) : [];
  return hosts
    .flatMap((host) => inside.map((folder) => path.join(top, host, folder)))
    .find((folder) => existsSync(path.join(folder, "markdown-basics")));
}

/** Undefined where VS Code has not been brought yet. */
export async function openGrammar(): Promise<IGrammar | undefined> {
  const extensions = extensionsFolder();
  if (extensions === undefined) return undefined;
  const files: Readonly<Record<string, string>> = {
    "text.html.markdown.cutwork": path.join(process.cwd(), "syntaxes/cutwork.tmLanguage.json"),
    "text.html.markdown": path.join(extensions, "markdown-basics/syntaxes/markdown.tmLanguage.json"),
    "text.html.derivative": path.join(extensions, "html/syntaxes/html-derivative.tmLanguage.json"),
    "text.html.basic": path.join(extensions, "html/syntaxes/html.tmLanguage.json"),
    "source.yaml": path.join(extensions, "yaml/syntaxes/yaml.tmLanguage.json"),
    ...Object.fromEntries(
      ["1.0", "1.1", "1.2", "1.3", "embedded"].map((version) => [
        version === "embedded" ? "source.yaml.embedded" : `source.yaml.${version}`,
        path.join(extensions, `yaml/syntaxes/yaml-${version}.tmLanguage.json`),
      ]),
    ),
  };
  const wasm = readFileSync(resolve("vscode-oniguruma/release/onig.wasm"));
  await loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength));
  const registry = new Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (sources) => new OnigScanner(sources),
      createOnigString: (text) => new OnigString(text),
    }),
    loadGrammar: async (scope) => {
      const file = files[scope];
      return file === undefined ? null : parseRawGrammar(readFileSync(file, "utf8"), file);
    },
  });
  return (await registry.loadGrammar("text.html.markdown.cutwork")) ?? undefined;
}

/** A text with its scopes: under each line what each stretch of it is, the outermost scopes left out. */
export function scopesOf(grammar: IGrammar, text: string): string {
  let stack = INITIAL;
  return text
    .split("\n")
    .flatMap((line) => {
      const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
      stack = ruleStack;
      const marks = tokens.flatMap(({ startIndex, endIndex, scopes }) => {
        const shown = scopes.filter(
          (scope) => scope !== "text.html.markdown.cutwork" && !/^meta\.(paragraph|item)/.test(scope),
        );
        const end = Math.min(endIndex, line.length);
        if (shown.length === 0 || end <= startIndex) return [];
        return [`${" ".repeat(startIndex + 2)}${"^".repeat(end - startIndex)} ${shown.join(" ")}`];
      });
      return [`> ${line}`, ...marks];
    })
    .join("\n");
}
