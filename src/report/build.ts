import type { Expectation, Recipe } from "../model/types.js";
import type { Scene } from "../scene/types.js";
import { type SceneLight, sceneLight } from "../transport/scene-light.js";
import { assertPlain, withoutMinusZero } from "./assert-plain.js";
import { reportAssumed } from "./assumed.js";
import { reportCamera } from "./camera.js";
import { reportColour } from "./colour/build.js";
import type { Asked } from "./evaluate/expression.js";
import { measuredInputs } from "./evaluate/inputs.js";
import { reportExpectations } from "./expectations.js";
import { reportFaces } from "./face/report.js";
import { reportFinishing } from "./finishing/build.js";
import { reportFrame, reportSharpness } from "./frame/report.js";
import { reportTiming } from "./frame/report-timing.js";
import { reportGloss } from "./gloss/build.js";
import { headline } from "./headline.js";
import { reportIntent } from "./intent/build.js";
import { keyReading } from "./light/key-reading.js";
import { reportLight } from "./light.js";
import { mattersMost } from "./matters.js";
import { notClaimed } from "./not-claimed.js";
import { lightsOf, type Plan } from "./plan.js";
import { reportResults } from "./results.js";
import { runRules } from "./rules/run.js";
import type { Report } from "./schema/report.js";
import { setupSentences } from "./setup.js";
import { reportShadows } from "./shadows.js";
import { reportStations } from "./stations.js";
import { reportThrown } from "./thrown/report.js";

/** What a report may be told besides recipe and scene. */
export interface ReportOptions {
  /** The line, from 1, on which an expectation is written; null where it is not known. */
  readonly lineOf?: (expectation: Expectation) => number | null;
  /** What variant of the recipe it is, with what became of its holds; null, or left out, for the recipe itself. */
  readonly variant?: Report["variant"];
}

/**
 * The report of a set-up: plain JSON in fixed units that every view is made from, valid against `reportSchema`. Pure;
 * the same input gives the same bytes.
 *
 * @param recipe - The checked recipe.
 * @param scene - Its scene, from `buildScene`.
 * @param light - The light of the scene, from `sceneLight`.
 */
export function buildReport(
  recipe: Recipe,
  scene: Scene,
  light: SceneLight = sceneLight(scene),
  options: ReportOptions = {},
): Report {
  const bare: Plan = { recipe, scene, light };
  const frame = reportFrame(bare);
  const plan: Plan = frame === null ? bare : { ...bare, picture: { recipe, scene, frame } };
  const { warnings, silenced } = runRules(plan);
  const alarms = warnings.filter((row) => row.severity !== "note").length;
  const keyed = keyReading(plan);
  const asked: Asked = { plan, alarms };
  const inputs = measuredInputs(plan);
  const expectations = [...reportExpectations(asked, inputs, options.lineOf ?? (() => null))];
  const shadows = [...reportShadows(plan, keyed === null ? null : keyed.exposure / keyed.constant)];
  const colour = reportColour(plan);
  const intent = reportIntent(plan);
  const report: Report = withoutMinusZero({
    format: 1,
    title: recipe.title,
    variant: options.variant ?? null,
    headline: headline(plan, warnings, expectations),
    matters_most: mattersMost(plan),
    setup: setupSentences(plan),
    camera: reportCamera(plan),
    frame,
    sharpness: reportSharpness(plan),
    timing: reportTiming(plan),
    lights: lightsOf(scene).map((source) => reportLight(plan, source)),
    stations: [...reportStations(plan, inputs)],
    gloss: reportGloss(plan),
    shadows,
    thrown: reportThrown(scene, shadows),
    faces: reportFaces(plan),
    colour,
    intent,
    finishing: reportFinishing(plan, { colour, intent }),
    results: [...reportResults(asked, inputs)],
    expectations,
    warnings: [...warnings],
    silenced: [...silenced],
    assumed: [...reportAssumed(scene, [...warnings, ...silenced.flatMap((row) => row.warnings)])],
    not_claimed: [...notClaimed(scene)],
  });
  assertPlain(report);
  return report;
}
