import type { HoldModel, Recipe } from "../../model/types.js";
import { show } from "../evaluate/show.js";
import type { Plan } from "../plan.js";
import { holdByPlace } from "./by-place.js";
import { holdByPower } from "./by-power.js";
import { gapOf } from "./gap.js";
import { type Held, held } from "./held.js";

/** A recipe with its dials turned, and what became of each of its holds. */
export interface Redialled {
  readonly recipe: Recipe;
  readonly plan: Plan;
  readonly held: readonly Held[];
}

/**
 * Bounced light is worked out as finely as the lamps' present powers ask for, so a dial that is turned may leave a hair
 * of the gap; it is then turned again, on the light as it is now.
 */
const PASSES = 4;
const NEAR = 1e-9;
/** What a later `hold` moves by less than this, in stops or in the unit of the result, counts as held. */
const SLIGHT = 0.005;

/**
 * Turns and moves what a recipe's `hold`s say, one after the other. What cannot be held is left as it is, with a
 * reason.
 *
 * @param from - The set-up that the recipe comes from: what a `hold` without a target keeps to; null for the recipe
 * itself, in which such a hold changes nothing.
 * @param planOf - A recipe in metres with its light.
 */
export function redial(recipe: Recipe, from: Plan | null, planOf: (recipe: Recipe) => Plan): Redialled {
  let plan = planOf(recipe);
  const done: { readonly hold: HoldModel; readonly held: Held }[] = [];
  for (const hold of recipe.holds) {
    if (hold.target === null && from === null) continue;
    const byPower = hold.by.every((dial) => dial.property === "power");
    let turned: Held | null = null;
    for (let pass = 0; pass < PASSES; pass++) {
      const result = byPower
        ? holdByPower(plan.recipe, hold, plan, from)
        : holdByPlace(plan.recipe, hold, plan, from, planOf);
      turned = result.held;
      if (result.recipe !== plan.recipe) plan = planOf(result.recipe);
      if (turned.reason !== null || Math.abs(gapOf(hold, plan, from).by ?? 0) <= NEAR) break;
    }
    if (turned !== null) done.push({ hold, held: turned });
  }
  return { recipe: plan.recipe, plan, held: done.map((row) => asItStands(row.hold, row.held, plan, from)) };
}

/** A hold that was done, unless a later one undid it. */
function asItStands(hold: HoldModel, done: Held, plan: Plan, from: Plan | null): Held {
  if (done.reason !== null) return done;
  const { found, by } = gapOf(hold, plan, from);
  if (by === null || Math.abs(by) <= SLIGHT) return done;
  return held(hold, null, `a later hold leaves it at ${show(found) ?? "nothing"}`);
}
