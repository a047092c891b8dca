import type { Rule } from "../../base/finding";
import { type CheckContext, inUse } from "../context";

/** A rule that hands on what reading the unit found under its code; traps only where an activity uses the section. */
function problemRule(rule: Omit<Rule<CheckContext>, "check">): Rule<CheckContext> {
  return {
    ...rule,
    check: (context) =>
      context.unit.problems
        .filter(({ code, trap, range }) => code === rule.code && (!trap || inUse(context, range.start)))
        .map(({ range, message, fixes }) => ({
          range,
          message,
          fixes: fixes.map(({ title, edits, drops }, i) =>
            i === 0 && !drops ? { title, edits, preferred: true } : { title, edits },
          ),
        })),
  };
}

const pairs = "- pão = bread\n- mel = honey\n- sal = salt\n- chá = tea\n";
const tiles = "\n```activity\nmake: tiles\n```";
const inFood = (item: string, after = ""): string => `## Food\n\n${pairs}${item}\n${after}${tiles}`;

/** What reading finds wrong wherever it stands. */
const faults: readonly Rule<CheckContext>[] = [
  problemRule({
    code: "second-equals",
    severity: "warning",
    title: "A second equals sign in a pair",
    why: "The first ` = ` parts an item into its two sides. A further one is read as text and printed. If it is meant as text, write `\\=`; if it was to be a further answer, write ` / `.",
    example: { wrong: "## Counting\n\n- dos = two = 2", right: "## Counting\n\n- dos = two / 2" },
  }),
  problemRule({
    code: "empty-answer",
    severity: "error",
    title: "A side of a pair without anything on it",
    why: "Each side of ` = `, and each answer beside ` / `, needs a word or a picture. An item with an empty side is not used.",
    example: { wrong: "## Counting\n\n- dos = two / <!-- by: K7 -->", right: "## Counting\n\n- dos = two" },
  }),
  problemRule({
    code: "empty-statement",
    severity: "error",
    title: "A statement that states nothing",
    why: "Behind `[x]` or `[ ]` stands what is true or false. An empty statement is not used.",
    example: {
      wrong: "## The day\n\n- [x]\n- [ ] Ela canta.",
      right: "## The day\n\n- [x] Ela dança.\n- [ ] Ela canta.",
    },
  }),
  problemRule({
    code: "other-parts",
    severity: "error",
    title: "An accepted order with other parts",
    why: "A bullet with bars under a sentence with bars is another order of the same parts. Capitals and punctuation at the edges of a part may differ; nothing else may. Without bars it is an example sentence.",
    example: {
      wrong:
        "## Ordering\n\n- Queria | um disco, | por favor. = I'd like a record, please.\n  - Por favor, | quero | um disco.",
      right:
        "## Ordering\n\n- Queria | um disco, | por favor. = I'd like a record, please.\n  - Por favor, | queria | um disco.",
    },
  }),
  problemRule({
    code: "too-many-cells",
    severity: "error",
    title: "A table row with more cells than the table has columns",
    why: "Markdown drops what is over. A bar that belongs to the text of a cell is written `\\|`.",
    example: {
      wrong: "## Words\n\n| palavra | word |\n| --- | --- |\n| o pão | bread | loaf |",
      right: "## Words\n\n| palavra | word |\n| --- | --- |\n| o pão | bread / loaf |",
    },
  }),
  problemRule({
    code: "allow-without-reason",
    severity: "warning",
    title: "A silenced finding without a reason",
    why: "`<!-- allow CODE: reason -->` at the end of an item's line says that a finding there is meant. Next year somebody wants to know why. Without a reason it silences nothing.",
    example: {
      wrong: "## People\n\n- el jefe = the boss <!-- allow duplicate-answer -->",
      right: "## People\n\n- el jefe = the boss",
    },
  }),
  problemRule({
    code: "unreadable-yaml",
    severity: "error",
    title: "Settings that cannot be read",
    why: "The front matter and the `activity` blocks are YAML: one `name: value` a line. A text with a colon or a number sign needs quotation marks.",
    example: {
      wrong: "```activity\nmake: tiles\nfrom: [Food\n```",
      right: "```activity\nmake: tiles\nfrom: [Food]\n```",
    },
  }),
  problemRule({
    code: "option-twice",
    severity: "warning",
    title: "An option that stands twice",
    why: "Only the first of two lines with the same name counts. Take one of them out.",
    example: {
      wrong: "```activity\nmake: tiles\nseed: 1\nseed: 2\n```",
      right: "```activity\nmake: tiles\nseed: 2\n```",
    },
  }),
  problemRule({
    code: "open-fence",
    severity: "error",
    title: "An activity without an end",
    why: "Three backquotes in a line of their own end an activity. Without them everything below belongs to it.",
    example: {
      wrong: "## Food\n\n```activity\nmake: tiles\n\n- pão = bread",
      right: "## Food\n\n```activity\nmake: tiles\n```\n\n- pão = bread",
    },
  }),
];

/** What Markdown makes of lines that were meant otherwise; looked for in sections in use. */
const traps: readonly Rule<CheckContext>[] = [
  problemRule({
    code: "list-in-list",
    severity: "warning",
    title: "An item that Markdown takes for a list, a heading or a quotation",
    why: "A number with a full stop at the beginning of an item begins a list inside the list, as in `- 3. Oktober`; `#` begins a heading, `>` a quotation. The item is then not read. A backslash before the sign makes it text.",
    example: { wrong: inFood("- 3. Gang = third course"), right: inFood("- 3\\. Gang = third course") },
  }),
  problemRule({
    code: "underlined-item",
    severity: "warning",
    title: "A line of signs under an item",
    why: "A line of equals signs or hyphens right under an item makes a heading of it, or becomes part of it. For a line between parts of your notes leave a blank line above it.",
    example: { wrong: inFood("- ovo = egg\n  ==="), right: inFood("- ovo = egg") },
  }),
  problemRule({
    code: "swallowed-list",
    severity: "warning",
    title: "A list that belongs to the text above it",
    why: "A numbered line that does not begin with 1 goes on the paragraph above it, and a block of HTML takes the lines below it along. A blank line between them makes it an item.",
    example: { wrong: inFood("", "\nThen:\n2. Ela paga.\n"), right: inFood("", "\nThen:\n\n2. Ela paga.\n") },
  }),
  problemRule({
    code: "split-list",
    severity: "hint",
    title: "A list that another sign parts in two",
    why: "Items that begin with `-`, `*` and `+` are different lists to Markdown, also without a blank line between them. Cutwork reads all of them; other programs may set them apart.",
    example: { wrong: inFood("* ovo = egg"), right: inFood("- ovo = egg") },
  }),
  problemRule({
    code: "indented-list",
    severity: "warning",
    title: "A list that is code, since it is indented",
    why: "Four spaces or a tab before a list, or five behind a bullet, make code of it. Nothing in it is read.",
    example: { wrong: `## Food\n\nNotes\n\n    - ovo = egg\n\n${pairs}${tiles}`, right: inFood("- ovo = egg") },
  }),
  problemRule({
    code: "picture-path",
    severity: "error",
    title: "A picture whose path has a space",
    why: "Markdown reads `![a spoon](my spoon.png)` as text. In angle brackets, `![a spoon](<my spoon.png>)`, the path may have spaces.",
    example: {
      wrong: `## Table\n\n- ![a spoon](my spoon.png) = a colher\n${tiles}`,
      right: `## Table\n\n- a spoon = a colher\n${tiles}`,
    },
  }),
  problemRule({
    code: "underscore-gap",
    severity: "warning",
    title: "A gap drawn with low lines",
    why: "Markdown takes low lines for emphasis. A gap to write in is `[...]`, which is printed as a line.",
    example: { wrong: inFood("- Eu ___ fome. = I am hungry."), right: inFood("- Eu [...] fome. = I am hungry.") },
  }),
  problemRule({
    code: "meant-as-pair",
    severity: "warning",
    title: "An item that is nearly a pair",
    why: "The sides of a pair are parted by ` = `, with a space on both sides. A dash, a colon, a tab or an equals sign without spaces parts nothing; the item is read as a note.",
    example: { wrong: inFood("- ovo – egg"), right: inFood("- ovo = egg") },
  }),
  problemRule({
    code: "meant-as-statement",
    severity: "warning",
    title: "An item that is nearly a statement",
    why: "A statement begins with `[x]` or `[ ]` and a space. Without the space, with another sign or with spaces inside it is read as a note.",
    example: { wrong: inFood("- [x]Ela come."), right: inFood("- [x] Ela come.") },
  }),
  problemRule({
    code: "numbered-pair",
    severity: "warning",
    title: "A pair behind a number",
    why: "Numbered items are the events of a story, in their order; ` = ` means nothing in them. Pairs stand behind hyphens.",
    example: { wrong: inFood("", "\n1. ovo = egg\n"), right: inFood("- ovo = egg") },
  }),
  problemRule({
    code: "nested-item",
    severity: "warning",
    title: "A pair or statement under another one",
    why: "What is nested under a pair is an example sentence, and under a statement its correction; a separator or mark in it is text. If it is an item of its own, it must not be indented.",
    example: { wrong: inFood("- ovo = egg\n  - uva = grape"), right: inFood("- ovo = egg\n- uva = grape") },
  }),
  problemRule({
    code: "not-an-item",
    severity: "warning",
    title: "A line that is nearly an item",
    why: "An item begins with a hyphen and a space. Other signs, and a hyphen without a space, make it part of a paragraph, which is not read.",
    example: { wrong: inFood("", "\n• ovo = egg\n"), right: inFood("- ovo = egg") },
  }),
  problemRule({
    code: "not-a-heading",
    severity: "warning",
    title: "A line that is nearly a heading",
    why: "A heading needs a space behind its number signs. Without it the line is text, and what follows belongs to the section before.",
    example: { wrong: inFood("", "\n##Drinks\n"), right: inFood("", "\n") },
  }),
  problemRule({
    code: "not-an-activity",
    severity: "warning",
    title: "A block that is nearly an activity",
    why: "The name behind the backquotes is `activity`, in small letters. Under another name the block is a note.",
    example: { wrong: `${inFood("")}\n\n\`\`\`Activity\nmake: tiles\n\`\`\``, right: inFood("") },
  }),
  problemRule({
    code: "misplaced-comment",
    severity: "warning",
    title: "A comment that stands where it is lost",
    why: "`<!-- allow CODE: reason -->` and `<!-- by: CODE -->` count at the end of an item's line. At its beginning Markdown makes a comment of the whole item; between items it parts the list.",
    example: { wrong: inFood("- <!-- by: K7 --> ovo = egg"), right: inFood("- ovo = egg <!-- by: K7 -->") },
  }),
];

export const readingRules: readonly Rule<CheckContext>[] = [...faults, ...traps];
