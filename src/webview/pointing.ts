import type { Span } from "./protocol";
import type { Sheets } from "./sheets";

interface Face extends Span {
  readonly element: Element;
}

interface Piece {
  readonly outline: SVGRectElement;
  readonly faces: readonly Face[];
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** From pieces to the text and back: click or Enter selects where a piece's words come from, the cursor's item lights up. */
export class Pointing {
  private pieces: readonly Piece[] = [];
  private lit: string | undefined;
  private entered: { readonly piece: Piece; readonly face: number } | undefined;

  constructor(
    private readonly sheets: Sheets,
    private readonly select: (span: Span) => void,
  ) {
    sheets.area.addEventListener("click", (event) => this.click(event));
    sheets.area.addEventListener("keydown", (event) => this.key(event));
  }

  /** Learns the pieces anew after the sheets changed. One of them can be reached with Tab, the others with the arrow keys. */
  renew(): void {
    this.entered = undefined;
    this.pieces = [...this.sheets.area.querySelectorAll<SVGSVGElement>(".paper > svg")].flatMap(piecesOf);
    const entry = this.pieces.find(({ outline }) => outline === document.activeElement) ?? this.pieces[0];
    for (const { outline, faces } of this.pieces) {
      const words = faces.map(({ element }) => element.getAttribute("aria-label")).filter(Boolean);
      const differs = outline.classList.contains("differs") ? ", lies differently" : "";
      outline.setAttribute("role", "button");
      outline.setAttribute("aria-label", `Piece: ${words.join(", ") || "blank"}${differs}`);
      outline.setAttribute("tabindex", outline === entry?.outline ? "0" : "-1");
    }
  }

  /** Lights up the pieces whose words come from the span. `follow` brings one into view where none is. */
  light(span: Span | undefined, follow: boolean): void {
    const lit = this.pieces.filter(({ faces }) => span && faces.some((face) => overlap(face, span)));
    for (const { outline, faces } of this.pieces) {
      const on = span !== undefined && faces.some((face) => overlap(face, span));
      outline.classList.toggle("lit", on);
      for (const face of faces) face.element.classList.toggle("lit", span !== undefined && overlap(face, span));
    }
    const key = span && `${span.start}:${span.end}`;
    // Only on coming to another item: scrolling while one item is being typed in would fight the reader.
    if (follow && key !== this.lit && lit.length > 0 && !lit.some((piece) => this.inView(piece))) {
      lit[0]?.outline.scrollIntoView({ block: "center", inline: "nearest" });
    }
    this.lit = key;
  }

  private inView({ outline }: Piece): boolean {
    const view = this.sheets.area.getBoundingClientRect();
    const box = outline.getBoundingClientRect();
    return box.bottom > view.top && box.top < view.bottom && box.right > view.left && box.left < view.right;
  }

  private click({ clientX: x, clientY: y }: MouseEvent): void {
    const piece = this.pieces.find(({ outline }) => holds(outline.getBoundingClientRect(), x, y));
    if (!piece) return;
    const nearest = [...piece.faces].sort(
      (one, other) => distance(one.element, x, y) - distance(other.element, x, y),
    )[0];
    if (nearest) this.select({ start: nearest.start, end: nearest.end });
  }

  private key(event: KeyboardEvent): void {
    const piece = this.pieces.find(({ outline }) => outline === event.target);
    if (!piece || event.ctrlKey || event.metaKey || event.altKey) return;
    const way = arrows[event.key];
    if (way) this.step(piece, way);
    else if (event.key === "Enter" || event.key === " ") this.enter(piece);
    else return;
    event.preventDefault();
  }

  /** Once more on the same piece goes on to its next word. */
  private enter(piece: Piece): void {
    const next = this.entered?.piece === piece ? (this.entered.face + 1) % Math.max(1, piece.faces.length) : 0;
    this.entered = { piece, face: next };
    const face = piece.faces[next];
    if (face) this.select({ start: face.start, end: face.end });
  }

  /** To the nearest piece in a direction, a little off the straight way counting double. */
  private step(from: Piece, [right, down]: readonly [number, number]): void {
    const start = centre(from.outline);
    const ahead = this.pieces.flatMap((piece) => {
      const { x, y } = centre(piece.outline);
      const along = (x - start.x) * right + (y - start.y) * down;
      const aside = Math.abs((x - start.x) * down) + Math.abs((y - start.y) * right);
      return along > 1 && aside <= along * 2 ? [{ piece, cost: along + 2 * aside }] : [];
    });
    const next = ahead.sort((one, other) => one.cost - other.cost)[0]?.piece.outline;
    if (!next) return;
    for (const { outline } of this.pieces) outline.setAttribute("tabindex", outline === next ? "0" : "-1");
    next.focus();
  }
}

/** A text belongs to the piece that its middle lies on. */
function piecesOf(svg: SVGSVGElement): readonly Piece[] {
  const texts = [...svg.querySelectorAll("[data-start]")].map((element) => ({
    element,
    start: Number(element.getAttribute("data-start")),
    end: Number(element.getAttribute("data-end")),
    ...centre(element),
  }));
  return [...svg.querySelectorAll<SVGRectElement>("rect.piece")].map((outline) => {
    const box = outline.getBoundingClientRect();
    return { outline, faces: texts.filter(({ x, y }) => holds(box, x, y)) };
  });
}

function overlap(one: Span, other: Span): boolean {
  return one.start < other.end && other.start < one.end;
}

function holds(box: DOMRect, x: number, y: number): boolean {
  return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}

function centre(element: Element): { readonly x: number; readonly y: number } {
  const box = element.getBoundingClientRect();
  return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
}

function distance(element: Element, x: number, y: number): number {
  const middle = centre(element);
  return Math.hypot(middle.x - x, middle.y - y);
}
