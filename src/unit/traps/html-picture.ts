/** `![alt](path)` for an `<img>` tag with a relative path; undefined for any other tag. */
export function markdownPicture(tag: string): string | undefined {
  if (!/^<img[\s/>]/i.test(tag)) return undefined;
  const value = (name: string): string | undefined => {
    const match = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)'|([^\\s"'>]+))`, "i").exec(tag);
    return (match?.[1] ?? match?.[2] ?? match?.[3])?.trim();
  };
  const path = value("src") ?? "";
  if (path === "" || /[<>\n]/.test(path)) return undefined;
  const alt = (value("alt") ?? "").replace(/[[\]\\]/g, "\\$&");
  return `![${alt}](${/[\s()]/.test(path) ? `<${path}>` : path})`;
}
