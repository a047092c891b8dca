import activitySchema from "../../schemas/activity.schema.json";
import frontSchema from "../../schemas/front-matter.schema.json";
import stationsSchema from "../../schemas/stations.schema.json";
import { kinds } from "../activities/kinds";
import type { Verdict } from "../activities/verdict";
import { allRules, type RuleFacts } from "./rules";
import { verdicts } from "./verdicts";

/** The reference as files: a page a finding, one of options, one of verdicts, and an index. Made from lists in the code alone. */
export function referencePages(): ReadonlyMap<string, string> {
  const pages = new Map<string, string>();
  for (const rule of allRules) pages.set(`${rule.code}.md`, findingPage(rule));
  pages.set("options.md", optionsPage());
  pages.set("verdicts.md", verdictsPage());
  pages.set("README.md", indexPage());
  return pages;
}

function findingPage({ code, severity, title, why, example }: RuleFacts): string {
  return `# ${title}

\`${code}\`, by default ${severity === "information" ? "an information" : severity === "error" ? "an error" : `a ${severity}`}.

${why}

Gives the finding:

${fenced(example.wrong)}

Put right:

${fenced(example.right)}
`;
}

/** A unit's text in a fence that none inside it can close; a plain sentence stays one. */
function fenced(text: string): string {
  if (!/[\n=`#]/.test(text)) return text;
  const longest = Math.max(2, ...[...text.matchAll(/`+/g)].map(([ticks]) => ticks.length));
  const ticks = "`".repeat(longest + 1);
  return `${ticks}markdown\n${text}\n${ticks}`;
}

function verdictsPage(): string {
  const parts = [
    "# What the prover says",
    "Each deal is looked at by an exact prover before it is printed. This page tells every verdict with a unit that gives it. Where a verdict is not proven, nothing is claimed. The line of an activity that `cutwork check` prints says “one solution”, “several solutions”, “no solution” or “not settled”; where several ways are right and the key tells them all, it says how many: “6 right ways”.",
    ...kinds.flatMap(({ name }) => [
      `## \`make: ${name}\``,
      ...verdicts.filter(({ make }) => make === name).flatMap(verdictPart),
    ]),
  ];
  return `${parts.join("\n\n")}\n`;
}

function verdictPart({ title, why, example, unit, codes }: Verdict): string[] {
  const links = codes.map((code) => `[\`${code}\`](${code}.md)`).join(", ");
  return [`### ${title}`, why, unit ? fenced(example) : example, ...(links === "" ? [] : [`Finding: ${links}.`])];
}

function optionsPage(): string {
  const parts = [
    "# Options",
    "Made from the files in `schemas`, which also check, complete and explain the options while a unit is written.",
    "## Front matter of a unit",
    table(frontSchema.properties),
    "## Every activity",
    table(activitySchema.properties),
    ...kinds.flatMap(({ name, schema }) => [`## \`make: ${name}\``, table(schema.properties)]),
    "## A plan of stations",
    table(stationsSchema.properties),
  ];
  return `${parts.join("\n\n")}\n`;
}

function table(properties: Readonly<Record<string, unknown>>): string {
  const rows = Object.entries(properties)
    .map(([name, property]) => ({ name, facts: follow(property) }))
    .filter(({ facts }) => facts["description"] !== undefined)
    .map(
      ({ name, facts }) =>
        `| \`${name}\` | ${String(facts["description"]).replace(/\|/g, "\\|")} | ${values(facts)} | ${standard(facts)} |`,
    );
  return ["| option | what it does | values | without it |", "| --- | --- | --- | --- |", ...rows].join("\n");
}

/** A property, or the one that it refers to. */
function follow(property: unknown): Readonly<Record<string, unknown>> {
  if (typeof property !== "object" || property === null) return {};
  const facts: Readonly<Record<string, unknown>> = { ...property };
  const name = typeof facts["$ref"] === "string" ? facts["$ref"].split("/").at(-1) : undefined;
  const target =
    name === undefined ? undefined : Object.entries(activitySchema.properties).find(([key]) => key === name)?.[1];
  return target ? { ...target } : facts;
}

function values(facts: Readonly<Record<string, unknown>>): string {
  const inner = Array.isArray(facts["enum"]) ? facts : follow(facts["items"]);
  const choices = inner["enum"];
  if (Array.isArray(choices)) return choices.map((choice) => `\`${String(choice)}\``).join(", ");
  const { minimum, maximum, examples } = facts;
  if (minimum !== undefined && maximum !== undefined) return `${String(minimum)} to ${String(maximum)}`;
  return Array.isArray(examples) ? examples.map((example) => `\`${shown(example)}\``).join(", ") : "";
}

function shown(value: unknown): string {
  if (Array.isArray(value)) return `[${value.join(", ")}]`;
  if (typeof value !== "object" || value === null) return String(value);
  return `{ ${Object.entries(value)
    .map(([key, inner]) => `${key}: ${String(inner)}`)
    .join(", ")} }`;
}

function standard(facts: Readonly<Record<string, unknown>>): string {
  return facts["default"] === undefined ? "" : `\`${shown(facts["default"])}\``;
}

function indexPage(): string {
  const rows = allRules.map(({ code, severity, title }) => `| [\`${code}\`](${code}.md) | ${severity} | ${title} |`);
  return `# Reference

Made from the rules and schemas by \`npm run generate\`. [All options](options.md); [what the prover says](verdicts.md).

| finding | by default | what it says |
| --- | --- | --- |
${rows.join("\n")}
`;
}
