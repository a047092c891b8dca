import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";
import { applyEdits } from "../support/units";

/*
 * Front matter that does not begin or end as it must: one problem, whose fix makes it what was meant, and read as meant before.
 */

const body = "\n## Roda\n\n- roda = wheel\n\n```activity\nmake: loop\n```\n";

const meant: readonly (readonly [text: string, wanted: string])[] = [
  [`\n---\ntitle: Volta\n---\n${body}`, `---\ntitle: Volta\n---\n${body}`],
  [`\n \n---\ntitle: Volta\n\nteaches: pt\n---\n${body}`, `---\ntitle: Volta\n\nteaches: pt\n---\n${body}`],
  [`---\ntitle: Volta\n----\n${body}`, `---\ntitle: Volta\n---\n${body}`],
  [`---\ntitle: Volta\n--\n${body}\n---\n`, `---\ntitle: Volta\n---\n${body}\n---\n`],
  [`---\ntitle: Volta\n${body}`, `---\ntitle: Volta\n---\n${body}`],
  [`---\ntitle: Volta\n${body}\n---\n`, `---\ntitle: Volta\n---\n${body}\n---\n`],
  ...["+++", "—", "–––", "--", ";;;", "- - -", "==="].map((mark): readonly [string, string] => [
    `${mark}\ntitle: Volta\nteaches: pt\n${mark}\n${body}`,
    `---\ntitle: Volta\nteaches: pt\n---\n${body}`,
  ]),
  [
    `{\n  "title": "Volta",\n  "teaches": "pt"\n}\n${body}`,
    `---\n{\n  "title": "Volta",\n  "teaches": "pt"\n}\n---\n${body}`,
  ],
  [`title: Volta\n---\n${body}`, `---\ntitle: Volta\n---\n${body}`],
  [`\ntitle: Volta\nteaches: pt\n-----\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`title: Volta\nteaches: pt\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`title: Volta\nclasses:\n  - 24\n  - 27\n${body}`, `---\ntitle: Volta\nclasses:\n  - 24\n  - 27\n---\n${body}`],
  [`\uFEFFtitle: Volta\nteaches: pt\n${body}`, `\uFEFF---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`***\ntitle: Volta\nteaches: pt\n***\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`—\ntitle: Volta\nteaches: pt\n—\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`--\ntitle: Volta\nteaches: pt\n--\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`+++\ntitle: Volta\nteaches: pt\n+++\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`;;;\ntitle: Volta\nteaches: pt\n;;;\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
  [`# Oficina\n\ntitle: Volta\nteaches: pt\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n\n# Oficina\n\n${body}`],
  [`# Oficina\n\n---\ntitle: Volta\n---\n${body}`, `---\ntitle: Volta\n---\n\n# Oficina\n\n${body}`],
  [`<!-- a\nb -->\n---\ntitle: Volta\n---\n${body}`, `---\ntitle: Volta\n---\n\n<!-- a\nb -->\n${body}`],
  [`\uFEFF# Oficina\n---\ntitle: Volta\n---\n${body}`, `\uFEFF---\ntitle: Volta\n---\n\n# Oficina\n${body}`],
  [`\`\`\`yaml\ntitle: Volta\nteaches: pt\n\`\`\`\n${body}`, `---\ntitle: Volta\nteaches: pt\n---\n${body}`],
];

/** Markdown that is no front matter, and front matter as it should be. */
const quiet: readonly string[] = [
  `\n---\nfoo: bar\n---\n${body}`,
  `\n---\ntitle: Volta\nThat is all.\n---\n${body}`,
  `\n---\n\nSome text\n\n---\n${body}`,
  `---\ntitle: Volta\n\n# remark\nteaches: pt\n---\n${body}`,
  `---\ntitle: Volta\n...\n${body}`,
  `---\n---\n${body}`,
  `title: Volta\n${body}`,
  `title: Volta\nteaches: pt\nThat is all.\n${body}`,
  `foo: bar\n---\n${body}`,
  `***\nfoo: bar\n***\n${body}`,
  `+++\nfoo: bar\n+++\n${body}`,
  `—\nfoo: bar\n—\n${body}`,
  `\u200e---\ntitle: Volta\n---\n${body}`,
  `Title\n---\n${body}`,
  `# Oficina\ntitle: Volta\n${body}`,
  `# Oficina\n\ntitle: Volta\nteaches: pt\nThat is all.\n${body}`,
  `# Oficina\n\n---\nfoo: bar\n---\n${body}`,
  `# Oficina\n\n---\n\nAnd so on.\n\n---\n${body}`,
  `<!-- a --> b\n---\ntitle: Volta\n---\n${body}`,
  `\`\`\`yaml\ntitle: Volta\n\`\`\`\n${body}`,
];

describe("front matter that begins or ends otherwise", () => {
  for (const [lines, wanted] of meant) {
    for (const newline of ["\n", "\r\n"]) {
      it(JSON.stringify(lines.slice(0, 40).replaceAll("\n", newline)), () => {
        const text = lines.replaceAll("\n", newline);
        const unit = readUnit(text);
        assert.deepEqual(
          unit.problems.map(({ code, fixes }) => [code, fixes.length]),
          [["unreadable-yaml", 1]],
        );
        const mended = applyEdits(text, unit.problems[0]?.fixes[0]?.edits ?? []);
        assert.equal(mended, wanted.replaceAll("\n", newline));
        const after = readUnit(mended);
        assert.deepEqual(after.problems, []);
        const said = ({ front, sections }: typeof unit) => [
          front.entries.map(({ key, value }) => [key, value]),
          sections.map(({ name, pairs }) => [name, pairs.length]),
        ];
        assert.deepEqual(said(unit), said(after));
        assert.deepEqual(after.front.entries[0]?.value, "Volta");
      });
    }
  }

  it("names in any language are front matter, and sentences between two lines are text", () => {
    const read = (inside: string): unknown[] => {
      const { front, sections, problems } = readUnit(`---\n${inside}\n---\n${body}`);
      return [front.entries.map(({ key }) => key), sections.map(({ name }) => name), problems.length];
    };
    assert.deepEqual(read("назва: Колесо\nкласи:\n  - 24"), [["назва", "класи"], ["Roda"], 0]);
    assert.deepEqual(read("題名: 車輪"), [["題名"], ["Roda"], 0]);
    for (const note of ["Für mich: erst schneiden.", "öl", "Тема: колесо\nі ще дещо"])
      assert.deepEqual(read(note)[0], [], note);
  });

  it("lines with another sign are front matter too, whichever fix comes first", () => {
    const read = (text: string) => {
      const { front, sections, problems } = readUnit(text);
      return { keys: front.entries.length, sections: sections.length, problems };
    };
    for (const mark of ["---", "+++"]) {
      const text = `${mark}\ntitle = "Volta"\nteaches = "pt"\n${mark}\n\n## A\n\n- roda = wheel\n`;
      const { sections, problems } = read(text);
      assert.equal(sections, 1);
      for (const { fixes } of problems) assert.equal(read(applyEdits(text, fixes[0]?.edits ?? [])).sections, 1);
      assert.equal(problems.length, mark === "---" ? 2 : 3);
    }
  });

  for (const text of quiet) {
    it(`is quiet: ${JSON.stringify(text.slice(0, 40))}`, () => {
      assert.deepEqual(readUnit(text).problems, []);
    });
  }
});
