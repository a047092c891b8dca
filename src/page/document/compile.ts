import type { Block } from "./blocks";
import { columnsPart } from "./columns";
import { headingPart, listParts, paragraphPart, type Setting } from "./paragraphs";
import { drawStack, type Part, slack, stackHeight } from "./part";
import { tablePart } from "./table";

/** Sets blocks to a width; `pageHeight` (mm) is what one page can hold. */
export function compile(blocks: readonly Block[], setting: Setting, pageHeight: number): Part[] {
  return blocks.flatMap((block) => partsOf(block, setting, pageHeight));
}

function partsOf(block: Block, setting: Setting, pageHeight: number): Part[] {
  switch (block.type) {
    case "heading":
      return [headingPart(block.text, block.level, setting)];
    case "paragraph": {
      const size = block.size ?? setting.size;
      return [paragraphPart(block.text, { ...setting, size }, block.align, block.keepsNext)];
    }
    case "steps": {
      const { start = 1, labels } = block;
      return listParts(block.items, (i) => labels?.[i] ?? `${start + i}`, setting);
    }
    case "bullets":
      return listParts(block.items, () => "•", setting);
    case "facts":
      return present(
        whole(
          tablePart(
            {
              type: "table",
              columns: [{ width: "fit" }, {}],
              rows: block.rows.map(({ label, value }) => [label, value]),
              rules: "none",
            },
            setting,
            pageHeight,
          ),
          pageHeight / 3,
        ),
      );
    case "table":
      return [...present(tablePart(block, setting, pageHeight)), space(0.15 * setting.size)];
    case "columns":
      return present(columnsPart(block, setting));
    case "lines":
      return [writingLines(block.count, block.pitch ?? 9, setting.width)];
    case "figure": {
      const margin = block.margin ?? 3;
      const height = Math.min(block.height, pageHeight);
      const draw = (x: number, y: number) => block.draw({ x, y, w: setting.width, h: height });
      return [{ above: margin, height, least: height, draw }, space(margin)];
    }
    case "together":
      return present(together(compile(block.blocks, setting, pageHeight)));
    case "sized":
      return compile(block.blocks, { ...setting, size: block.size }, pageHeight);
    case "space":
      return [space(block.height)];
    case "page break":
      return [{ ...space(0), breaks: true }];
  }
}

function present(part: Part | undefined): Part[] {
  return part ? [part] : [];
}

/** The part, not to be split between pages unless it is higher than `most` mm. */
function whole(part: Part | undefined, most: number): Part | undefined {
  return part && part.height <= most ? { ...part, least: part.height } : part;
}

function space(height: number): Part {
  return { above: height, height: 0, least: 0, draw: () => [] };
}

function together(parts: readonly Part[]): Part | undefined {
  const [first] = parts;
  if (!first) return undefined;
  const height = stackHeight(parts);
  const keepsNext = parts.at(-1)?.keepsNext ?? false;
  return { above: first.above, height, least: height, keepsNext, parts, draw: (x, y) => drawStack(parts, x, y) };
}

/** Lines to write on, each at the foot of its room. */
function writingLines(count: number, pitch: number, width: number): Part {
  const height = count * pitch;
  return {
    above: 0,
    height,
    least: Math.min(height, pitch),
    draw: (x, y) =>
      Array.from({ length: count }, (_, i) => {
        const at = y + (i + 1) * pitch;
        return { type: "line", role: "rule", x1: x, y1: at, x2: x + width, y2: at, weight: 0.35 };
      }),
    split(available) {
      const fitting = Math.floor(available / pitch + slack);
      if (fitting < 1 || fitting >= count) return undefined;
      return [writingLines(fitting, pitch, width), writingLines(count - fitting, pitch, width)];
    },
  };
}
