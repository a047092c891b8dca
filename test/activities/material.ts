import assert from "node:assert/strict";
import type { Deal, Dealt, KindName } from "../../src/activities/contract";
import { kindNamed } from "../../src/activities/kinds";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";

/*
 * A bicycle workshop in every shape, two sections of each, and the deals of an activity about it.
 */

const words = `## Bench

- a roda = the wheel
- o guiador = the handlebar
- o selim = the saddle
- o pedal = the pedal
- a corrente = the chain
- o travão = the brake
- a buzina = the horn
- a campainha = the bell
- o quadro = the frame
- o raio = the spoke
- a válvula = the valve
- a bomba = the pump

## Road

- a ponte = the bridge
- a curva = the bend
- a subida = the climb
- a praça = the square
- o túnel = the tunnel
- o mapa = the map
- a sombra = the shade
- o desvio = the detour
`;

const events = `## Morning

1. O Tomé abre a oficina.
2. Ele procura:
   - uma chave
   - um pano
3. Ele tira a roda da frente.
4. Um gato salta para a bancada.
5. A lata de tinta cai.
6. Todos pintam o chão.

## Evening

1. A Leonor mede o quadro.
2. Ela fecha a janela.
3. Chove.
4. O último cliente sai.
`;

const sentences = `## Ask

- Preciso | de uma bomba | ainda hoje. = I need a pump today.
- O pneu | perde ar | na subida. = The tyre loses air on the climb.
- Onde | guardas | a chave grande? = Where do you keep the big spanner?
- A corrente | está | seca. = The chain is dry.

## Answer

- O travão | de trás | faz barulho. = The rear brake makes noise.
- Quem | pinta | o quadro? = Who paints the frame?
- Amanhã | abrimos | mais cedo. = Tomorrow we open earlier.
- Aqui | não há | parafusos. = There are no screws here.
`;

export const table = `|      | medir   | fazer   | abrir   |
| ---- | ------- | ------- | ------- |
| eu   | meço    | faço    | abro    |
| tu   | medes   | fazes   | abres   |
| ela  | mede    | faz     | abre    |
| nós  | medimos | fazemos | abrimos |
`;

const statements = `## Before

- [x] A Leonor [mede](#medir) o quadro.
- [x] Eu [faço](#fazer) uma lista.
- [x] Nós [abrimos](#abrir) a porta.
- [x] A lata de tinta cai.
- [x] Chove à tarde.
- [ ] O gato bebe o óleo.
  - O gato bebe leite.
- [ ] A oficina fecha ao meio-dia.
  - A oficina fecha às seis.
- [ ] O chão fica verde.
- [ ] O martelo é de vidro.
- [ ] A campainha dorme.

## After

- [x] Tu [medes](#medir) a roda.
- [x] Nós [fazemos](#fazer) café.
- [x] Ela [abre](#abrir) a janela.
- [x] O Tomé perde a chave.
- [x] O pneu perde ar.
- [ ] A bomba canta.
- [ ] O selim é de pedra.
- [ ] O cliente come a porca.
- [ ] O raio voa.
- [ ] A gaveta ri.
`;

const piles = `## Articles

### o

- guiador
- selim
- pedal
- travão
- quadro
- raio

### a

- roda
- corrente
- buzina
- campainha
- válvula
- bomba
`;

/** What an activity can be about. */
export const shapes = {
  words: { text: words, from: "[Bench, Road]", items: 20 },
  events: { text: events, from: "[Morning, Evening]", items: 12 },
  sentences: { text: sentences, from: "[Ask, Answer]", items: 8 },
  statements: { text: statements, from: "[Before, After]", items: 20 },
  piles: { text: piles, from: "Articles", items: 12 },
  forms: { text: `## Forms\n\n${table}`, from: "Forms", items: 12 },
} as const;

export type ShapeName = keyof typeof shapes;

/** A unit with all shapes and one activity about one of them. */
export function workshopUnit(make: KindName, about: ShapeName, options = "", front = ""): string {
  const all = Object.values(shapes).map(({ text }) => text);
  return `---\ntitle: The bicycle workshop\nteaches: pt\nexplains: en\n${front}---\n\n${all.join("\n")}\n\`\`\`activity\nmake: ${make}\nfrom: ${shapes[about].from}\n${options}\n\`\`\`\n`;
}

/** What the first activity of a unit has become. */
export function dealtOf<T extends Dealt<Deal>>(text: string, isKind: (dealt: Dealt<Deal>) => dealt is T): T {
  const [planned] = planUnit(readUnit(text)).activities;
  assert.deepEqual(planned?.faults, []);
  const kind = kindNamed(planned?.kind?.name);
  assert.ok(kind && planned?.request, "nothing to deal from");
  const dealt = kind.deal(planned.request);
  assert.ok(isKind(dealt));
  return dealt;
}
