/** An element of the page's frame. Throws where the frame and the script do not belong together. */
export function part<Kind extends Element>(id: string, kind: new () => Kind): Kind {
  const found = document.getElementById(id);
  if (found instanceof kind) return found;
  throw new Error(`The page has no ${kind.name} “${id}”.`);
}

/** Sets a text only where it differs, so that assistive technology is not told the same twice. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
