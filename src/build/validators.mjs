import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { inProject, main } from "./project.mjs";

/*
 * schemas/NAME.schema.json -> src/base/generated/validators.js, an ES module with one function `validateName` a schema.
 * The code is written out ahead of time, so that it runs where making code from text is forbidden (webview, web worker).
 */

const suffix = ".schema.json";

/** Keywords for editors and readers; they constrain nothing. */
const annotations = [
  "markdownDescription",
  "markdownEnumDescriptions",
  "enumDescriptions",
  "defaultSnippets",
  "deprecationMessage",
];

/** The `x-…` keywords in a schema: annotations of this project. */
const ownKeywords = (value) =>
  typeof value !== "object" || value === null
    ? []
    : Object.entries(value).flatMap(([key, inner]) => [...(key.startsWith("x-") ? [key] : []), ...ownKeywords(inner)]);

/** `front-matter.schema.json` -> `validateFrontMatter` */
export const exportName = (file) =>
  `validate${path
    .basename(file, suffix)
    .split(/[^\p{L}\p{N}]+/u)
    .map((word) => word.slice(0, 1).toUpperCase() + word.slice(1))
    .join("")}`;

/**
 * Writes `validators.js` and `validators.d.ts` for every schema in a folder. Resolves to the names of the functions.
 */
export async function generateValidators({ from = inProject("schemas"), to = inProject("src/base/generated") } = {}) {
  const { default: Ajv2020 } = await import("ajv/dist/2020.js");
  const { default: standaloneCode } = await import("ajv/dist/standalone/index.js");
  const { build } = await import("esbuild");

  const ajv = new Ajv2020({
    allErrors: true,
    strict: true,
    strictRequired: false, // with a discriminator, `required` and `properties` stand at different levels
    allowUnionTypes: true,
    discriminator: true,
    code: { source: true, esm: true, lines: true },
  });

  const files = (await readdir(from).catch(() => [])).filter((file) => file.endsWith(suffix)).sort();
  const schemas = new Map();
  for (const file of files) schemas.set(file, JSON.parse(await readFile(path.join(from, file), "utf8")));
  ajv.addVocabulary([...new Set([...annotations, ...[...schemas.values()].flatMap(ownKeywords)])]);

  const exports = {};
  for (const [file, schema] of schemas) {
    ajv.addSchema(schema, schema.$id === undefined ? file : undefined);
    exports[exportName(file)] = schema.$id ?? file;
  }
  const names = Object.keys(exports);
  const source = names.length === 0 ? "export {};\n" : standaloneCode(ajv, exports);

  // The written code asks for ajv's few run-time helpers with `require`: they are folded in.
  const bundled = await build({
    stdin: { contents: source, resolveDir: inProject("."), loader: "js" },
    bundle: true,
    write: false,
    format: "esm",
    platform: "neutral",
    target: "es2022",
    logLevel: "warning",
  });
  const code = bundled.outputFiles[0].text;
  if (/\bnew Function\b|\beval\(/.test(code)) throw new Error("the validators would make code from text at run time");

  await mkdir(to, { recursive: true });
  await writeIfChanged(path.join(to, "validators.js"), code);
  await writeIfChanged(path.join(to, "validators.d.ts"), declarations(names));
  return names;
}

const declarations = (names) => `/** One violation of a schema. */
export interface SchemaError {
  /** The schema keyword that was not met, such as \`required\`. */
  readonly keyword: string;
  /** JSON Pointer to the value. */
  readonly instancePath: string;
  readonly schemaPath: string;
  /** What the keyword says about it, such as \`missingProperty\`. */
  readonly params: Readonly<Record<string, unknown>>;
  readonly propertyName?: string;
  readonly message?: string;
}

/** Whether a value fits the schema. After \`false\`, \`errors\` holds every violation, until the next call. */
export interface Validator {
  (data: unknown): boolean;
  errors?: readonly SchemaError[] | null;
}

${names.map((name) => `export declare const ${name}: Validator;\n`).join("")}`;

// An unchanged file keeps its time, so that watchers stay asleep.
async function writeIfChanged(file, text) {
  if ((await readFile(file, "utf8").catch(() => undefined)) !== text) await writeFile(file, text);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  await main(async () => {
    const names = await generateValidators();
    console.log(names.length > 0 ? `validators: ${names.join(", ")}` : "validators: no schema yet");
  });
