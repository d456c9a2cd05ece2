import { farLimit, nearLimit } from "../../../physics/depth-of-field.js";
import { headroom } from "../../geometry/headroom.js";
import { closeFocus } from "../../light/close-focus.js";
import type { ResultExpr } from "../arguments.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, value, valueOr } from "../found.js";

/** A result of the whole set-up; null for a name that is none. */
export function setResult(asked: Asked, expr: ResultExpr): Found | null {
  switch (expr.name) {
    case "headroom": {
      const found = headroom(asked.plan.scene);
      return valueOr("length", found.metres, found.reason ?? "");
    }
    case "near_limit":
    case "far_limit":
      return sharpLimit(asked, expr.name);
    case "no_warnings":
      return asked.alarms === null
        ? nothing("truth", "the warnings are not worked out")
        : value("truth", asked.alarms === 0 ? 1 : 0);
    default:
      return null;
  }
}

/** Where sharpness ends before or behind the plane of focus, by the camera's circle of confusion. */
function sharpLimit(asked: Asked, which: "near_limit" | "far_limit"): Found {
  const { scene } = asked.plan;
  const { camera } = scene;
  const focus = closeFocus(scene);
  if (camera === null) return nothing("length", "there is no camera");
  if (focus === null || camera.focalLength === null)
    return nothing("length", "the camera's focus is not known");
  if (camera.aperture === null) return nothing("length", "the camera's aperture is not known");
  const limit = which === "near_limit" ? nearLimit : farLimit;
  const found = limit(camera.focalLength, camera.aperture, camera.circleOfConfusion, focus.distance);
  return valueOr("length", found ?? null, "everything behind the focus is sharp");
}
