import { visible } from "../diagnostics/print-visible.js";
import { htmlText } from "./html-escape.js";
import { figureHtml, type ViewColumn, type ViewPart, type ViewWords } from "./parts.js";

const safe = (text: string): string => htmlText(visible(text));

const words = (part: ViewWords): string => {
  if (part.kind === "break") return "<br>\n";
  return part.kind === "strong" ? `<strong>${safe(part.text)}</strong>` : safe(part.text);
};

function table(columns: readonly ViewColumn[], rows: readonly (readonly string[])[]): string {
  const row = (tag: "th" | "td", cells: readonly string[]): string => {
    const made = cells.map((cell, index) => {
      const align = columns[index]?.align ?? null;
      return `<${tag}${align === null ? "" : ` style="text-align:${align}"`}>${safe(cell)}</${tag}>`;
    });
    return `<tr>${made.join("")}</tr>`;
  };
  const head = row(
    "th",
    columns.map(({ title }) => title),
  );
  const body = rows.map((cells) => row("td", cells)).join("\n");
  return `<table>\n<thead>\n${head}\n</thead>\n<tbody>\n${body}\n</tbody>\n</table>`;
}

function print(part: ViewPart): string {
  switch (part.kind) {
    case "heading":
      return `<h${part.level}>${safe(part.text)}</h${part.level}>`;
    case "paragraph":
      return `<p>${part.inlines.map(words).join("")}</p>`;
    case "list":
      return `<ul>\n${part.items.map((item) => `<li>${safe(item)}</li>`).join("\n")}\n</ul>`;
    case "table":
      return table(part.columns, part.rows);
    case "code": {
      const language = part.language === "" ? "" : ` class="language-${htmlText(part.language)}"`;
      return `<pre><code${language}>${htmlText(part.text)}</code></pre>`;
    }
    case "figure":
      return figureHtml(part.svg);
    default:
      return part satisfies never;
  }
}

/** The parts of a view as HTML for the inside of a page: no script, no address, no text that could be a tag. */
export function partsHtml(parts: readonly ViewPart[]): string {
  return parts.map((part) => `${print(part)}\n`).join("");
}
