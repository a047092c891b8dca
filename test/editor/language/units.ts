/** A unit with every shape of the dialect. */
export const wholeDialect = `---
title: The harbour café
teaches: pt
explains: en
---

# The harbour café

## At the counter

- o copo = the glass
- a caneca = the mug / the tankard
  - A caneca está cheia.
- ![a spoon](img/spoon.png) = a colher

\`\`\`activity
make: tiles
from: At the counter
grid: 2 x 3
\`\`\`

## What happened

- [x] A Rita pede um galão.
- [ ] O pai come sopa.
  - O pai come uma torrada.
- [x] Eu [peço](#pedir) a conta.

## The morning

1. A Rita entra no café.
2. Ela pede:
   - um galão
   - uma torrada
3. Ela paga.

## Ordering

- Queria | um galão, | por favor. = I'd like a milky coffee, please.
  - Por favor, | queria | um galão.

## O galão, a torrada

### o
- galão
- copo

### a
- torrada

## Verbs

|     | pedir   | trazer   |
| --- | ------- | -------- |
| eu  | peço    | trago    |
| nós | pedimos | trazemos |
`;
