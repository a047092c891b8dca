import { Controls } from "./controls";
import { Pointing } from "./pointing";
import type { FromPage, SavedState, Screen, Span, ToPage } from "./protocol";
import { Remarks } from "./remarks";
import { Sheets } from "./sheets";
import { Zooming } from "./zooming";

/*
 * The preview's page: shows the screens that the editor sends, tells it what was chosen and clicked, and keeps where it was.
 */

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): SavedState | undefined;
  setState(state: SavedState): void;
};

const editor = acquireVsCodeApi();
const unit = document.body.getAttribute("data-unit") ?? "";
const former = editor.getState();

let screen: Screen | undefined;
let light: Span | undefined;
// Where the page was before a reload; waits for the sheets, without which there is nothing to scroll.
let comeBack = former?.scroll;

const sheets = new Sheets();
const zooming = new Zooming(sheets, former?.zoom ?? "fit", keep);
const pointing = new Pointing(sheets, (span) => editor.postMessage({ type: "select", span }));
const controls = new Controls((choice) => editor.postMessage({ type: "choose", choice }));
const remarks = new Remarks((span) => editor.postMessage({ type: "select", span }));

window.addEventListener("message", ({ data }: MessageEvent<ToPage>) => {
  if (data.type === "show") show(data.screen);
  else {
    light = data.span;
    pointing.light(light, true);
  }
});
sheets.area.addEventListener("scroll", later(keep, 200));
editor.postMessage(former ? { type: "ready", choice: former.choice } : { type: "ready" });

function show(next: Screen): void {
  const same = screen && JSON.stringify(screen.choice) === JSON.stringify(next.choice);
  screen = next;
  controls.show(next);
  remarks.show(next);
  sheets.show(next.columns);
  zooming.apply();
  pointing.renew();
  pointing.light(light, false);
  if (comeBack) {
    sheets.area.scrollTo(comeBack.x, comeBack.y);
    comeBack = undefined;
  } else if (!same) sheets.area.scrollTo(0, 0);
  keep();
}

function keep(): void {
  if (!screen) return;
  const { scrollLeft: x, scrollTop: y } = sheets.area;
  editor.setState({ unit, choice: screen.choice, zoom: zooming.zoom, scroll: { x, y } });
}

function later(action: () => void, milliseconds: number): () => void {
  let waiting: number | undefined;
  return () => {
    clearTimeout(waiting);
    waiting = setTimeout(action, milliseconds);
  };
}
