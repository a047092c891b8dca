import type { Fix, Rule } from "../../../base/finding";
import { sizeFor, xHeightOf, xHeights } from "../../../page/legibility";
import { setOption } from "../../edits";
import { optionPlace } from "../../report";
import { layoutStrips, sizeOn } from "../layout";
import type { StripsContext } from "./context";

export const stripsTooSmall: Rule<StripsContext> = {
  code: "strips-too-small",
  severity: "warning",
  title: "Events that are too small to read on a strip",
  why: "All strips of a set have one height and one size of text, so the longest event decides. At arm's length (400 mm) small letters should be 2.33 mm high (20 minutes of arc) and must be 1.86 mm. Make the strips higher, or tell the event in fewer words.",
  example: {
    wrong:
      "## The morning\n\n1. A Inês entra no café da esquina, senta-se à mesa junto à janela e olha muito tempo para o porto, onde um barco chega.\n2. Ela mede um sumo.\n3. Ela paga.\n\n```activity\nmake: strips\nheight: 10\n```",
    right:
      "## The morning\n\n1. A Inês entra no café.\n2. Ela mede um sumo.\n3. Ela paga.\n\n```activity\nmake: strips\nheight: 14\n```",
  },
  check: ({ dealt, press }) => {
    const { events, deals, request } = dealt;
    if (deals.length === 0 || events.length === 0) return [];
    const { size, grid, box } = layoutStrips(dealt, press);
    const { typeface } = press;
    const comfort = sizeFor(xHeights.desk.comfortable, typeface);
    if (size !== undefined && size >= comfort) return [];
    const strip = { x: 0, y: 0, w: grid.w, h: grid.h };
    const small = events
      .map((event) => ({ event, own: sizeOn([event], strip, press) }))
      .filter(({ own }) => own === undefined || own < comfort)
      .sort((a, b) => (a.own ?? 0) - (b.own ?? 0) || a.event.source.start - b.event.source.start);
    const [worst, ...others] = small;
    if (!worst) return [];
    const height = worst.own === undefined ? 0 : xHeightOf(worst.own, typeface);
    const fixes: Fix[] = [];
    const enough = heightFor(events, box.w, Math.min(80, box.h), comfort, press);
    if (enough !== undefined) {
      const edits = [setOption(request.block, request.unit.text, "height", String(enough))];
      fixes.push({ title: `Make the strips ${enough} mm high`, edits, preferred: true });
    }
    const state = worst.own === undefined ? "does not fit" : `has letters only ${height.toFixed(1)} mm high`;
    return [
      {
        // A height that is too small for many is the cause, not one event.
        range: worst.event.source,
        severity: height < xHeights.desk.least ? "error" : "warning",
        message: `“${shortened(worst.event.text)}” ${state} on strips of ${grid.h} mm, and sets the size of all. ${enough === undefined ? "No strip is high enough: shorten it." : `Strips of ${enough} mm would do.`}`,
        related: [
          ...others.slice(0, 4).map(({ event }) => ({ range: event.source, message: "Too small as well" })),
          ...(dealt.options.height === undefined
            ? []
            : [{ range: optionPlace(request.block, "height"), message: "The height that was asked for" }]),
        ],
        fixes,
      },
    ];
  },
};

/** The least height in whole mm at which all events fit at `comfort` pt; undefined where none up to `most` does. */
function heightFor(
  events: StripsContext["dealt"]["events"],
  width: number,
  most: number,
  comfort: number,
  press: StripsContext["press"],
): number | undefined {
  const enough = (h: number): boolean => (sizeOn(events, { x: 0, y: 0, w: width, h }, press) ?? 0) >= comfort;
  let [low, high] = [10, Math.floor(most)];
  if (!enough(high)) return undefined;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57).trimEnd()}…` : text;
}
