import { lightPlace, seenLight } from "../../../scene/lit/seen.js";
import type { Scene, SceneSubject, Source } from "../../../scene/types.js";
import { anglesFrom, type FaceAngles } from "../../face/angles.js";
import { catchlight } from "../../face/catchlight.js";
import { type NoseShadow, noseShadow } from "../../face/nose.js";
import { firstSubject, type Plan, partName } from "../../plan.js";
import { threshold } from "../../settings.js";
import { nameArg, type ResultExpr } from "../arguments.js";
import { type Found, nothing, shareOr, value, valueOr } from "../found.js";

/** A result of a light as a face has it; null for a name that is none. */
export function faceResult(plan: Plan, source: Source, expr: ResultExpr): Found | null {
  const { scene } = plan;
  switch (expr.name) {
    case "azimuth_to_nose":
      return fromFace(scene, source, expr, ({ azimuth }) => value("angle", Math.abs(azimuth)));
    case "elevation_to_nose":
      return fromFace(scene, source, expr, ({ elevation }) => value("angle", elevation));
    case "nose_shadow_side":
      return ofNose(scene, source, expr, ({ side }) => side);
    case "nose_shadow_drop":
      return ofNose(scene, source, expr, ({ drop }) => drop);
    case "catchlight_share":
    case "catchlight_offset":
      return inEye(plan, source, expr);
    default:
      return null;
  }
}

function faceOf(scene: Scene, expr: ResultExpr): SceneSubject | null {
  const name = nameArg(expr, "face");
  if (name === null) return firstSubject(scene);
  return scene.subjects.find((subject) => partName(scene, subject, "face") === name) ?? null;
}

function fromFace(
  scene: Scene,
  source: Source,
  expr: ResultExpr,
  work: (angles: FaceAngles) => Found,
): Found {
  const subject = faceOf(scene, expr);
  const angles = subject === null ? null : anglesFrom(subject, lightPlace(source));
  return angles === null ? nothing(expr.type, "there is no face to take it from") : work(angles);
}

function ofNose(scene: Scene, source: Source, expr: ResultExpr, pick: (shadow: NoseShadow) => number): Found {
  return fromFace(scene, source, expr, (angles) => {
    const shadow = noseShadow(angles);
    return shadow === null
      ? nothing("length", `${source.name} stands beside or behind the face`)
      : { ...value("length", pick(shadow)), edge: true };
  });
}

function inEye({ scene, recipe }: Plan, source: Source, expr: ResultExpr): Found {
  const subject = faceOf(scene, expr);
  const { camera } = scene;
  if (subject === null || camera === null)
    return nothing("number", subject === null ? "there is no face" : "there is no camera");
  const [lid, side] = [threshold(recipe, "catchlight_lid"), threshold(recipe, "catchlight_side")];
  const found = catchlight(subject, camera, seenLight(source), lid, side);
  if (found === null || !found.seen)
    return nothing("number", found?.reason ?? `the lit side of ${source.name} is not seen from there`);
  return expr.name === "catchlight_share" ? shareOr(found.size, "") : valueOr("number", found.share, "");
}
