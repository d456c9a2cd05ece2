import type { Source } from "./core/source.js";
import type { SessionModel } from "./model/session.js";
import type { Recipe, VariantModel } from "./model/types.js";
import { type Evaluated, evaluateWith, type Judgement, judgeWith } from "./pipeline.js";
import type { Held } from "./report/hold/held.js";
import { redial } from "./report/hold/redial.js";
import type { Plan } from "./report/plan.js";
import type { Report } from "./report/schema/report.js";
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
  const lightOf = sharedLights();
  return dialled(recipe, lightOf, options).map(({ variant, held, own }) => ({
    ...evaluateWith(own, lightOf, { variant }, options.source),
    variant: variant?.title ?? null,
    held,
  }));
}

/** One set-up of a recipe, judged without the rest of its report. */
export interface JudgedSetUp extends Judgement {
  /** What variant it is; null for the recipe itself. */
  readonly variant: Report["variant"];
}

/** What the reports of a recipe and its variants would say to a check, in the same order. */
export function judgeSetUps(recipe: Recipe, options: SetUpOptions = {}): readonly JudgedSetUp[] {
  const lightOf = sharedLights();
  return dialled(recipe, lightOf, options).map(({ variant, own }) => ({
    ...judgeWith(own, lightOf, options.source),
    variant,
  }));
}

/** A set-up with its dials turned. */
interface Dialled {
  /** What variant it is; null for the recipe itself. */
  readonly variant: Report["variant"];
  readonly held: readonly Held[];
  /** The whole set-up, with what it holds. */
  readonly own: Recipe;
}

function dialled(
  recipe: Recipe,
  lightOf: LightOf,
  { titles, holdRecipe = false }: SetUpOptions,
): readonly Dialled[] {
  const planOf = planWith(lightOf);
  const done = new Map<VariantModel | null, ReturnType<typeof redial>>();
  const turned = (variant: VariantModel | null): ReturnType<typeof redial> => {
    const known = done.get(variant);
    if (known !== undefined) return known;
    const own = variant?.recipe ?? (holdRecipe ? recipe : { ...recipe, holds: [] });
    const from = variant === null ? null : turned(baseOf(recipe, variant)).plan;
    const result = redial(own, from, planOf);
    done.set(variant, result);
    return result;
  };
  const wanted = recipe.variants.filter((row) => titles === undefined || titles.includes(row.title));
  return [null, ...wanted].map((variant) => {
    const { plan, held } = turned(variant);
    const own = { ...plan.recipe, holds: variant?.recipe.holds ?? recipe.holds };
    if (variant === null) return { variant, held, own };
    const { title, from } = variant;
    return { variant: { title, from, held: held.map((row) => ({ ...row })) }, held, own };
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
