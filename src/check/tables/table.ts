import { quote } from "../../core/quote.js";
import { printNode } from "../../format/print-node.js";
import { sweepLength } from "../../model/tables/sweep-value.js";
import type { ColumnModel, SweepModel, TableModel } from "../../model/tables/types.js";
import type { HoldModel } from "../../model/types.js";
import type { File, Property, Sweep, Table } from "../../syntax/ast.js";
import { siblingsOf } from "../../vocabulary/siblings.js";
import { type Context, here, replace, report } from "../context.js";
import { checkHold } from "../hold.js";
import { nearNames, suggestion } from "../suggest.js";
import { checkColumn } from "./column.js";
import { cellLimit, howMany, rowLimit, tooManyRows } from "./limits.js";
import { checkSweep } from "./sweep.js";

const settings = ["note", "worksheet"] as const;

/**
 * One `table`: what it varies, what it shows and what it holds, typed and counted. Null after a finding.
 * @param whole - False where the parser reported an error: what seems to be missing may stand in what it left out.
 */
export function checkTable(ctx: Context, file: File, statement: Table, whole: boolean): TableModel | null {
  let complete = true;
  const keep = <T>(checked: T | null): readonly T[] => {
    if (checked === null) complete = false;
    return checked === null ? [] : [checked];
  };
  const written = statement.lines.filter((line) => line.kind === "sweep");
  if (!enough(ctx, statement, written, whole)) complete = false;
  const sweeps = written.slice(0, 2).flatMap((line) => keep(checkSweep(ctx, file, line)));
  const shows = statement.lines.flatMap((line) => (line.kind === "show" ? line.columns : []));
  const columns = shows.flatMap((column) => keep(checkColumn(whateverIsThere(ctx, sweeps), column)));
  if (shows.length === 0) {
    if (whole) report(ctx, "table.empty", statement.title.span, {});
    complete = false;
  }
  const holds: HoldModel[] = statement.lines.flatMap((line) =>
    line.kind === "hold" ? keep(checkHold(ctx, line)) : [],
  );
  const titles = [...sweeps.map((sweep) => sweep.path), ...columns.map((column) => column.title)];
  const said = checkSettings(ctx, statement, complete ? titles : null);
  if (said === null || !complete || !fits(ctx, statement, sweeps, columns)) return null;
  return {
    title: statement.title.value,
    written: printNode(statement),
    note: said.note,
    sweeps,
    columns,
    holds,
    worksheet: said.worksheet,
    origin: here(ctx, statement.span),
  };
}

/** The context of columns: where rows may add what the recipe lacks, it is not noted that it lacks it. */
function whateverIsThere(ctx: Context, sweeps: readonly SweepModel[]): Context {
  const adds = sweeps.some(
    ({ target }) => target.kind !== "property" || target.property === "power" || target.property === "output",
  );
  if (!adds) return ctx;
  return { ...ctx, sink: (found) => (found.code === "result.not-here" ? undefined : ctx.sink(found)) };
}

/** One or two sweeps, of different things. */
function enough(ctx: Context, statement: Table, sweeps: readonly Sweep[], whole: boolean): boolean {
  const [first, second, ...more] = sweeps;
  if (first === undefined) {
    if (!whole) return false;
    const light = [...ctx.declared.values()].find((one) => one.kind === "light")?.name ?? "key";
    report(ctx, "table.still", statement.title.span, { example: `${light}.distance over [1 m, 2 m, 4 m]` });
    return false;
  }
  for (const sweep of more) report(ctx, "table.sweeps", sweep.span, {});
  const path = (sweep: Sweep): string => sweep.path.parts.map((part) => part.text).join(".");
  if (second === undefined || !sameThing(ctx, path(first), path(second))) return more.length === 0;
  const related = [{ place: here(ctx, first.path.span), text: "swept first here" }];
  report(ctx, "sweep.same", second.path.span, { path: path(second), before: path(first) }, { related });
  return false;
}

/** Whether what one path sets undoes what the other does: the same property, or one that takes its place. */
function sameThing(ctx: Context, one: string, other: string): boolean {
  if (one === other) return true;
  const [owner = "", property = "", ...rest] = one.split(".");
  const [otherOwner, otherProperty = "", ...otherRest] = other.split(".");
  const kind = ctx.declared.get(owner)?.kind ?? owner;
  if (owner !== otherOwner || rest.length > 0 || otherRest.length > 0) return false;
  return siblingsOf(kind, property).includes(otherProperty);
}

/** Rows and cells are counted before any is made. */
function fits(
  ctx: Context,
  statement: Table,
  sweeps: readonly SweepModel[],
  columns: readonly ColumnModel[],
): boolean {
  const rows = sweeps.reduce((product, sweep) => product * sweepLength(sweep), 1);
  if (rows > rowLimit(ctx)) {
    tooManyRows(ctx, statement.title.span, rows);
    return false;
  }
  const cells = rows * (sweeps.length + columns.length);
  if (cells <= cellLimit(ctx)) return true;
  report(ctx, "limit.cells", statement.title.span, { cells: howMany(cells), limit: cellLimit(ctx) });
  return false;
}

/** The settings of a table; null after a finding. `titles` null: the columns are not all known, so none is judged. */
function checkSettings(
  ctx: Context,
  { lines }: Table,
  titles: readonly string[] | null,
): { readonly note: string | null; readonly worksheet: readonly string[] } | null {
  let note: string | null = null;
  let worksheet: readonly string[] = [];
  let complete = true;
  const first = new Map<string, Property>();
  for (const line of lines) {
    if (line.kind !== "property") continue;
    const name = line.path.parts.map((part) => part.text).join(".");
    const before = first.get(name);
    if (!(settings as readonly string[]).includes(name)) {
      unknownSetting(ctx, line, name);
      complete = false;
    } else if (before !== undefined) {
      const related = [{ place: here(ctx, before.path.span), text: "first value" }];
      report(ctx, "property.twice", line.path.span, { name }, { label: "second value", related });
      complete = false;
    } else {
      first.set(name, line);
      const texts = textsOf(ctx, line, name);
      if (texts === null) complete = false;
      else if (name === "note") note = texts[0] ?? null;
      else if (titles !== null && !knownTitles(ctx, line, texts, titles)) complete = false;
      else worksheet = texts;
    }
  }
  return complete ? { note, worksheet } : null;
}

function unknownSetting(ctx: Context, line: Property, name: string): void {
  const near = nearNames(name, settings);
  const fixes = near.map((meant) => replace(ctx, `write \`${meant}\``, line.path.span, meant));
  report(ctx, "table.setting", line.path.span, { name, known: suggestion(near, settings, "") }, { fixes });
}

/** A text, or for a worksheet a list of texts; null after a finding. */
function textsOf(ctx: Context, { value }: Property, name: string): readonly string[] | null {
  const items = name === "worksheet" && value.kind === "list" ? value.items : [value];
  const texts = items.flatMap((item) => (item.kind === "text" ? [item.value] : []));
  if (texts.length === items.length) return texts;
  const wanted = name === "note" ? "a text" : "a text or a list of texts";
  const example = name === "note" ? 'note: "The edge grows."' : 'worksheet: ["Size"]';
  report(ctx, "value.type", value.span, { name, wanted, found: "something else", example });
  return null;
}

function knownTitles(
  ctx: Context,
  line: Property,
  texts: readonly string[],
  titles: readonly string[],
): boolean {
  let known = true;
  for (const title of texts) {
    if (titles.includes(title)) continue;
    known = false;
    const near = nearNames(title, titles);
    report(ctx, "table.blank", line.value.span, {
      title,
      known: suggestion(near.map(quote), titles.map(quote), ""),
    });
  }
  return known;
}
