/** A YAML scalar for a section's name: bare where YAML reads it as this very text, else in quotation marks. */
export function quoted(name: string): string {
  const bare = /^[\p{L}(][^:#,[\]{}&*!|>'"%@`]*$/u.test(name) && !/^(true|false|null|~|yes|no|on|off)$/i.test(name);
  return bare ? name : JSON.stringify(name);
}
