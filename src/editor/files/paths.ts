/*
 * Paths as a unit writes them, on `/`-separated URI paths. Nothing here touches a file.
 */

/**
 * The absolute path of `written` seen from `folder`, or undefined where it leaves `root`, is absolute, names a scheme, or
 * cannot be decoded. `root` and `folder` are absolute.
 */
export function insidePath(root: string, folder: string, written: string): string | undefined {
  if (written === "" || /^[/\\]/.test(written) || /^[a-z][a-z0-9+.-]*:/i.test(written) || written.includes("\0")) {
    return undefined;
  }
  const steps = folder.split("/").filter(Boolean);
  for (const step of written.split(/[/\\]/)) {
    if (step === "" || step === ".") continue;
    if (step === "..") {
      if (steps.pop() === undefined) return undefined;
    } else steps.push(step);
  }
  const path = `/${steps.join("/")}`;
  const fence = root.endsWith("/") ? root : `${root}/`;
  return path.startsWith(fence) ? path : undefined;
}

/** How a unit in `folder` writes the place of a file, so that {@link insidePath} leads there. Both are absolute. */
export function pathFrom(folder: string, file: string): string {
  const [from, to] = [folder, file].map((path) => path.split("/").filter(Boolean));
  let shared = 0;
  while (from?.[shared] !== undefined && from[shared] === to?.[shared] && shared < (to?.length ?? 0) - 1) shared++;
  return [...(from ?? []).slice(shared).map(() => ".."), ...(to ?? []).slice(shared)].join("/");
}

/** `folder` and the folders above it up to `root`, nearest first; only `folder` where it does not lie in `root`. */
export function upwards(root: string, folder: string): readonly string[] {
  const fence = trim(root);
  const found = [trim(folder)];
  if (found[0] !== fence && !trim(folder).startsWith(fence === "/" ? "/" : `${fence}/`)) return found;
  for (let path = trim(folder); path !== fence; ) {
    path = path.slice(0, path.lastIndexOf("/")) || "/";
    found.push(path);
  }
  return found;
}

function trim(path: string): string {
  return path.length > 1 ? path.replace(/\/+$/, "") || "/" : path;
}

/** Whether a setting names a place by itself: `/home/me/out`, `C:\out`, `\\server\out`. */
export function isAbsolute(setting: string): boolean {
  return /^([/\\]|[a-z]:[/\\])/i.test(setting);
}
