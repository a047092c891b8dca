import { part } from "./page";
import type { Column, ScreenSheet } from "./protocol";

interface Held {
  readonly figure: HTMLElement;
  readonly paper: HTMLElement;
  readonly caption: HTMLElement;
  svg: string;
}

/** The sheets as they lie on the page. A sheet that did not change keeps its elements: nothing flickers, focus stays. */
export class Sheets {
  readonly area = part("sheets", HTMLElement);
  private columns: { readonly section: HTMLElement; readonly heading: HTMLElement; held: Held[] }[] = [];
  /** mm */
  private widest = 0;

  show(columns: readonly Column[]): void {
    while (this.columns.length > columns.length) this.columns.pop()?.section.remove();
    while (this.columns.length < columns.length) this.columns.push(this.newColumn());
    columns.forEach(({ heading, sheets }, index) => {
      const column = this.columns[index];
      if (!column) return;
      column.heading.textContent = heading;
      column.heading.hidden = heading === "";
      for (const extra of column.held.splice(sheets.length)) extra.figure.remove();
      sheets.forEach((sheet, place) => {
        const held = column.held[place] ?? newSheet();
        if (!held.figure.isConnected) column.section.append(held.figure);
        column.held[place] = held;
        update(held, sheet);
      });
    });
    this.widest = Math.max(0, ...columns.flatMap(({ sheets }) => sheets.map(({ width }) => width)));
    this.area.style.setProperty("--widest", String(this.widest));
  }

  /** Width in mm that stands side by side, and how many gaps lie beside and between. */
  get spread(): { readonly width: number; readonly columns: number } {
    return { width: this.widest * this.columns.length, columns: this.columns.length };
  }

  private newColumn() {
    const section = document.createElement("section");
    const heading = document.createElement("h2");
    section.append(heading);
    this.area.append(section);
    return { section, heading, held: [] };
  }
}

function newSheet(): Held {
  const figure = document.createElement("figure");
  const paper = document.createElement("div");
  paper.className = "paper";
  const caption = document.createElement("figcaption");
  figure.append(paper, caption);
  return { figure, paper, caption, svg: "" };
}

function update(held: Held, { label, width, height, svg }: ScreenSheet): void {
  held.caption.textContent = label;
  held.paper.style.setProperty("--width", String(width));
  held.paper.style.setProperty("--height", String(height));
  if (held.svg === svg) return;
  held.svg = svg;
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  const focused = held.paper.contains(document.activeElement) ? document.activeElement : undefined;
  const sheet = document.importNode(drawn, true);
  for (const line of sheet.querySelectorAll("line")) strengthen(line);
  held.paper.replaceChildren(sheet);
  // The same piece of the new drawing takes over the keyboard.
  const piece = focused?.getAttribute("data-piece");
  const heir = piece ? held.paper.querySelector<SVGElement>(`[data-piece="${CSS.escape(piece)}"]`) : undefined;
  if (heir) {
    heir.setAttribute("tabindex", "0");
    heir.focus({ preventScroll: true });
  }
}

/**
 * Lets the style sheet draw a line by its weight: a hairline shrinks below a pixel of the screen and pales. What stands upright
 * or lies flat comes on whole pixels, and its ends meet those of others. On paper it stays as it is.
 */
function strengthen(line: SVGLineElement): void {
  const [x1, y1, x2, y2, weight] = ["x1", "y1", "x2", "y2", "stroke-width"].map((name) => line.getAttribute(name));
  line.style.setProperty("--weight", weight ?? "0");
  line.classList.toggle("straight", (x1 === x2 || y1 === y2) && !line.hasAttribute("stroke-dasharray"));
}
