import type { Remark } from "./remark.js";

/** The words of the convention for the three levels. */
const words = { error: "error", warning: "warning", note: "notice" } as const;

/** Per cent signs and line ends as the convention writes them. */
const escapeText = (text: string): string =>
  text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");

/** The same for a value in front of the two colons, where colons and commas part the values. */
const escapeValue = (text: string): string => escapeText(text).replaceAll(":", "%3A").replaceAll(",", "%2C");

/**
 * Remarks as lines that runners of continuous integration show beside the text:
 * `::error file=plan.light,line=7,col=3,title=unit.unknown::There is no unit ...`. An end column is given for one line
 * only, since the convention has none otherwise.
 */
export function renderAnnotations(remarks: readonly Remark[]): string {
  return remarks
    .map(({ code, level, message, place }) => {
      const { file, line, column, end_line: endLine, end_column: endColumn } = place;
      const values: (readonly [string, string | number | null])[] = [
        ["file", file],
        ["line", line],
        ["endLine", endLine],
        ["col", column],
        ["endColumn", line === endLine && endColumn !== column ? endColumn : null],
        ["title", code],
      ];
      const said = values.flatMap(([name, value]) =>
        value === null ? [] : [`${name}=${escapeValue(String(value))}`],
      );
      return `::${words[level]} ${said.join(",")}::${escapeText(message)}\n`;
    })
    .join("");
}
