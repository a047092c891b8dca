import { readUnit } from "../../../unit/read";

/*
 * How a name is written in each place, so that it is read back as that very name. Undefined where no way of writing does that.
 */

export function headingText(name: string): string | undefined {
  return [name, escaped(name)].find((written) => readUnit(`## ${written}\n`).sections[0]?.name === name);
}

/** In a cell of a forms table. */
export function cellText(name: string): string | undefined {
  return [name, escaped(name)]
    .map((written) => written.replace(/(?<!\\)\|/g, "\\|"))
    .find((written) => {
      const [section] = readUnit(`## A\n\n|  | ${written} |\n| - | - |\n| ${written} | b |\n`).sections;
      const [table] = section?.tables ?? [];
      return table?.columns[0]?.text === name && table.persons[0]?.text === name;
    });
}

/** `#column` or `#section/column`, in angle brackets where Markdown wants them. */
export function tieTarget(column: string, section?: string): string | undefined {
  const path = section === undefined ? column : `${section}/${column}`;
  const target = /[\s()]/u.test(path) ? `<#${path}>` : `#${path}`;
  return tieOf(`[a](${target})`, column, section, undefined) ? target : undefined;
}

/** The person behind a target, in quotation marks. */
export function personTitle(person: string): string | undefined {
  const title = `"${person.replace(/["\\]/g, "\\$&")}"`;
  return tieOf(`[a](#b ${title})`, "b", undefined, person) ? title : undefined;
}

/** The path of a picture behind its brackets, in angle brackets where Markdown wants them. */
export function pictureTarget(path: string): string | undefined {
  const escaped = path.replaceAll("%", "%25");
  return [path, `<${path}>`, escaped, `<${escaped}>`].find((target) => {
    const { pairs } = readUnit(`## A\n\n- ![a](${target}) = b\n`).sections[0] ?? {};
    return pairs?.[0]?.left.answers[0].picture?.path === path;
  });
}

function tieOf(link: string, column: string, section: string | undefined, person: string | undefined): boolean {
  const ties = readUnit(`## A\n\n- [x] ${link} c\n`).sections[0]?.statements[0]?.ties ?? [];
  const [tie] = ties;
  return ties.length === 1 && tie?.column === column && tie.section === section && tie.person === person;
}

function escaped(name: string): string {
  return name.replace(/[\\`*_[\]<&#|]/g, "\\$&");
}
