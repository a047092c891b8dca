import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import Ajv from "ajv";
import { allRules } from "../../src/check/rules";
import { unitOf } from "../support/units";
import { Desk } from "./desk";

/* `check --format sarif`, held against the schema of the OASIS Standard and against what JSON says of the same units. */

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}

interface Place {
  readonly physicalLocation: {
    readonly artifactLocation: { readonly uri: string; readonly index: number };
    readonly region: Region;
  };
  readonly message?: { readonly text: string };
}

interface Run {
  readonly tool: {
    readonly driver: {
      readonly name: string;
      readonly version: string;
      readonly rules: readonly { readonly id: string; readonly defaultConfiguration: { readonly level: string } }[];
    };
  };
  readonly columnKind: string;
  readonly invocations: readonly {
    readonly executionSuccessful: boolean;
    readonly toolExecutionNotifications: readonly { readonly level: string; readonly message: { text: string } }[];
  }[];
  readonly artifacts: readonly { readonly location: { readonly uri: string } }[];
  readonly results: readonly {
    readonly ruleId: string;
    readonly ruleIndex: number;
    readonly level: string;
    readonly message: { readonly text: string };
    readonly locations: readonly Place[];
    readonly relatedLocations?: readonly Place[];
    readonly fixes?: readonly {
      readonly description: { readonly text: string };
      readonly artifactChanges: readonly {
        readonly artifactLocation: { readonly uri: string };
        readonly replacements: readonly {
          readonly deletedRegion: Region;
          readonly insertedContent?: { readonly text: string };
        }[];
      }[];
    }[];
  }[];
}

interface Log {
  readonly version: string;
  readonly runs: readonly Run[];
}

interface LspRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

interface JsonFinding {
  readonly code: string;
  readonly severity: "error" | "warning" | "information" | "hint";
  readonly range: LspRange;
  readonly message: string;
  readonly related: readonly { readonly range: LspRange; readonly message: string }[];
  readonly fixes: readonly {
    readonly title: string;
    readonly edits: readonly { readonly range: LspRange; readonly newText: string }[];
  }[];
}

const schema: object = JSON.parse(readFileSync(path.join(__dirname, "oasis/sarif-schema-2.1.0.json.txt"), "utf8"));

/** Only what is needed of RFC 3986: nothing that would have to be encoded. */
const reference = /^(?:[A-Za-z0-9\-._~:/?#[\]@!$&'()*+,;=]|%[0-9A-Fa-f]{2})*$/;

const ajv = new Ajv({ allErrors: true, strict: false })
  .addFormat("uri", (text: string) => reference.test(text) && URL.canParse(text))
  .addFormat("uri-reference", reference)
  .addFormat("date-time", /^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/);
const validate = ajv.compile(schema);
const isLog = (log: unknown): boolean => validate(log);

const levels = { error: "error", warning: "warning", information: "note", hint: "note" };

describe("SARIF", function () {
  this.timeout(60_000);
  let desk: Desk;
  beforeEach(() => {
    desk = new Desk();
  });
  afterEach(() => desk.clear());

  function sarif(files: readonly string[], code: number, input = ""): Run {
    const { code: found, out } = desk.cutwork(["check", ...files, "--format", "sarif"], input);
    assert.equal(found, code);
    const log: Log = JSON.parse(out);
    assert.ok(isLog(log), JSON.stringify(validate.errors, null, 2));
    assert.equal(log.version, "2.1.0");
    assert.equal(log.runs.length, 1);
    const [run] = log.runs;
    assert.ok(run);
    return run;
  }

  function json(files: readonly string[], input = ""): JsonFinding[] {
    const units: { findings: JsonFinding[] }[] = JSON.parse(
      desk.cutwork(["check", ...files, "--format", "json"], input).out,
    );
    return units.flatMap(({ findings }) => findings);
  }

  it("is refused by the schema where it is wrong, so that passing it means something", () => {
    desk.write("a.unit.md", unitOf(4, "gird: 3 x 3"));
    const { out } = desk.cutwork(["check", "a.unit.md", "--format", "sarif"]);
    for (const [from, to] of [
      ['"startLine": 10', '"startLine": 0'],
      ['"level": "error"', '"level": "information"'],
      ['"uri": "a.unit.md"', '"uri": "a unit.md"'],
      ['"columnKind"', '"columns"'],
    ] as const) {
      assert.ok(out.includes(from), from);
      assert.ok(!isLog(JSON.parse(out.replace(from, to))), `${from} became ${to}`);
    }
  });

  it("tells of every rule, and of nothing wrong in a clean unit", () => {
    const run = sarif([desk.write("good.unit.md", unitOf(12, ""))], 0);
    assert.equal(run.tool.driver.name, "cutwork");
    assert.deepEqual(
      run.tool.driver.rules.map(({ id, defaultConfiguration: { level } }) => [id, level]),
      allRules.map(({ code, severity }) => [code, levels[severity]]),
    );
    assert.equal(run.columnKind, "utf16CodeUnits");
    assert.deepEqual(run.results, []);
    assert.equal(run.invocations[0]?.executionSuccessful, true);
  });

  it("says of each finding what JSON says, counted from 1 in UTF-16 units", () => {
    const text = `${unitOf(5, "gird: 3 x 3\nseed: x").replaceAll("\n", "\r\n")}\r\n## Too\r\n\r\n- 🙂 = bo\r\n- 🙂🙂 = bo\r\n\r\n\`\`\`activity\r\nmake: tiles\r\n\`\`\`\r\n`;
    desk.write("a.unit.md", text);
    const run = sarif(["a.unit.md"], 1);
    const findings = json(["a.unit.md"]);
    assert.ok(findings.some(({ related }) => related.length > 0));
    assert.ok(findings.some(({ fixes }) => fixes.length > 0));
    assert.deepEqual(
      run.results.map(({ ruleId, level, message, locations, relatedLocations = [], fixes = [] }) => ({
        code: ruleId,
        level,
        message: message.text,
        at: locations.map(({ physicalLocation: { region } }) => lsp(region)),
        related: relatedLocations.map((place) => [lsp(place.physicalLocation.region), place.message?.text]),
        fixes: fixes.map(({ description, artifactChanges }) => [
          description.text,
          ...artifactChanges.flatMap(({ artifactLocation, replacements }) =>
            replacements.map(({ deletedRegion, insertedContent }) => [
              artifactLocation.uri,
              lsp(deletedRegion),
              insertedContent?.text ?? "",
            ]),
          ),
        ]),
      })),
      findings.map(({ code, severity, message, range, related, fixes }) => ({
        code,
        level: levels[severity],
        message,
        at: [range],
        related: related.map((place) => [place.range, place.message]),
        fixes: fixes.map(({ title, edits }) => [
          title,
          ...edits.map((edit) => ["a.unit.md", edit.range, edit.newText]),
        ]),
      })),
    );
    for (const { ruleId, ruleIndex } of run.results) assert.equal(run.tool.driver.rules[ruleIndex]?.id, ruleId);
  });

  it("names files by addresses that a program can open", () => {
    const inside = desk.write("week 1/café #2 100%.unit.md", unitOf(4, "gird: 3 x 3"));
    const outside = path.join(desk.folder, "..", path.basename(desk.folder), "..", "nowhere.unit.md");
    const run = sarif([inside, "./week 1/../week 1/café #2 100%.unit.md", "-", outside], 2, unitOf(4, "seed: x"));
    const uri = "week%201/caf%C3%A9%20%232%20100%25.unit.md";
    assert.deepEqual(
      run.artifacts.map(({ location }) => location.uri),
      [uri, "-", pathToFileURL(path.resolve(outside)).href],
    );
    assert.deepEqual(
      run.results.map(({ locations }) => locations[0]?.physicalLocation.artifactLocation),
      [
        { uri, index: 0 },
        { uri: "-", index: 1 },
      ],
    );
  });

  it("holds the findings of the others where a file cannot be read, and says so", () => {
    const run = sarif(["gone.unit.md", desk.write("a.unit.md", unitOf(4, "gird: 3 x 3"))], 2);
    const [invocation] = run.invocations;
    assert.equal(invocation?.executionSuccessful, false);
    assert.deepEqual(
      invocation?.toolExecutionNotifications.map(({ level, message }) => [level, message.text]),
      [["error", "gone.unit.md cannot be read: it is not there."]],
    );
    assert.deepEqual(
      run.results.map(({ ruleId }) => ruleId),
      ["wrong-option"],
    );
  });

  it("places what is wrong in settings in their own file", () => {
    desk.write("cutwork.yml", "paper: A4\nmargins: 5\n");
    const run = sarif([desk.write("a.unit.md", unitOf(4, ""))], 1);
    assert.deepEqual(
      run.results.map(({ ruleId, locations }) => [ruleId, locations[0]?.physicalLocation]),
      [
        [
          "wrong-option",
          {
            artifactLocation: { uri: "cutwork.yml", index: 1 },
            region: { startLine: 2, startColumn: 1, endLine: 2, endColumn: 8 },
          },
        ],
      ],
    );
  });

  it("is the same log each time", () => {
    desk.write("a.unit.md", unitOf(4, "gird: 3 x 3"));
    const once = desk.cutwork(["check", "a.unit.md", "--format", "sarif"]).out;
    assert.equal(desk.cutwork(["check", "a.unit.md", "--format", "sarif"]).out, once);
    assert.ok(!once.includes(desk.folder), "a path of this machine is in it");
  });
});

function lsp({ startLine, startColumn, endLine, endColumn }: Region): LspRange {
  return {
    start: { line: startLine - 1, character: startColumn - 1 },
    end: { line: endLine - 1, character: endColumn - 1 },
  };
}
