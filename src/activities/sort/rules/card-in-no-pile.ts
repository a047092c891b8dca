import type { Rule } from "../../../base/finding";
import { counted } from "../../report";
import type { SortContext } from "./context";
import { activity, articles } from "./example";

export const cardInNoPile: Rule<SortContext> = {
  code: "card-in-no-pile",
  severity: "warning",
  title: "An item that belongs to no pile",
  why: "The item stands above the first heading that names a pile, so nobody could say where its card goes. It is left out. Move it under a heading, or into a section of its own.",
  example: {
    wrong: `## Articles\n\n- o mel = honey\n\n${articles.slice(13)}${activity()}`,
    right: `${articles}${activity()}`,
  },
  check: ({ dealt }) => {
    const [first, ...others] = dealt.loose;
    if (!first || dealt.deals.length === 0) return [];
    return [
      {
        range: first.range,
        message: `“${first.text}”${others.length > 0 ? ` and ${counted(others.length, "more item")}` : ""} ${others.length > 0 ? "stand" : "stands"} above the first pile and ${others.length > 0 ? "are" : "is"} left out.`,
        related: others.slice(0, 5).map(({ range }) => ({ range, message: "Left out too" })),
      },
    ];
  },
};
