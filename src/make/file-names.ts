/**
 * A title as part of a file name that every file system takes: letters, digits and hyphens; NFC; at most 60 units; unique
 * among the names given out, also where a file system ignores case.
 */
export class FileNames {
  private readonly taken = new Set<string>();

  take(title: string): string {
    const base = safeName(title);
    let name = base;
    for (let i = 2; this.taken.has(name.toLowerCase()); i++) name = `${base}-${i}`;
    this.taken.add(name.toLowerCase());
    return name;
  }
}

export function safeName(title: string): string {
  const joined = title
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  const cut = [...joined].slice(0, 60).join("").replace(/-+$/, "");
  return cut === "" ? "untitled" : cut;
}
