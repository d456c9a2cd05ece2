import type { Recipe } from "../model/types.js";
import type { Scene } from "../scene/types.js";
import { type SceneLight, sceneLight } from "../transport/scene-light.js";
import { assertPlain, withoutMinusZero } from "./assert-plain.js";
import { reportAssumed } from "./assumed.js";
import { reportCamera } from "./camera.js";
import { reportColour } from "./colour/build.js";
import { reportFaces } from "./face/report.js";
import { reportFinishing } from "./finishing/build.js";
import { reportSharpness } from "./frame/report.js";
import { reportTiming } from "./frame/report-timing.js";
import { reportGloss } from "./gloss/build.js";
import { headline } from "./headline.js";
import { reportIntent } from "./intent/build.js";
import { keyReading } from "./light/key-reading.js";
import { reportLight } from "./light.js";
import { mattersMost } from "./matters.js";
import { notClaimed } from "./not-claimed.js";
import { lightsOf } from "./plan.js";
import { reportResults } from "./results.js";
import type { Report } from "./schema/report.js";
import { setupSentences } from "./setup.js";
import { reportShadows } from "./shadows.js";
import { reportStations } from "./stations.js";
import { castFor } from "./thrown/cast.js";
import { reportThrown } from "./thrown/report.js";
import { judged, type LineOf } from "./verdict.js";

/** What a report may be told besides recipe and scene. */
export interface ReportOptions {
  readonly lineOf?: LineOf;
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
  const judgement = judged(recipe, scene, light, options.lineOf);
  const { plan, frame, asked, warnings, silenced, expectations } = judgement;
  const inputs = judgement.inputs();
  const keyed = keyReading(plan);
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
    lights: lightsOf(scene).map((source) => reportLight(plan, source, inputs)),
    stations: [...reportStations(plan, inputs)],
    gloss: reportGloss(plan),
    shadows,
    thrown: reportThrown(castFor(plan), shadows),
    faces: reportFaces(plan),
    colour,
    intent,
    finishing: reportFinishing(plan, { colour, intent }),
    results: [...reportResults(asked, inputs)],
    expectations,
    warnings,
    silenced: [...silenced],
    assumed: [...reportAssumed(scene, [...warnings, ...silenced.flatMap((row) => row.warnings)])],
    not_claimed: [...notClaimed(scene)],
  });
  assertPlain(report);
  return report;
}
