import { once } from "../core/once.js";
import type { Expectation, Recipe } from "../model/types.js";
import type { Scene } from "../scene/types.js";
import type { SceneLight } from "../transport/scene-light.js";
import { assertPlain, withoutMinusZero } from "./assert-plain.js";
import type { Asked } from "./evaluate/expression.js";
import { type MeasuredInput, measuredInputs } from "./evaluate/inputs.js";
import { reportExpectations } from "./expectations.js";
import { reportFrame } from "./frame/report.js";
import type { Plan } from "./plan.js";
import { runRules, type Warned } from "./rules/run.js";
import type { Report } from "./schema/report.js";
import { castOf } from "./thrown/cast.js";

/** The line, from 1, on which an expectation is written; null where it is not known. */
export type LineOf = (expectation: Expectation) => number | null;

/** What a report says to a check. */
export type Verdict = Pick<Report, "expectations" | "warnings">;

/** A set-up judged, with what the judging worked out that the rest of a report needs. */
export interface Judged extends Verdict, Pick<Warned, "silenced"> {
  readonly plan: Plan;
  readonly frame: Report["frame"];
  readonly asked: Asked;
  /** The measured inputs, made when they are first asked for: most expectations never do. */
  readonly inputs: () => readonly MeasuredInput[];
}

/** Finds what warns in a set-up and what becomes of its expectations. */
export function judged(recipe: Recipe, scene: Scene, light: SceneLight, lineOf: LineOf = () => null): Judged {
  const bare: Plan = { recipe, scene, light };
  const frame = reportFrame(bare);
  const cast = castOf(scene);
  const plan: Plan = { ...bare, cast, ...(frame === null ? {} : { picture: { recipe, scene, frame } }) };
  const { warnings, silenced } = runRules(plan);
  const alarms = warnings.filter((row) => row.severity !== "note").length;
  const asked: Asked = { plan, alarms };
  const inputs = once(() => measuredInputs(plan));
  const expectations = [...reportExpectations(asked, inputs, lineOf)];
  return { plan, frame, asked, inputs, warnings: [...warnings], silenced, expectations };
}

/** What the report of a set-up would say to a check, without the rest of a report: a third of its work. */
export function verdictOf(recipe: Recipe, scene: Scene, light: SceneLight, lineOf?: LineOf): Verdict {
  const { expectations, warnings } = judged(recipe, scene, light, lineOf);
  const verdict = withoutMinusZero({ expectations, warnings });
  assertPlain(verdict);
  return verdict;
}
