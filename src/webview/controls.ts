import { part, setText } from "./page";
import type { Choice, Entry, Screen } from "./protocol";

/** The choices above the sheets. What leaves nothing to choose is not shown. */
export class Controls {
  private readonly activity = part("activity", HTMLSelectElement);
  private readonly level = part("level", HTMLSelectElement);
  private readonly version = part("version", HTMLSelectElement);
  private readonly versionName = part("versionName", HTMLElement);
  private readonly views = part("views", HTMLElement);
  private readonly line = part("line", HTMLElement);
  private choice: Choice = { view: "dealt" };

  constructor(private readonly chosen: (choice: Choice) => void) {
    this.activity.addEventListener("change", () => chosen({ activity: this.activity.value, view: this.choice.view }));
    this.level.addEventListener("change", () => chosen({ ...this.choice, level: this.level.value }));
    this.version.addEventListener("change", () => chosen({ ...this.choice, version: Number(this.version.value) }));
    this.views.addEventListener("keydown", (event) => this.step(event));
  }

  show(screen: Screen): void {
    this.choice = screen.choice;
    fill(this.activity, screen.activities, screen.choice.activity);
    fill(this.level, screen.levels, screen.choice.level);
    fill(this.version, screen.versions, String(screen.choice.version));
    setText(this.versionName, screen.versionName);
    this.showViews(screen);
    setText(this.line, screen.line);
    this.line.setAttribute("data-state", screen.state);
  }

  private showViews({ views, choice }: Screen): void {
    this.views.hidden = views.length < 2;
    const buttons = [...this.views.querySelectorAll("button")];
    if (buttons.map(({ value }) => value).join() !== views.map(({ value }) => value).join()) {
      const held = buttons.some((button) => button === document.activeElement);
      this.views.replaceChildren(...views.map((view) => this.viewButton(view)));
      if (held) this.views.querySelector<HTMLButtonElement>(`button[value="${choice.view}"]`)?.focus();
    }
    for (const button of this.views.querySelectorAll("button")) {
      const checked = button.value === choice.view;
      button.setAttribute("aria-checked", String(checked));
      button.tabIndex = checked ? 0 : -1;
    }
  }

  private viewButton({ value, label }: Entry): HTMLButtonElement {
    const button = document.createElement("button");
    button.type = "button";
    button.value = value;
    button.textContent = label;
    button.setAttribute("role", "radio");
    button.addEventListener("click", () => this.view(button));
    return button;
  }

  private view({ value }: HTMLButtonElement): void {
    if (value === "dealt" || value === "solved" || value === "second" || value === "papers")
      this.chosen({ ...this.choice, view: value });
  }

  /** Arrow keys go from view to view, as in every group of radio buttons. */
  private step(event: KeyboardEvent): void {
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const buttons: readonly Element[] = [...this.views.querySelectorAll("button")];
    const at = document.activeElement ? buttons.indexOf(document.activeElement) : -1;
    const next = buttons[(at + by + buttons.length) % buttons.length];
    if (!(next instanceof HTMLButtonElement)) return;
    next.focus();
    this.view(next);
  }
}

function fill(select: HTMLSelectElement, entries: readonly Entry[], value: string | undefined): void {
  const field = select.closest("label");
  if (field) field.hidden = entries.length < 2;
  const present = [...select.options].map((option) => `${option.value}\n${option.text}`).join("\n");
  if (present !== entries.map((entry) => `${entry.value}\n${entry.label}`).join("\n")) {
    select.replaceChildren(...entries.map((entry) => new Option(entry.label, entry.value)));
  }
  if (value !== undefined) select.value = value;
}
