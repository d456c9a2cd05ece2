import { coverageOf } from "../../frame/coverage.js";
import { subjectHeight } from "../../frame/framing.js";
import { handLimit } from "../../frame/hands.js";
import { lensOf } from "../../frame/project.js";
import { blurOf, opticsOf, pixelPitch, sharpRange } from "../../frame/sharpness.js";
import { bareSides } from "../../frame/sides.js";
import { brightestOf } from "../../light/highlights.js";
import { errorOf } from "../../light/reading.js";
import { firstSubject } from "../../plan.js";
import { nameArg, placeArg, type ResultExpr } from "../arguments.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, shareOr, value, valueOr } from "../found.js";

/** A result of the picture: what it shows, how sharp and how near to white; null for a name that is none. */
export function frameResult(asked: Asked, expr: ResultExpr): Found | null {
  switch (expr.name) {
    case "coverage":
    case "uncovered":
      return covering(asked, expr);
    case "subject_share":
    case "hand_limit":
      return ofSubject(asked, expr);
    case "highlight_headroom": {
      const found = brightestOf(asked.plan);
      if (typeof found === "string") return nothing("stops", found);
      const { reading, headroom } = found;
      return { ...value("stops", headroom), shares: reading.shares, error: errorOf(reading) };
    }
    case "hyperfocal": {
      const optics = opticsOf(asked.plan.scene);
      if (typeof optics === "string") return nothing("length", optics);
      return value("length", sharpRange(optics, optics.camera.circleOfConfusion).hyperfocal);
    }
    case "blur":
    case "blur_pixels":
      return blur(asked, expr);
    default:
      return null;
  }
}

function covering({ plan }: Asked, expr: ResultExpr): Found {
  const found = coverageOf(plan.scene);
  if (typeof found === "string") return nothing("number", found);
  if (expr.name === "coverage") return shareOr(found.covered, "");
  const side = nameArg(expr, "side");
  if (side === null) return shareOr(1 - found.covered, "");
  const row = bareSides(found.bare, found.set).find((candidate) => candidate.side === side);
  return shareOr(row?.depth ?? null, "it takes left, right, top or bottom");
}

function ofSubject({ plan }: Asked, expr: ResultExpr): Found {
  const { scene } = plan;
  const subject = firstSubject(scene);
  const lens = scene.camera === null ? null : lensOf(scene.camera);
  if (scene.camera === null) return nothing(expr.type, "there is no camera");
  if (subject === null) return nothing(expr.type, "there is no subject");
  if (lens === null) return nothing(expr.type, "the camera's focal length is not known");
  if (expr.name === "subject_share")
    return shareOr(subjectHeight(lens, scene, subject), "the subject reaches behind the lens");
  const limit = handLimit(lens, scene, subject);
  return valueOr("length", limit?.height ?? null, "neither the picture nor a set ends above the head");
}

function blur({ plan }: Asked, expr: ResultExpr): Found {
  const optics = opticsOf(plan.scene);
  if (typeof optics === "string") return nothing(expr.type, optics);
  const place = placeArg(plan, expr, "at");
  if (place === null || place === undefined) return nothing(expr.type, "there is no such place");
  const width = blurOf(optics, place);
  if (width === null) return nothing(expr.type, "the place is behind the lens");
  if (expr.name === "blur") return { ...value("length", width), edge: true };
  const pitch = pixelPitch(optics.camera);
  return valueOr("number", pitch === null ? null : width / pitch, "the camera's `pixels` are not known");
}
