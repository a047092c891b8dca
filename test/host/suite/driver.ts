import * as vscode from "vscode";

/*
 * VS Code's page for the tests: what a person sees and does there, as the extension API does not tell. It speaks to scene.mjs
 * over the loopback address, so that the same tests run in Node and in a web worker.
 */

export type Modifier = "Alt" | "Control" | "Meta" | "Shift";

export interface ClickOptions {
  readonly button?: "left" | "right" | "middle";
  readonly clickCount?: number;
  readonly modifiers?: readonly Modifier[];
  /** Clicks where the element is, whatever VS Code has put over it. */
  readonly force?: boolean;
  /** In CSS pixels from the element's top left corner; the middle by default. */
  readonly position?: { readonly x: number; readonly y: number };
}

/**
 * One document on the screen. Selectors are Playwright's (CSS, and `text=…`). Where an action needs an element it takes the
 * first that fits and waits up to 30 s for it; then it rejects.
 */
export class Scene {
  constructor(private readonly place: { readonly scene: "window" | "webview"; readonly title?: string }) {}

  /** The visible texts of all elements that fit, without waiting; of the whole document by default. */
  async text(selector?: string): Promise<readonly string[]> {
    return texts(await this.ask("text", { selector }));
  }

  /** How many elements fit, without waiting. */
  async count(selector: string): Promise<number> {
    return Number(await this.ask("count", { selector }));
  }

  /** An attribute's value, or undefined where the element has none of that name. */
  async attribute(selector: string, name: string): Promise<string | undefined> {
    const value = await this.ask("attribute", { selector, name });
    return typeof value === "string" ? value : undefined;
  }

  /** What an input field or a list of choices holds. */
  async value(selector: string): Promise<string> {
    return String(await this.ask("value", { selector }));
  }

  async click(selector: string, options: ClickOptions = {}): Promise<void> {
    await this.ask("click", { selector, options });
  }

  async hover(selector: string): Promise<void> {
    await this.ask("hover", { selector });
  }

  async focus(selector: string): Promise<void> {
    await this.ask("focus", { selector });
  }

  /** Replaces what an input field holds. */
  async fill(selector: string, text: string): Promise<void> {
    await this.ask("fill", { selector, text });
  }

  /** Chooses in a `<select>`, by value or label. */
  async select(selector: string, text: string): Promise<void> {
    await this.ask("select", { selector, text });
  }

  /** Waits until an element is there to be seen (by default), hidden, or gone. */
  async waitFor(selector: string, state: "visible" | "hidden" | "attached" | "detached" = "visible"): Promise<void> {
    await this.ask("wait", { selector, state });
  }

  /** Evaluates an expression in the document; its result must survive JSON. */
  async evaluate(expression: string): Promise<unknown> {
    return this.ask("evaluate", { expression });
  }

  /** Takes a picture of the window, or of one element; resolves to its path (`.test-out/shots/KIND-NAME.png`). */
  async shot(name: string, selector?: string): Promise<string> {
    return String(await this.ask("shot", { name: `${settings().get<string>("kind") ?? "node"}-${name}`, selector }));
  }

  private ask(action: string, request: object): Promise<unknown> {
    return ask({ ...this.place, action, ...request });
  }
}

/** VS Code's window itself. */
export const workbench = new Scene({ scene: "window" });

/** The webview whose document has this title, or the newest one. Actions wait until it is there. */
export const webview = (title?: string): Scene =>
  new Scene({ scene: "webview", ...(title === undefined ? {} : { title }) });

/** Title and visible text of every webview that is to be seen now. */
export async function webviews(): Promise<readonly { readonly title: string; readonly text: string }[]> {
  const found = await ask({ scene: "window", action: "webviews" });
  return Array.isArray(found) ? found.map(({ title, text }) => ({ title: String(title), text: String(text) })) : [];
}

export const keyboard = {
  /** Types into whatever has the focus. */
  type: async (text: string): Promise<void> => {
    await ask({ scene: "window", action: "type", text });
  },
  /** Presses one key or chord, such as `Control+Shift+P` or `Escape`. */
  press: async (keys: string): Promise<void> => {
    await ask({ scene: "window", action: "press", keys });
  },
};

/**
 * Asks until the answer is truthy and resolves to it. Rejects after the given time (milliseconds) with the last error, or with
 * what was being waited for.
 */
export async function until<T>(
  what: string,
  ask: () => T | Promise<T>,
  milliseconds = 30_000,
): Promise<NonNullable<T>> {
  const deadline = Date.now() + milliseconds;
  for (;;) {
    let reason: unknown;
    try {
      const answer = await ask();
      if (answer) return answer;
    } catch (error) {
      reason = error;
    }
    if (Date.now() > deadline) throw reason ?? new Error(`waited in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

/**
 * Resolves when all that the extensions have told the window, and the window them, has arrived: what comes back now comes after
 * it. What an extension still waits for with a timer of its own is not among it.
 */
export async function arrived(): Promise<void> {
  await vscode.commands.executeCommand("setContext", "cutworkTest.turn", Date.now());
}

const settings = () => vscode.workspace.getConfiguration("cutworkTest");

async function ask(request: object): Promise<unknown> {
  const port = settings().get<number>("scenes");
  if (port === undefined) throw new Error("this run has no scenes: start it with test/host/run.mjs");
  const response = await fetch(`http://127.0.0.1:${port}/`, { method: "POST", body: JSON.stringify(request) });
  const answer: unknown = await response.json();
  if (typeof answer !== "object" || answer === null) throw new Error("an answer that is no object");
  if ("error" in answer) throw new Error(String(answer.error));
  return "value" in answer ? answer.value : undefined;
}

const texts = (value: unknown): readonly string[] => (Array.isArray(value) ? value.map(String) : []);
