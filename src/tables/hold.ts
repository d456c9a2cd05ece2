import type { HoldModel, Recipe } from "../model/types.js";
import type { Held } from "../report/hold/held.js";
import { redial } from "../report/hold/redial.js";
import type { Plan } from "../report/plan.js";
import { sameSet } from "../transport/same-set.js";
import { emptyCell } from "./cell.js";
import type { LightStore } from "./lights.js";
import { sceneOf } from "./plans.js";
import type { TableCell, TableColumn } from "./types.js";

/** What stands in the table for each of its holds: where the dial came to. */
export function holdColumn(hold: HoldModel): TableColumn {
  return { title: dialsOf(hold), unit: "text", asked: false, swept: false, blank: false };
}

const dialsOf = ({ by }: HoldModel): string =>
  by.map(({ light, property }) => `${light}.${property}`).join(", ");

/** A row with its dials turned: by what its recipe holds, then by what the table holds. */
export interface HeldRow {
  readonly plan: Plan;
  readonly cells: readonly TableCell[];
  /** Why the row is not what it is held at; null where it is. */
  readonly problem: string | null;
}

/**
 * Turns the dials of a row.
 *
 * @param from - The recipe itself: what a `hold` without a target keeps to.
 */
export function holdRow(plan: Plan, holds: readonly HoldModel[], from: Plan, lights: LightStore): HeldRow {
  const own = plan.recipe.holds.filter((hold) => !holds.some((other) => dialsOf(other) === dialsOf(hold)));
  const all = [...own, ...holds];
  if (all.length === 0) return { plan, cells: [], problem: null };
  const planOf = (recipe: Recipe): Plan => {
    if (recipe === start) return plan;
    const { scene = plan.scene } = sceneOf(recipe);
    return { recipe, scene, light: sameSet(scene, plan.scene) ? plan.light : lights.lightOf(scene) };
  };
  const start = { ...plan.recipe, holds: all };
  const done = redial(start, from, planOf);
  const cells = holds.map((hold) => settingCell(done.held.find((held) => held.text === hold.written)));
  const short = done.held.find((held) => held.reason !== null);
  return {
    plan: done.plan,
    cells,
    problem: short === undefined ? null : missed(short),
  };
}

/** Why a row is not what it is held at: said alike of the dial and of what hangs on it. */
const missed = ({ by, reason }: Held): string => `${by} cannot hold it: ${reason}`;

function settingCell(held: Held | undefined): TableCell {
  if (held === undefined) return emptyCell("there is nothing to hold it at");
  if (held.setting === null) return emptyCell(missed(held));
  return { value: null, text: held.setting, reason: null };
}
