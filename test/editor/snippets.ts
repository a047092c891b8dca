/** The text of a snippet as it comes in: placeholders as they are proposed, of choices the first, of chance one number. */
export function snippetText(body: readonly string[]): string {
  const values = new Map<string, string>();
  const whole = body.join("\n");
  for (const [, number, value] of whole.matchAll(/\$\{(\d+):([^}]*)\}/g)) values.set(number ?? "", value ?? "");
  return whole
    .replace(/\$\{RANDOM[^}]*\}/g, "40213")
    .replace(/\$\{(\d+):([^}]*)\}/g, "$2")
    .replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, "$1")
    .replace(/\$\{(\d+)\}/g, (_, number: string) => values.get(number) ?? "")
    .replace(/\$0/g, "");
}
