import type { SceneSubject } from "../../../scene/types.js";
import type { Side } from "../../light/head-outline.js";
import { rimWidth } from "../../light/rim-width.js";
import { separation } from "../../light/separation.js";
import { firstSubject, partName } from "../../plan.js";
import { nameArg, type ResultExpr } from "../arguments.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, shareOr, valueOr } from "../found.js";

/** A result of the head's outline as the lens sees it; null for a name that is none. */
export function outlineResult(asked: Asked, expr: ResultExpr): Found | null {
  const side = nameArg(expr, "side");
  switch (expr.name) {
    case "separation":
      return isSide(side) ? apart(asked, expr, side) : nothing("stops", "it takes left, right or top");
    case "rim_width":
    case "rim_share":
      return isSide(side) ? rim(asked, expr, side) : nothing(expr.type, "it takes left, right or top");
    default:
      return null;
  }
}

const isSide = (word: string | null): word is Side => word === "left" || word === "right" || word === "top";

function apart(asked: Asked, expr: ResultExpr, side: Side): Found {
  const { scene } = asked.plan;
  const name = nameArg(expr, "outline") ?? "hair";
  const owner = (part: string) => (row: SceneSubject) => partName(scene, row, part) === name;
  const haired = scene.subjects.find(owner("hair"));
  const subject = haired ?? scene.subjects.find(owner("face"));
  if (subject === undefined) return nothing("stops", `there is no subject with ${name}`);
  const part = haired === undefined ? "face" : "hair";
  const found = separation(asked.plan, subject, part, side, nameArg(expr, "against"));
  return { ...valueOr("stops", found.stops, found.reason ?? ""), error: found.error };
}

function rim(asked: Asked, expr: ResultExpr, side: Side): Found {
  const { scene } = asked.plan;
  const subject = firstSubject(scene);
  const source = scene.sources.find((row) => row.name === nameArg(expr, "light"));
  if (subject === null || source === undefined)
    return nothing(expr.type, subject === null ? "there is no subject" : "there is no such light");
  const { width, share, reason } = rimWidth(asked.plan, subject, source, side);
  if (expr.name === "rim_width") return { ...valueOr("length", width, reason ?? ""), edge: true };
  return shareOr(share, reason ?? "the focal length is not known");
}
