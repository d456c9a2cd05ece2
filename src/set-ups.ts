import type { Source } from "./core/source.js";
import type { SessionModel } from "./model/session.js";
import type { Recipe, VariantModel } from "./model/types.js";
import { type Evaluated, evaluateWith } from "./pipeline.js";
import type { Held } from "./report/hold/held.js";
import { redial } from "./report/hold/redial.js";
import type { Plan } from "./report/plan.js";
import type { SessionReport } from "./report/schema/session.js";
import { buildSession } from "./report/session/build.js";
import { type LightOf, sharedLights } from "./report/set-up-lights.js";
import { buildScene } from "./scene/build.js";

/** One set-up of a recipe, worked out: the recipe itself, or a variant with its dials turned to what it holds. */
export interface SetUp extends Evaluated {
  /** The title of the variant; null for the recipe itself. */
  readonly variant: string | null;
  readonly held: readonly Held[];
}

/** What to work out. */
export interface SetUpOptions {
  /** The text it was written in, if any. */
  readonly source?: Source;
  /** Titles of the variants wanted, in any order; all of them where it is left out. */
  readonly titles?: readonly string[];
  /** Whether what the recipe holds is also held in the recipe itself, as for a comparison. */
  readonly holdRecipe?: boolean;
}

/**
 * Works out a checked recipe and its variants, the recipe first, the variants in file order. What
 * depends on the set alone is worked out once for all that have the same set.
 */
export function evaluateSetUps(recipe: Recipe, options: SetUpOptions = {}): readonly SetUp[] {
  const { source, titles, holdRecipe = false } = options;
  const lightOf = sharedLights();
  const planOf = planWith(lightOf);
  const plans = new Map<string | null, Plan>();
  const held = new Map<string | null, readonly Held[]>();
  const dialled = (variant: VariantModel | null): Plan => {
    const title = variant?.title ?? null;
    const known = plans.get(title);
    if (known !== undefined) return known;
    const own = variant?.recipe ?? (holdRecipe ? recipe : { ...recipe, holds: [] });
    const from = variant === null ? null : dialled(baseOf(recipe, variant));
    const result = redial(own, from, planOf);
    plans.set(title, result.plan);
    held.set(title, result.held);
    return result.plan;
  };
  const wanted = recipe.variants.filter((row) => titles === undefined || titles.includes(row.title));
  return [null, ...wanted].map((variant) => {
    const plan = dialled(variant);
    const rows = held.get(variant?.title ?? null) ?? [];
    const about =
      variant === null
        ? null
        : { title: variant.title, from: variant.from, held: rows.map((row) => ({ ...row })) };
    const evaluated = evaluateWith(
      { ...plan.recipe, holds: variant?.recipe.holds ?? recipe.holds },
      lightOf,
      { variant: about },
      source,
    );
    return { ...evaluated, variant: variant?.title ?? null, held: rows };
  });
}

const baseOf = (recipe: Recipe, variant: VariantModel): VariantModel | null =>
  recipe.variants.find((row) => row.title === variant.from) ?? null;

/**
 * Works out a session: the recipe as planned and as built, what the meter said against both, what the lamps give by it,
 * what accounts for the difference, and what to turn.
 */
export function evaluateSession(session: SessionModel): SessionReport {
  return buildSession(session, planWith(sharedLights()));
}

const planWith =
  (lightOf: LightOf) =>
  (recipe: Recipe): Plan => {
    const scene = buildScene(recipe, () => undefined);
    return { recipe, scene, light: lightOf(scene) };
  };
