import { sweepLength } from "../model/tables/sweep-value.js";
import type { Expr } from "../model/values.js";
import { evaluate } from "../report/evaluate/expression.js";
import type { Plan } from "../report/plan.js";
import { runRules } from "../report/rules/run.js";
import { emptyCell, resultCell, resultColumn, sweptCell, sweptColumn } from "./cell.js";
import { isQuick } from "./change.js";
import { holdColumn, holdRow } from "./hold.js";
import { type LightStore, lightStore } from "./lights.js";
import { quickPlan, type RowPlan, sceneOf, slowPlan, type TableWork } from "./plans.js";
import type { Table, TableRow } from "./types.js";

/**
 * A lesson table: its head at once, its rows as they are asked for. Rows share what they have in common. Where only
 * powers, gels or the camera's settings change, nothing of the light is worked out again; where one lamp moves, the set
 * is kept. A row that cannot be worked out says why in its cells.
 */
export function makeTable(work: TableWork): Table {
  const { table, recipe } = work;
  const columns = [
    ...table.sweeps.map((sweep) => sweptColumn(sweep, table.worksheet)),
    ...table.holds.map(holdColumn),
    ...table.columns.map((column) => resultColumn(column, table.worksheet)),
  ];
  const rows = table.sweeps.reduce((product, sweep) => product * sweepLength(sweep), 1);
  return {
    title: table.title,
    recipe: recipe.title,
    note: table.note,
    columns,
    rows,
    work: () => rowsOf(work),
  };
}

/** What all rows of a table are worked out from. */
interface Desk {
  readonly work: TableWork;
  readonly lights: LightStore;
  /** The recipe itself. */
  readonly from: Plan;
}

function* rowsOf(work: TableWork): Generator<TableRow, void> {
  const [outer, inner] = work.table.sweeps;
  if (outer === undefined) return;
  const base = sceneOf(work.recipe);
  if (base.problem !== undefined) return;
  const lights = lightStore(base.scene);
  const from: Plan = { recipe: work.recipe, scene: base.scene, light: lights.first };
  const desk: Desk = { work, lights, from };
  // Lamps and meters that stay where they are in the recipe are worked out once, before lamps are moved.
  if (!work.table.sweeps.every(isQuick)) {
    for (const { value } of work.table.columns) evaluate({ plan: from, alarms: 0 }, value);
  }
  const most = sweepLength(outer);
  const least = inner === undefined ? 1 : sweepLength(inner);
  const at = (i: number, j: number): readonly number[] => (inner === undefined ? [i] : [i, j]);
  if (inner !== undefined && isQuick(outer) && !isQuick(inner)) {
    yield* turned(desk, most, least);
    return;
  }
  let last: { readonly key: string; readonly slow: RowPlan } | null = null;
  for (let i = 0; i < most; i++) {
    for (let j = 0; j < least; j++) {
      const key = at(i, j)
        .map((index, k) => (isQuick(work.table.sweeps[k] ?? outer) ? "" : index))
        .join(" ");
      if (last === null || last.key !== key) last = { key, slow: slowPlan(work, at(i, j), lights) };
      yield rowOf(desk, at(i, j), last.slow);
    }
  }
}

/** Where the second sweep needs light and the first does not, columns are worked out first and rows given out then. */
function* turned(desk: Desk, most: number, least: number): Generator<TableRow, void> {
  const rows: TableRow[][] = Array.from({ length: most }, () => []);
  for (let j = 0; j < least; j++) {
    const slow = slowPlan(desk.work, [0, j], desk.lights);
    for (let i = 0; i < most; i++) rows[i]?.push(rowOf(desk, [i, j], slow));
  }
  for (const part of rows) yield* part;
}

function rowOf({ work, lights, from }: Desk, indices: readonly number[], slow: RowPlan): TableRow {
  const { table } = work;
  const swept = table.sweeps.map((sweep, i) => sweptCell(sweep, indices[i] ?? 0));
  const there = slow.plan === undefined ? slow : quickPlan(work, indices, slow);
  const nothing = (reason: string): TableRow =>
    [...table.holds, ...table.columns].map(() => emptyCell(reason));
  if (there.plan === undefined) return [...swept, ...nothing(there.problem)];
  const { plan, cells, problem } = holdRow(there.plan, table.holds, from, lights);
  if (problem !== null) return [...swept, ...cells, ...table.columns.map(() => emptyCell(problem))];
  const alarms = table.columns.some(({ value }) => asksWarnings(value)) ? alarmsOf(plan) : null;
  const asked = { plan, alarms };
  const shown = there.columns.map((column) =>
    "problem" in column ? emptyCell(column.problem) : resultCell(column, evaluate(asked, column.value)),
  );
  return [...swept, ...cells, ...shown];
}

/** Warnings of severity stop or check. */
function alarmsOf(plan: Plan): number {
  return runRules(plan).warnings.filter(({ severity }) => severity !== "note").length;
}

const asksWarnings = (value: Expr): boolean => value.kind === "result" && value.name === "no_warnings";
