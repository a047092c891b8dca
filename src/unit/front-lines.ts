import schema from "../../schemas/front-matter.schema.json";

/** Numbers of lines: where the settings begin, the line after them, and the line that Markdown begins at. */
export interface FrontLines {
  readonly first: number;
  readonly after: number;
  readonly body: number;
}

/** How many options of a unit stand in some lines. */
export function settingsIn(textOf: (number: number) => string, from: number, to: number): number {
  let found = 0;
  for (let number = from; number < to; number++) {
    const name = /^([\w-]+)[ \t]*[:=：]/u.exec(textOf(number))?.[1];
    if (name !== undefined && Object.hasOwn(schema.properties, name)) found++;
  }
  return found;
}
