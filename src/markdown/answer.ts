import {
  type Compiled,
  compile,
  type Diagnostic,
  drawFigure,
  type Evaluated,
  evaluateSetUps,
  type FigureName,
  figurePart,
  isKitPath,
  printDiagnostics,
  type Recipe,
  reportParts,
  type Source,
  sentence,
  tableChart,
  tableParts,
  tablesOf,
  type ViewPart,
} from "../index.js";
import type { Order } from "./order.js";
import type { Answer, PageOptions, PageProblem } from "./page.js";

const usualPage = "page";
const usualLevel = 2;
const deepest = 6;

/** A fence or a mark: where it stands, and the recipe in it; null for a mark, which holds none. */
export interface Asked {
  /** Line of the page, from 1, of the fence or mark. */
  readonly line: number;
  readonly text: string | null;
}

/** A problem at a line of a page. */
export function problemAt(
  options: PageOptions,
  line: number,
  message: string,
  findings: string | null = null,
): PageProblem {
  return { page: options.page ?? usualPage, line, message, findings };
}

/** Works out what an order asks for. Any text gives an answer; it throws only where the given reader does. */
export function answer(order: Order, asked: Asked, options: PageOptions): Answer {
  const refuse = (message: string, findings: string | null = null): Answer => ({
    problem: problemAt(options, asked.line, message, findings),
  });
  const found = sourceOf(order, asked, options);
  if (typeof found === "string") return refuse(found);
  const compiled = compile(found, options.read === undefined ? {} : { read: options.read });
  if (!compiled.sound || compiled.recipe === null)
    return refuse("The recipe has mistakes.", printed(compiled, compiled.diagnostics));
  const { recipe } = compiled;
  if (recipe.kind !== "recipe")
    return refuse(`"${recipe.title}" is a ${recipe.kind}, and there is nothing to work out: name a recipe.`);
  if (order.variant !== null && !recipe.variants.some(({ title }) => title === order.variant))
    return refuse(`The recipe has no variant "${order.variant}". ${known(recipe.variants)}`);
  const view = viewOf(order, compiled, recipe);
  if (view.problem !== undefined) return refuse(view.problem, view.findings);
  const shown = order.code ? [codeOf(found, order), ...view.parts] : view.parts;
  return { parts: atLevel(shown, order.level ?? options.headings ?? usualLevel) };
}

/** What is wrong, as parts of the page. */
export function problemParts({ page, line, message, findings }: PageProblem): readonly ViewPart[] {
  const words: ViewPart = {
    kind: "paragraph",
    inlines: [
      { kind: "strong", text: "halfshade:" },
      { kind: "text", text: ` ${page}, line ${line}: ${message}` },
    ],
  };
  return findings === null ? [words] : [words, { kind: "code", language: "", text: findings.trimEnd() }];
}

/** The recipe that is meant, or why there is none. A recipe of the page keeps the lines that it has in the page. */
function sourceOf(
  order: Order,
  { line, text }: Asked,
  { page = usualPage, read }: PageOptions,
): Source | string {
  if (order.file === null) {
    if (text === null) return 'It names no recipe: write `of "FILE.light"`.';
    return { name: page, text: "\n".repeat(line) + text };
  }
  if (text !== null && text.trim() !== "")
    return `It holds a recipe and names the file "${order.file}" as well: leave one of them away.`;
  if (!isKitPath(order.file))
    return `"${order.file}" is no path of a recipe: a relative one is wanted, with forward slashes, that ends in .light.`;
  if (read === undefined)
    return `It names the file "${order.file}", and no files are read here: write the recipe into the fence, or give a reader.`;
  const found = read(order.file, page);
  const { source, problem } = found;
  if (problem === undefined) return source;
  return problem.help === "" ? `${sentence(problem)}.` : `${sentence(problem)}: ${problem.help}.`;
}

const printed = ({ sources }: Compiled, diagnostics: readonly Diagnostic[]): string =>
  printDiagnostics(
    diagnostics.filter(({ severity }) => severity === "error"),
    { textOf: (file) => sources.find(({ name }) => name === file)?.text ?? null },
  );

const known = (rows: readonly { readonly title: string }[]): string =>
  rows.length === 0 ? "It has none." : `It has ${rows.map(({ title }) => `"${title}"`).join(", ")}.`;

type Made =
  | { readonly parts: readonly ViewPart[]; readonly problem?: never }
  | { readonly parts?: never; readonly problem: string; readonly findings: string | null };

function viewOf(order: Order, compiled: Compiled, recipe: Recipe): Made {
  if (order.view === "table" || order.view === "chart") return tableView(order, compiled, recipe);
  const titles = order.variant === null ? [] : [order.variant];
  const setUp = evaluateSetUps(recipe, { source: compiled.source, titles }).find(
    ({ variant }) => variant === order.variant,
  );
  const diagnostics = setUp?.diagnostics ?? [];
  if (setUp === undefined || diagnostics.some(({ severity }) => severity === "error"))
    return { problem: "The set-up cannot be built.", findings: printed(compiled, diagnostics) };
  const { report } = setUp;
  if (order.figure !== null) return figureView(setUp, order.figure, order);
  if (order.view === "report") return { parts: reportParts(report) };
  return { parts: [{ kind: "paragraph", inlines: [{ kind: "strong", text: report.headline }] }] };
}

function figureView(setUp: Evaluated, figure: FigureName, { light, gap }: Order): Made {
  const drawing = drawFigure(setUp, figure, {
    ...(light === null ? {} : { light }),
    ...(gap === null ? {} : { gap }),
  });
  return typeof drawing === "string"
    ? { problem: drawing, findings: null }
    : { parts: [figurePart(drawing)] };
}

function tableView({ view, title, variant }: Order, compiled: Compiled, { tables }: Recipe): Made {
  const refuse = (problem: string): Made => ({ problem, findings: null });
  if (variant !== null)
    return refuse("A table is of the recipe itself: leave `variant` away, or sweep over variants.");
  if (tables.length === 0)
    return refuse('The recipe has no table. Write one: table "..." { sweep ... show ... }');
  if (title !== null && !tables.some((table) => table.title === title))
    return refuse(`The recipe has no table "${title}". ${known(tables)}`);
  const chosen = tablesOf(compiled).filter((table) => title === null || table.title === title);
  if (view === "table") return { parts: chosen.flatMap(tableParts) };
  const drawn = chosen.map((table) => tableChart(table, [...table.work()]));
  const problem = drawn.find((chart) => typeof chart === "string");
  return problem === undefined
    ? { parts: drawn.flatMap((chart) => (typeof chart === "string" ? [] : [figurePart(chart)])) }
    : refuse(problem);
}

/** The text of the recipe as code, without the lines that were put before it to keep the lines of the page. */
const codeOf = ({ text }: Source, { file }: Order): ViewPart => ({
  kind: "code",
  language: "light",
  text: (file === null ? text.replace(/^\n+/, "") : text.replace(/^\ufeff/, "")).trimEnd(),
});

/** The same parts with the topmost heading at a level. */
function atLevel(parts: readonly ViewPart[], level: number): readonly ViewPart[] {
  const top = parts.reduce(
    (least, part) => (part.kind === "heading" ? Math.min(least, part.level) : least),
    6,
  );
  return parts.map((part) =>
    part.kind === "heading" ? { ...part, level: Math.min(deepest, part.level - top + level) } : part,
  );
}
