import type { Fix, Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { setOption } from "../../edits";
import { optionPlace } from "../../report";
import { dealingLoop } from "../deal";
import type { DealtLoop } from "../model";
import { closes, named, report } from "./clash-report";
import { laterPair, secondCircles } from "./clashes";
import type { LoopContext } from "./context";

export const secondCircle: Rule<LoopContext> = {
  code: "second-circle",
  severity: "error",
  title: "Cards that close a full circle in more than one way",
  why: "Words that answer more than one card allow a second circle with all cards: learners may be right and yet have other signs than the key. It takes answers that are used three times, or two of them that return in turn. The preview shows both circles. The same cards can also close a circle while others are left over, which the finding says too: as long as an answer stands on two cards, that remains. Take out a pair or an alternative answer, or let `take` leave pairs out.",
  example: {
    wrong:
      "## People\n\n- o patrão = the boss\n- o chefe = the boss\n- o dono = the boss\n- a amiga = the friend\n- o vizinho = the neighbour\n\n```activity\nmake: loop\n```",
    right:
      "## People\n\n- o patrão = the boss\n- o chefe = the leader\n- o dono = the owner\n- a amiga = the friend\n- o vizinho = the neighbour\n\n```activity\nmake: loop\n```",
  },
  check: ({ dealt }) => {
    const place = optionPlace(dealt.request.block);
    const [hit] = secondCircles(dealt);
    if (hit) {
      const { deal, by } = hit;
      const { second = [] } = deal.proof;
      const [clash] = [...by].sort((a, b) => laterPair(b).range.start - laterPair(a).range.start);
      const also = [{ range: place, message: "The preview shows both circles" }];
      if (!clash) return [];
      // What closes early by the same answer has no finding of its own.
      const effect = `So all ${second.length} cards also make the circle ${named(deal, second)}, and ${closes(clash)}.`;
      return [report(dealt, clash, "second circle", effect, also)];
    }
    const open = dealt.deals.find(({ proof }) => proof.status === "unsettled");
    if (!open) return [];
    return [
      {
        range: place,
        severity: "warning",
        message: `It could not be settled whether these cards make one full circle only (${open.proof.nodes} steps were tried).`,
        fixes: () => anotherSeed(dealt),
      },
    ];
  },
};

/** A seed among the next three with which it is settled that there is one circle. */
function* anotherSeed({ options, request }: DealtLoop): Steps<Fix[]> {
  const { block, unit } = request;
  for (let seed = options.seed + 1; seed <= options.seed + 3; seed++) {
    const value = { ...options, seed };
    const other = yield* dealingLoop({ ...request, options: { ...request.options, value } });
    if (other.deals.every(({ proof }) => proof.status === "one"))
      return [{ title: `Use seed ${seed}`, edits: [setOption(block, unit.text, "seed", String(seed))] }];
  }
  return [];
}
