import { sentence } from "../../diagnostics/create.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { asSentence } from "../../diagnostics/print-sentence.js";
import { sweepValue } from "../../model/tables/sweep-value.js";
import type { RowColumn, SweepModel, TableModel } from "../../model/tables/types.js";
import type { Recipe } from "../../model/types.js";
import type { Column, File, Item, Path, Table, Variant } from "../../syntax/ast.js";
import { changeFile } from "../change/change.js";
import { editBlock } from "../change/edit.js";
import { parseValue } from "../change/parse-value.js";
import type { Reporter } from "../context.js";
import type { Kits } from "../kits/kits.js";
import { type KitLook, kitLook } from "../kits/look.js";
import { checkSetUp } from "../recipe.js";
import { changesOf } from "../variants/repeats.js";
import { whereTo } from "./target.js";

/** What a row's set-up is where it is checked as text, with its columns, or why there is none. */
export type RowSetUp =
  | { readonly recipe: Recipe; readonly columns: readonly RowColumn[]; readonly problem?: never }
  | { readonly recipe?: never; readonly problem: string };

/** A text whose rows are checked: its tree, its name, and the way to the kits that it names. */
export interface RowText {
  readonly file: File;
  readonly name: string;
  readonly kits: Kits;
}

const left: ReadonlySet<Item["kind"]> = new Set(["variant", "solve", "measured", "expect"]);

/**
 * The set-up of one row, checked as if it had been written: every sweep that changes text, or takes another variant,
 * at its index. Sweeps over properties of lamps and camera are left as the recipe has them. The columns are those of
 * the row, since a `let` that is swept may stand in them. One that asks for something that the row has not got, such as
 * a light that its variant removes, is without meaning there, and the others are as they are.
 */
export function setUpOfRow(
  { file, name, kits }: RowText,
  table: TableModel,
  indices: readonly number[],
): RowSetUp {
  const found: Diagnostic[] = [];
  const to: Reporter = { file: name, sink: (diagnostic) => found.push(diagnostic) };
  const statement = file.items.find((item) => item.kind === "table" && item.title.value === table.title);
  if (statement?.kind !== "table") return { problem: "the table is not in this text" };
  const look = kitLook(file, name, kits);
  const changed = inOrder(table.sweeps).reduce(
    (before, i) =>
      changedBy(before, file, statement, table.sweeps[i] as SweepModel, indices[i] ?? 0, to, look),
    file,
  );
  const setUpWith = (own: readonly Table[]): Recipe | null => {
    const items = changed.items.flatMap((item): readonly Item[] => {
      if (item.kind !== "table") return left.has(item.kind) ? [] : [item];
      return item === statement ? own : [];
    });
    return checkSetUp({ ...changed, items }, name, to.sink, kits, true).recipe;
  };
  const shown = statement.lines.flatMap((line) => (line.kind === "show" ? line.columns : []));
  const whole = withoutVariants(statement, table.sweeps);
  let recipe = setUpWith([whole]);
  const errors = errorsOf(found);
  const troubles = shown.map((column) => errors.find((error) => isAt(error, name, column)) ?? null);
  const bad = new Set(shown.filter((_, i) => troubles[i] !== null));
  if (errors.length > 0 && errors.every((error) => [...bad].some((column) => isAt(error, name, column)))) {
    found.length = 0;
    recipe = setUpWith(bad.size === shown.length ? [] : [withoutColumns(whole, bad)]);
  }
  const [error] = errorsOf(found);
  if (error !== undefined) return { problem: asSentence(sentence(error)) };
  if (recipe === null) return { problem: "the recipe has no title" };
  const checked = [...(recipe.tables[0]?.columns ?? [])];
  const columns = troubles.map((trouble, i): RowColumn => {
    if (trouble !== null) return { problem: asSentence(sentence(trouble)) };
    return checked.shift() ?? (table.columns[i] as RowColumn);
  });
  return { recipe, columns };
}

const errorsOf = (found: readonly Diagnostic[]): readonly Diagnostic[] =>
  found.filter(({ severity }) => severity === "error");

/** Whether a finding is about one column. */
const isAt = ({ place }: Diagnostic, file: string, { span }: Column): boolean =>
  place.file === file && span.start <= place.start && place.end <= span.end;

/** The table without some of its columns, and without what is said of columns by their titles. */
function withoutColumns(statement: Table, dropped: ReadonlySet<Column>): Table {
  const lines = statement.lines.flatMap((line): Table["lines"] => {
    if (line.kind === "property") return [];
    if (line.kind !== "show") return [line];
    const columns = line.columns.filter((column) => !dropped.has(column));
    return columns.length === 0 ? [] : [{ ...line, columns }];
  });
  return { ...statement, lines };
}

/** The sweeps by their index: what takes another variant first, since what is swept besides is changed in that variant. */
function inOrder(sweeps: readonly SweepModel[]): readonly number[] {
  const isVariant = (i: number): number => (sweeps[i]?.target.kind === "variant" ? 0 : 1);
  return sweeps.map((_, i) => i).sort((a, b) => isVariant(a) - isVariant(b));
}

/** The table without its sweep over variants: a row's set-up is one of them already, and has none of its own. */
function withoutVariants(statement: Table, sweeps: readonly SweepModel[]): Table {
  const starts = new Set(
    sweeps.flatMap(({ target, origin }) => (target.kind === "variant" && origin ? [origin.start] : [])),
  );
  const lines = statement.lines.filter((line) => line.kind !== "sweep" || !starts.has(line.span.start));
  return { ...statement, lines };
}

function changedBy(
  before: File,
  base: File,
  statement: Table,
  sweep: SweepModel,
  index: number,
  to: Reporter,
  kits: KitLook,
): File {
  const { written, value } = sweepValue(sweep, index);
  if (sweep.target.kind === "property") return before;
  if (sweep.target.kind === "variant")
    return value === null ? before : variantOf(before, base, String(value), to, kits);
  const path = pathOf(statement, sweep);
  if (path === null) return before;
  const led = whereTo(before, path, kits);
  if (led?.kind === "like") {
    const like: Path = {
      ...path,
      parts: [{ kind: "name", span: path.span, text: written.replaceAll("`", ""), quoted: true }],
    };
    return editBlock(before, led.trail, (block) => ({ ...block, like }));
  }
  const parsed = parseValue(written, path.span);
  if (parsed === null) return before;
  return changeFile(
    before,
    [{ kind: "set", path, value: parsed, companion: null, span: path.span }],
    to,
    kits,
  );
}

function pathOf(statement: Table, sweep: SweepModel): Path | null {
  const line = statement.lines.find(
    (one) => one.kind === "sweep" && one.span.start === (sweep.origin?.start ?? one.span.start),
  );
  return line?.kind === "sweep" ? line.path : null;
}

/** The file with the changes of a variant and of all that it comes from. A chain that does not end changes nothing. */
function variantOf(before: File, base: File, title: string, to: Reporter, kits: KitLook): File {
  const way: Variant[] = [];
  for (let at: string | null = title; at !== null; ) {
    const wanted: string = at;
    const variant = base.items.find((item) => item.kind === "variant" && item.title.value === wanted);
    if (variant?.kind !== "variant" || way.includes(variant)) return before;
    way.unshift(variant);
    at = variant.from?.value ?? null;
  }
  return way.reduce((file, variant) => {
    const changed = changeFile(file, changesOf(variant), to, kits);
    const holds = variant.lines.filter((line) => line.kind === "hold");
    return { ...changed, items: [...changed.items, ...holds] };
  }, before);
}
