/** A unit with every shape of the dialect. */
export const wholeDialect = `---
title: The bicycle shop
teaches: pt
explains: en
---

# The bicycle shop

## At the counter

- o copo = the glass
- a tigela = the mug / the tankard
  - A tigela está cheia.
- ![a spoon](img/spoon.png) = a colher

\`\`\`activity
make: tiles
from: At the counter
grid: 2 x 3
\`\`\`

## What happened

- [x] A Inês mede um disco.
- [ ] O pai come sopa.
  - O pai come uma mochila.
- [x] Eu [meço](#medir) a conta.

## The morning

1. A Inês entra no café.
2. Ela mede:
   - um disco
   - uma mochila
3. Ela paga.

## Ordering

- Queria | um disco, | por favor. = I'd like a milky coffee, please.
  - Por favor, | queria | um disco.

## O disco, a mochila

### o
- disco
- copo

### a
- mochila

## Verbs

|     | medir   | trazer   |
| --- | ------- | -------- |
| eu  | meço    | trago    |
| nós | medimos | trazemos |
`;
