import type { Comparison } from "../../report/compare/compare.js";
import type { SetUp } from "../../set-ups.js";
import { evaluateFile } from "../evaluate-file.js";
import { misuse, type Session } from "../session.js";
import { type Light, language, light } from "../stages/load.js";
import { deliverComparisons } from "./comparisons.js";

/** `halfshade compare FILE [VARIANT...]`: what variants change, and what that does to the light. */
export async function compareCommand(session: Session): Promise<number> {
  const [name = "", ...titles] = session.operands;
  const stage = await language();
  const wanted = { titles: titles.length === 0 ? null : titles, holdRecipe: true };
  const result = await evaluateFile(session, stage, name, wanted);
  if (result.setUps === null) return result.exit;
  const [base, ...variants] = result.setUps;
  if (variants.length === 0) return misuse(session, `${result.name} has no variants to compare.`);
  const views = await light();
  return deliverComparisons(
    session,
    stage,
    variants.map((variant) => compared(views, ["the recipe", base], [`"${variant.variant ?? ""}"`, variant])),
  );
}

type Labelled = readonly [label: string, setUp: SetUp];

/** Two set-ups held against each other. */
export function compared(views: Light, [a, before]: Labelled, [b, after]: Labelled): Comparison {
  return views.compare(
    { label: a, report: before.report, held: before.held },
    { label: b, report: after.report, held: after.held },
    views.differences(before.recipe, after.recipe),
  );
}
