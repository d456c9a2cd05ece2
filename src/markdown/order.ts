import { type FigureName, figureTable, gapOf } from "../index.js";

/** What a page may show of a recipe. */
export const views = ["report", "headline", "table", "chart", "figure"] as const;
/** One of these. */
export type View = (typeof views)[number];

/** What a fence or a mark of a page asks for. */
export interface Order {
  readonly view: View;
  /** The title of the table that is shown or drawn; null for all tables, and for other views. */
  readonly title: string | null;
  /** The figure that is drawn; null where the view is no figure. */
  readonly figure: FigureName | null;
  /** The light whose throw, fall-off or edge is drawn; null for the key, and for the edges of all. */
  readonly light: string | null;
  /** From an edge to the surface behind it, m; null for the usual one. */
  readonly gap: number | null;
  /** The recipe's file by its path from the page; null where the recipe stands in the fence. */
  readonly file: string | null;
  /** The variant's title; null for the recipe itself. */
  readonly variant: string | null;
  /** Level of the topmost heading, from 1 to 6; null for that of the page's options. */
  readonly level: number | null;
  /** Whether the text of the recipe is shown before the view. */
  readonly code: boolean;
}

/** An order, or a sentence on what is wrong with it and what to write. */
export type ReadOrder =
  | { readonly order: Order; readonly problem?: never }
  | { readonly order?: never; readonly problem: string };

type Word = { readonly quoted: boolean; readonly text: string };

const shape = /\s*(?:"([^"]*)"|'([^']*)'|([^\s"']+))/y;
const optionNames: readonly string[] = ["of", "variant", "headings", "code", "light", "gap"];
const known = "`report`, `headline`, `table`, `chart` and `figure`";
const options = '`of "FILE"`, `variant "TITLE"`, `headings NUMBER`, `light "NAME"`, `gap LENGTH` and `code`';

/** The words of an order; null where a quotation mark is never closed. */
function wordsOf(text: string): readonly Word[] | null {
  const trimmed = text.trim();
  const words: Word[] = [];
  shape.lastIndex = 0;
  while (shape.lastIndex < trimmed.length) {
    const found = shape.exec(trimmed);
    if (found === null) return null;
    const quoted = found[1] ?? found[2];
    words.push({ quoted: quoted !== undefined, text: quoted ?? found[3] ?? "" });
  }
  return words;
}

/**
 * Reads what stands behind the word `halfshade`: `report`, `headline`, `table "TITLE"`, `chart "TITLE"` or `figure NAME`, and in
 * any order `of "FILE"`, `variant "TITLE"`, `headings NUMBER`, `light "NAME"`, `gap LENGTH`, `code`. Without a view it is the report.
 */
export function readOrder(text: string): ReadOrder {
  const words = wordsOf(text);
  if (words === null)
    return { problem: "A quotation mark is never closed: write a title as \"...\" or '...'." };
  const first = words[0];
  const named = views.find((one) => first !== undefined && !first.quoted && one === first.text);
  if (named === undefined && first !== undefined && (first.quoted || !optionNames.includes(first.text)))
    return { problem: `There is no view "${first.text}". A page can show ${known}.` };
  const view = named ?? "report";
  const after = named === undefined ? [...words] : words.slice(1);
  const title =
    (view === "table" || view === "chart") && after[0]?.quoted === true ? after.shift()?.text : undefined;
  const figure = view === "figure" ? figureOf(after.shift()) : null;
  if (typeof figure === "object" && figure !== null) return figure;
  return readOptions(
    {
      view,
      title: title ?? null,
      figure,
      light: null,
      gap: null,
      file: null,
      variant: null,
      level: null,
      code: false,
    },
    after,
  );
}

/** The figure that a word names, or what is wrong with it. */
function figureOf(word: Word | undefined): FigureName | { readonly problem: string } {
  const found = figureTable.find(({ name }) => word !== undefined && !word.quoted && word.text === name);
  if (found !== undefined) return found.name;
  const names = figureTable.map(({ name }) => `\`${name}\``).join(", ");
  const said = word === undefined ? "Say which figure" : `There is no figure "${word.text}"`;
  return { problem: `${said}: \`figure\` takes one of ${names}.` };
}

function readOptions(start: Order, words: readonly Word[]): ReadOrder {
  let order = start;
  const given = new Set<string>();
  for (let i = 0; i < words.length; i++) {
    const word = words[i];
    if (word === undefined || word.quoted)
      return { problem: `"${word?.text ?? ""}" stands where an option is wanted: ${options}.` };
    if (given.has(word.text)) return { problem: `\`${word.text}\` is said twice: say it once.` };
    given.add(word.text);
    if (word.text === "code") {
      order = { ...order, code: true };
      continue;
    }
    const value = words[++i];
    if (word.text === "of" || word.text === "variant" || word.text === "light") {
      if (value?.quoted !== true)
        return { problem: `\`${word.text}\` takes a text in quotation marks: \`${word.text} "..."\`.` };
      const key = word.text === "of" ? "file" : word.text;
      order = { ...order, [key]: value.text };
    } else if (word.text === "headings") {
      if (value === undefined || !/^[1-6]$/.test(value.text))
        return { problem: "`headings` takes a number from 1 to 6: the level of the topmost heading." };
      order = { ...order, level: Number(value.text) };
    } else if (word.text === "gap") {
      const gap = value === undefined ? null : gapOf(value.text);
      if (gap === null) return { problem: "`gap` takes a length up to 50 m, as in `gap 25cm`." };
      order = { ...order, gap };
    } else return { problem: `There is no option "${word.text}". There are ${options}.` };
  }
  const { figure, light, gap } = order;
  if (light !== null && figure !== "throw" && figure !== "falloff" && figure !== "edge")
    return {
      problem:
        "`light` belongs to `figure throw`, `figure falloff` and `figure edge`, which may be of one light.",
    };
  if (gap !== null && figure !== "edge")
    return { problem: "`gap` belongs to `figure edge`: how far behind the edge the surface stands." };
  return { order };
}
