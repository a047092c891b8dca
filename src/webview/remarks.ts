import { part, setText } from "./page";
import type { Screen, Span } from "./protocol";

/** What is to be mended, folded away under the line; each leads to its place in the text. */
export class Remarks {
  private readonly details = part("remarks", HTMLDetailsElement);

  constructor(private readonly go: (span: Span) => void) {}

  show({ remarks, state }: Screen): void {
    this.details.hidden = remarks.length === 0;
    // Where there are no sheets to look at, the reasons are what there is to see.
    if (state === "empty") this.details.open = true;
    const [summary, list] = this.details.children;
    if (!summary || !list) return;
    setText(summary, remarks.length === 1 ? "1 thing to mend" : `${remarks.length} things to mend`);
    list.replaceChildren(
      ...remarks.map(({ severity, message, start, end }) => {
        const item = document.createElement("li");
        const button = document.createElement("button");
        button.type = "button";
        button.textContent = message;
        button.setAttribute("data-severity", severity);
        button.addEventListener("click", () => this.go({ start, end }));
        item.append(button);
        return item;
      }),
    );
  }
}
