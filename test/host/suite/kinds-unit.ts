import { ninePairs } from "./units";

/*
 * A unit with one activity of each kind, and what a teacher reads in it by a line of regular expression each.
 */

export const kindsUnit = `---
title: Saturday market
teaches: pt
explains: en
classes: [4]
---

## At the stall

${ninePairs.map((pair) => `- ${pair}`).join("\n")}
- a salsa = the parsley
- o melão = the melon
- ![a pear](pear.png) = a pera

\`\`\`activity
make: tiles
grid: 3 x 3
\`\`\`

\`\`\`activity
make: loop
\`\`\`

\`\`\`activity
make: board
grid: 3 x 4
\`\`\`

## Saturday

1. A Olga monta a banca.
2. Ela arruma:
   - os tomates
   - as couves
3. Começa a chover.
4. Um pombo leva uma cereja.

\`\`\`activity
make: strips
backs: numbers
\`\`\`

## What we say

- Quero | um quilo | de cebolas. = I want a kilo of onions.
- Onde está | a minha | balança? = Where are my scales?
- Hoje | não há | melões | maduros. = There are no ripe melons today.

\`\`\`activity
make: rebuild
\`\`\`

## What is true

- [x] O mercado abre cedo.
- [ ] Um pombo leva um melão.
  - Um pombo leva uma cereja.
- [x] Chove de manhã.
- [ ] A Olga vende sapatos.
  - A Olga vende tomates.
- [x] O pombo foge.
- [ ] A banca cai.
  - A banca fica de pé.

\`\`\`activity
make: calls
\`\`\`

## Fruit and vegetables

### frutas

- maçã
- cereja
- ameixa
- figo

### legumes

- nabo
- rabanete
- abóbora
- ervilha

\`\`\`activity
make: sort
\`\`\`
`;

/** Left sides of the pairs with their right sides; `[a pear]` for a picture. */
export const pairsIn = (text: string): ReadonlyMap<string, string> =>
  new Map(
    [...text.matchAll(/^- (?:!(\[[^\]]+\])\([^)]*\)|(?!\[)(.+?)) = (.+)$/gm)].map(
      ([, picture, word = "", right = ""]) => [picture ?? word, right],
    ),
  );

/** The statements: whether they are true, and what is said instead of a false one. */
export const statementsIn = (text: string): ReadonlyMap<string, readonly [string, string]> =>
  new Map(
    [...text.matchAll(/^- \[([x ])\] (.+)\n(?: {2}- (.+)\n)?/gm)].map(([, mark, said = "", instead = ""]) => [
      said,
      [mark === "x" ? "True" : "False", instead],
    ]),
  );

/** The right orders of the story: what its two bullets say may change places. */
export const storiesIn = (text: string): readonly string[] => {
  const events = [...text.matchAll(/^(?:\d+\.| {3}-) (.+)$/gm)].map(([, event = ""]) => event);
  const other = [...events];
  [other[2], other[3]] = [events[3] ?? "", events[2] ?? ""];
  return [events.join("|"), other.join("|")];
};

/** Items by the heading above them. */
export const pilesIn = (text: string): ReadonlyMap<string, readonly string[]> =>
  new Map(
    [...text.matchAll(/^### (.+)\n\n((?:- .+\n)+)/gm)].map(([, name = "", items = ""]) => [
      name,
      items
        .trim()
        .split("\n")
        .map((item) => item.slice(2)),
    ]),
  );
