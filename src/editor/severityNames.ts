import { codes } from "../check/codes";
import { nearest } from "../check/nearest";

/** What the user's setting `cutwork.severities` names that is no finding, in a sentence; undefined where all are some. */
export function unknownNames(setting: unknown): string | undefined {
  if (typeof setting !== "object" || setting === null) return undefined;
  const known = codes();
  const unknown = Object.keys(setting).filter((code) => !known.includes(code));
  if (unknown.length === 0) return undefined;
  const named = unknown.map((code) => {
    const [near] = nearest(code, known, true);
    return `“${code}”${near === undefined ? "" : ` (“${near}”?)`}`;
  });
  return `The setting cutwork.severities names what is no finding, which changes nothing: ${named.join(", ")}.`;
}
