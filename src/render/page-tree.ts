import { visible } from "../diagnostics/print-visible.js";
import type { ViewColumn, ViewPart, ViewWords } from "./parts.js";

/** A node of the syntax tree of a Markdown page (mdast 4, with the table of its GFM extension). */
export interface PageNode {
  readonly type: string;
  readonly children?: readonly PageNode[];
  readonly value?: string;
  readonly depth?: number;
  readonly ordered?: boolean;
  readonly spread?: boolean;
  readonly lang?: string | null;
  /** What it becomes in HTML, where that is something else (the `data` of mdast-util-to-hast). */
  readonly data?: { readonly hName: string; readonly hChildren: readonly object[] };
  readonly align?: readonly ("left" | "right" | null)[];
}

/** Words in one line, as a reader of the page sees them. */
const text = (value: string): PageNode => ({ type: "text", value: visible(value).replace(/\s+/g, " ") });

function inline(words: ViewWords): PageNode {
  if (words.kind === "break") return { type: "break" };
  return words.kind === "strong" ? { type: "strong", children: [text(words.text)] } : text(words.text);
}

const cellRow = (cells: readonly string[]): PageNode => ({
  type: "tableRow",
  children: cells.map((cell) => ({ type: "tableCell", children: cell === "" ? [] : [text(cell)] })),
});

const table = (columns: readonly ViewColumn[], rows: readonly (readonly string[])[]): PageNode => ({
  type: "table",
  align: columns.map(({ align }) => align),
  children: [cellRow(columns.map(({ title }) => title)), ...rows.map(cellRow)],
});

function node(part: ViewPart): PageNode {
  switch (part.kind) {
    case "heading":
      return { type: "heading", depth: part.level, children: [text(part.text)] };
    case "paragraph":
      return { type: "paragraph", children: part.inlines.map(inline) };
    case "list": {
      const items = part.items.map((item) => ({
        type: "listItem",
        spread: false,
        children: [{ type: "paragraph", children: [text(item)] }],
      }));
      return { type: "list", ordered: false, spread: false, children: items };
    }
    case "table":
      return table(part.columns, part.rows);
    case "code":
      return { type: "code", lang: part.language === "" ? null : part.language, value: part.text };
    case "figure":
      return {
        type: "paragraph",
        children: [text(part.words)],
        data: { hName: "figure", hChildren: [part.element] },
      };
    default:
      return part satisfies never;
  }
}

/** The parts of a view as nodes of the syntax tree of a Markdown page: plain data, texts as texts, no HTML. */
export function partsTree(parts: readonly ViewPart[]): readonly PageNode[] {
  return parts.map(node);
}
