import { sentence } from "../diagnostics/create.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { asSentence } from "../diagnostics/print-sentence.js";
import { sweepValue } from "../model/tables/sweep-value.js";
import type { RowColumn, TableModel } from "../model/tables/types.js";
import { withValue } from "../model/tables/with-value.js";
import type { Recipe } from "../model/types.js";
import type { Plan } from "../report/plan.js";
import { buildScene } from "../scene/build.js";
import type { Scene } from "../scene/types.js";
import { isQuick, needsText, resetScene } from "./change.js";
import type { LightStore } from "./lights.js";

/** What a table is made from. */
export interface TableWork {
  readonly recipe: Recipe;
  readonly table: TableModel;
  /**
   * The set-up of a row before properties of lamps and camera are changed, for tables that are checked as text: a
   * recipe, or why there is none.
   */
  readonly setUp: (
    indices: readonly number[],
  ) =>
    | { readonly recipe: Recipe; readonly columns?: readonly RowColumn[]; readonly problem?: never }
    | { readonly recipe?: never; readonly problem: string };
}

/** A row's plan with what is shown of it, or why it has none. */
export type RowPlan =
  | { readonly plan: Plan; readonly columns: readonly RowColumn[]; readonly problem?: never }
  | { readonly plan?: never; readonly problem: string };

/** The plan of a row without its quick changes: a scene of its own, with the light of its set. */
export function slowPlan(work: TableWork, indices: readonly number[], lights: LightStore): RowPlan {
  const { table } = work;
  const start = startOf(work, indices);
  if (start.problem !== undefined) return start;
  let recipe = start.recipe;
  for (const [i, sweep] of table.sweeps.entries()) {
    if (isQuick(sweep) || sweep.target.kind !== "property") continue;
    const changed = withValue(recipe, sweep, sweepValue(sweep, indices[i] ?? 0).value);
    if (changed === null) return { problem: missing(sweep.path) };
    recipe = changed;
  }
  const built = sceneOf(recipe);
  if (built.problem !== undefined) return built;
  // Where rows are checked as text, a swept `let` may stand in the columns.
  const columns = start.columns ?? table.columns;
  return { plan: { recipe, scene: built.scene, light: lights.lightOf(built.scene) }, columns };
}

/** A plan with the quick changes of a row. Light is taken over as it is; the scene is built only where it must be. */
export function quickPlan(
  work: TableWork,
  indices: readonly number[],
  { plan: slow, columns }: Extract<RowPlan, { readonly plan: Plan }>,
): RowPlan {
  let { recipe, scene } = slow;
  let rebuild = false;
  for (const [i, sweep] of work.table.sweeps.entries()) {
    if (!isQuick(sweep)) continue;
    const changed = withValue(recipe, sweep, sweepValue(sweep, indices[i] ?? 0).value);
    if (changed === null) return { problem: missing(sweep.path) };
    const reset: Scene | null = rebuild ? null : resetScene(scene, sweep, recipe, changed);
    if (reset === null) rebuild = true;
    else scene = reset;
    recipe = changed;
  }
  if (!rebuild) return { plan: { recipe, scene, light: slow.light }, columns };
  const built = sceneOf(recipe);
  return built.problem === undefined
    ? { plan: { recipe, scene: built.scene, light: slow.light }, columns }
    : built;
}

const missing = (path: string): string => `there is no ${path} in this set-up`;

function startOf(work: TableWork, indices: readonly number[]): ReturnType<TableWork["setUp"]> {
  const { recipe, table } = work;
  if (needsText(table)) return work.setUp(indices);
  for (const [i, sweep] of table.sweeps.entries()) {
    if (sweep.target.kind !== "variant") continue;
    const title = sweepValue(sweep, indices[i] ?? 0).value;
    if (title === null) continue;
    const variant = recipe.variants.find((one) => one.title === title);
    return variant === undefined ? { problem: `there is no variant "${String(title)}"` } : variant;
  }
  return { recipe };
}

/** Builds a scene; what cannot be built is the reason why a row has no numbers. */
export function sceneOf(
  recipe: Recipe,
):
  | { readonly scene: Scene; readonly problem?: never }
  | { readonly scene?: never; readonly problem: string } {
  const found: Diagnostic[] = [];
  const scene = buildScene(recipe, (diagnostic) => found.push(diagnostic));
  const error = found.find(({ severity }) => severity === "error");
  return error === undefined ? { scene } : { problem: asSentence(sentence(error)) };
}
