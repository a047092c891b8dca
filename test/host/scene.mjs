import { mkdir } from "node:fs/promises";
import { createServer } from "node:http";
import path from "node:path";

/*
 * A little HTTP window onto VS Code's page. Tests in a web worker have neither Node nor a browser's page: they send what is
 * to be done here, as JSON by POST, and get `{ value }` or `{ error }` back. driver.ts is the other end.
 */

/** How long a command waits for what it asks for, in milliseconds. */
const patience = 30_000;

/**
 * What can be asked. Each gets the frame that it is about, the page, and the request.
 * Texts are those that a person sees (`innerText`).
 */
const actions = {
  text: async ({ frame, selector }) => frame.locator(selector ?? "body").allInnerTexts(),
  count: async ({ frame, selector }) => frame.locator(selector).count(),
  attribute: async ({ frame, selector, name }) =>
    frame.locator(selector).first().getAttribute(name, { timeout: patience }),
  value: async ({ frame, selector }) => frame.locator(selector).first().inputValue({ timeout: patience }),
  click: async ({ frame, selector, options }) =>
    frame
      .locator(selector)
      .first()
      .click({ timeout: patience, ...options }),
  hover: async ({ frame, selector }) => frame.locator(selector).first().hover({ timeout: patience }),
  focus: async ({ frame, selector }) => frame.locator(selector).first().focus({ timeout: patience }),
  fill: async ({ frame, selector, text }) => frame.locator(selector).first().fill(text, { timeout: patience }),
  select: async ({ frame, selector, text }) =>
    frame.locator(selector).first().selectOption(text, { timeout: patience }),
  wait: async ({ frame, selector, state }) => frame.locator(selector).first().waitFor({ state, timeout: patience }),
  evaluate: async ({ frame, expression }) => frame.evaluate(expression),
  type: async ({ page, text }) => page.keyboard.type(text),
  press: async ({ page, keys }) => page.keyboard.press(keys),
  shot: async ({ frame, page, selector, file }) => {
    await mkdir(path.dirname(file), { recursive: true });
    if (selector === undefined) await page.screenshot({ path: file });
    else await frame.locator(selector).first().screenshot({ path: file, timeout: patience });
    return file;
  },
  webviews: async ({ page }) => {
    const frames = await webviewFrames(page);
    return Promise.all(
      frames.map(async (frame) => ({
        title: await frame.title(),
        text: (await frame.locator("body").allInnerTexts()).join("\n"),
      })),
    );
  },
};

/** VS Code puts a webview's own document into `<iframe id="active-frame">`; one that is hidden does not count. */
async function webviewFrames(page) {
  const found = [];
  for (const frame of page.frames().slice(1))
    try {
      const element = await frame.frameElement();
      if ((await element.getAttribute("id")) === "active-frame" && (await element.isVisible())) found.push(frame);
    } catch {} // a frame that went away meanwhile
  return found;
}

/** The webview whose title is as asked for, or just the last one. Waits for it. */
async function webviewFrame(page, title) {
  const deadline = Date.now() + patience;
  for (;;) {
    const frames = await webviewFrames(page);
    for (const frame of frames.reverse())
      if (title === undefined || (await frame.title().catch(() => "")) === title) return frame;
    if (Date.now() > deadline)
      throw new Error(title === undefined ? "no webview is open" : `no webview titled ${title}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

/**
 * Serves a page's scenes at a port of the loopback address.
 * `getPage` may resolve late: the service can be up before VS Code's page is. Screenshots land in the folder `shots`.
 */
export async function serveScenes({ port, getPage, shots }) {
  const answer = async (request) => {
    const action = actions[request.action];
    if (action === undefined) throw new Error(`no action ${request.action}`);
    const page = await getPage();
    const webview = request.scene === "webview";
    const frame = webview ? await webviewFrame(page, request.title) : page.mainFrame();
    const file = request.name === undefined ? undefined : path.join(shots, `${path.basename(request.name)}.png`);
    return action({ ...request, page, frame, file });
  };

  const server = createServer(async (request, response) => {
    response.setHeader("access-control-allow-origin", "*");
    try {
      const chunks = [];
      for await (const chunk of request) chunks.push(chunk);
      const value = await answer(JSON.parse(Buffer.concat(chunks).toString("utf8")));
      response.end(JSON.stringify({ value: value ?? null }));
    } catch (error) {
      response.end(JSON.stringify({ error: String(error?.message ?? error) }));
    }
  });
  await new Promise((resolve, reject) => {
    server.on("error", reject).listen(port, "127.0.0.1", resolve);
  });
  return server;
}
