/** Characters that could start a link, a tag, an entity, an emphasis or a block. */
const active = /[!"#$%&'()*+,\-./:;<=>?@[\\\]^_`{|}~]/g;
/** The ones of these that a reader would stumble over and that are harmless inside a line. */
const harmless: ReadonlySet<string> = new Set(["%", "'", ",", ";", "?", '"', "/", "(", ")", "$"]);

/**
 * A text of a user as Markdown (CommonMark 0.31): it stays that text and can be no link, no picture, no heading, no
 * table border and no HTML.
 */
export function markdownText(text: string): string {
  const line = text.replace(/[\s\0]+/g, " ").trim();
  return line.replace(active, (sign, at: number) => {
    if (sign === "<") return "&lt;";
    if (sign === ">") return "&gt;";
    if (sign === "&") return "&amp;";
    if (harmless.has(sign)) return sign;
    if ((sign === "." || sign === ":" || sign === "-" || sign === "=") && isQuiet(line, at)) return sign;
    return `\\${sign}`;
  });
}

/** Inside a number or between letter and blank these signs mean nothing to Markdown. */
function isQuiet(line: string, at: number): boolean {
  const sign = line[at] ?? "";
  const before = line.slice(0, at);
  if (before.trim() === "") return false;
  if (sign === ".") return !/^\s*\d+$/.test(before) && !/www$/i.test(before);
  if (sign === ":") return line[at + 1] === " " || at + 1 === line.length;
  return /\w/.test(line[at + 1] ?? "") && !line.includes("|");
}
