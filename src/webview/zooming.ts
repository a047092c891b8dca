import { part } from "./page";
import type { Zoom } from "./protocol";
import type { Sheets } from "./sheets";

/** CSS pixels of a millimetre at 100 %. */
const pixels = 96 / 25.4;
/** Pixels beside and between columns; the style sheet's `--gap`. */
const gap = 24;
const steps = [10, 15, 20, 25, 33, 50, 67, 80, 100, 125, 150, 200, 300, 400];

/** The size of the sheets: fits the width, or percent of the size on paper. Keys + − 0. */
export class Zooming {
  private readonly size = part("size", HTMLButtonElement);
  private readonly fit = part("fit", HTMLButtonElement);
  private readonly group = part("zoom", HTMLElement);
  private percent = 100;

  constructor(
    private readonly sheets: Sheets,
    public zoom: Zoom,
    private readonly changed: () => void,
  ) {
    part("smaller", HTMLButtonElement).addEventListener("click", () => this.step(-1));
    part("larger", HTMLButtonElement).addEventListener("click", () => this.step(1));
    this.size.addEventListener("click", () => this.set(100));
    this.fit.addEventListener("click", () => this.set("fit"));
    new ResizeObserver(() => this.apply()).observe(sheets.area);
    window.addEventListener("keydown", (event) => this.key(event));
    sheets.area.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
  }

  /** Sets the size of a millimetre. The point in the middle of the view stays there. */
  apply(): void {
    const { area } = this.sheets;
    const { width, columns } = this.sheets.spread;
    this.group.hidden = width === 0;
    const room = area.clientWidth - gap * (columns + 1);
    const fitted = width > 0 && room > 0 ? (room / (width * pixels)) * 100 : 100;
    // Half a percent short of the edge, so that rounding never brings a horizontal scroll bar.
    const percent = this.zoom === "fit" ? Math.min(Math.max(fitted * 0.995, 5), 400) : this.zoom;
    const middle = (area.scrollTop + area.clientHeight / 2) / Math.max(1, area.scrollHeight);
    const moved = percent !== this.percent && area.scrollTop > 0;
    this.percent = percent;
    area.style.setProperty("--mm", `${(percent / 100) * pixels}px`);
    // A pixel of the screen in millimetres of the sheet, the unit in which its lines are drawn.
    area.style.setProperty("--pixel", String(1 / ((percent / 100) * pixels * window.devicePixelRatio)));
    if (moved) area.scrollTop = middle * area.scrollHeight - area.clientHeight / 2;
    this.size.textContent = `${Math.round(percent)} %`;
    this.fit.setAttribute("aria-pressed", String(this.zoom === "fit"));
  }

  private set(zoom: Zoom): void {
    this.zoom = zoom;
    this.apply();
    this.changed();
  }

  private step(by: 1 | -1): void {
    const next =
      by > 0 ? steps.find((step) => step > this.percent + 0.5) : steps.findLast((step) => step < this.percent - 0.5);
    if (next !== undefined) this.set(next);
  }

  private key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLSelectElement) return;
    if (event.key === "+" || event.key === "=") this.step(1);
    else if (event.key === "-") this.step(-1);
    else if (event.key === "0") this.set("fit");
    else return;
    event.preventDefault();
  }

  private wheel(event: WheelEvent): void {
    if (!event.ctrlKey || event.deltaY === 0) return;
    event.preventDefault();
    this.step(event.deltaY < 0 ? 1 : -1);
  }
}
