import { evaluateFile } from "../evaluate-file.js";
import { misuse, type Session } from "../session.js";
import { language, light } from "../stages/load.js";
import { compared } from "./compare.js";
import { deliverComparisons } from "./comparisons.js";

/** `halfshade diff FILE FILE`: what a second recipe has different, and what that does to the light. */
export async function diffCommand(session: Session): Promise<number> {
  const [first = "", second = ""] = session.operands;
  if (first === "-" && second === "-") return misuse(session, "Only one of the two can be standard input.");
  const stage = await language();
  const wanted = { titles: [], holdRecipe: true };
  const a = await evaluateFile(session, stage, first, wanted);
  const b = await evaluateFile(session, stage, second, wanted);
  if (a.setUps === null || b.setUps === null) return Math.max(a.exit, b.exit);
  const names = a.name === b.name ? ["the first", "the second"] : [a.name, b.name];
  const views = await light();
  const comparison = compared(views, [names[0] ?? "", a.setUps[0]], [names[1] ?? "", b.setUps[0]]);
  return deliverComparisons(session, stage, [comparison]);
}
