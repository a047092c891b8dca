import { type Steps, told } from "../base/steps";
import { practisingTraps } from "../unit/traps/practice";
import { practisingYaml } from "../unit/yaml";
import { nothingAround, type Workshop } from "./workshop";

/**
 * Reads a small unit of its own: code that runs for the first time is slow, and a step of reading a large unit would be as much
 * longer.
 */
export function* practising(workshop: Pick<Workshop, "reading">): Steps<void> {
  yield* told(practisingYaml("practice: [yes]\n"), "Reading");
  yield "Reading";
  yield* told(practisingTraps(), "Reading");
  yield* workshop.reading({ name: "practice", text: practice }, nothingAround);
}

/** A small unit with all kinds of items and activities, to be read before the first one that somebody waits for. */
export const practice = `---
title: Practice
teaches: pt
explains: en
classes: [12]
---

## Notes

- Bring the pump
- The brake, for the demonstration
- Ask for a second lamp

## A

1. A roda gira.
2. O travão para.
3. A luz acende.

- [x] A roda gira bem.
- [ ] O travão gira mal.
  - O travão para bem.
- [x] A luz é alta.
- [ ] A luz não é alta.
- [x] O selim é baixo.
- [ ] O selim toca a campainha.
- [x] A roda é boa.
- [ ] O travão acende.

- a roda | *boa* = the good wheel
- o travão | mau = the bad brake / a brake
- a luz | **alta** = the high light
- o selim | baixo = the low saddle

\`\`\`activity
make: tiles
grid: 2 x 2
levels: [gentle, hard]
\`\`\`

\`\`\`activity
make: loop
\`\`\`

\`\`\`activity
make: board
\`\`\`

\`\`\`activity
make: calls
\`\`\`

\`\`\`activity
make: rebuild
\`\`\`

\`\`\`activity
make: strips
\`\`\`

\`\`\`activity
make: sort
from: B
\`\`\`

## B

### o

- travão = brake
- selim = saddle

### a

- roda = wheel
- luz = light
`;
