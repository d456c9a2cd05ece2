import { seenLight } from "../../../scene/lit/seen.js";
import type { Scene, Source } from "../../../scene/types.js";
import { firstSubject } from "../../plan.js";
import { ownerOf, sayOwner } from "../../say/surfaces.js";
import { narrowWidth } from "../../thrown/edges.js";
import { backgroundCorners, fanOf } from "../../thrown/fan.js";
import {
  growthOf,
  middleEdge,
  outlineEdges,
  reachFrom,
  type Shadow,
  shadowsOn,
} from "../../thrown/shadows-of.js";
import { nameArg, type ResultExpr } from "../arguments.js";
import { type Found, nothing, value, valueOr } from "../found.js";

/** A result of a shadow as it falls on a surface; null for one that is not taken of a surface. */
export function thrownResult(scene: Scene, source: Source, expr: ResultExpr): Found | null {
  const named = nameArg(expr, "on");
  const on = named === null ? null : ownerOf(named);
  if (expr.name === "shadow_fan") return fan(scene, source);
  if (on === null) return null;
  switch (expr.name) {
    case "shadow_edge":
    case "shadow_edge_10_90":
      return edge(scene, source, expr, on);
    case "shadow_length":
      return ofFirst(scene, source, expr, on, (shadow) =>
        value("length", reachFrom(shadow, shadow.thrower.subject?.place ?? [0, 0, 0])),
      );
    case "shadow_growth":
      return ofFirst(scene, source, expr, on, (shadow) =>
        valueOr("number", growthOf(shadow), `the middle of the head's shadow falls beside ${sayOwner(on)}`),
      );
    default:
      return null;
  }
}

const none = (type: Found["type"], on: string): Found =>
  nothing(type, `no shadow of a subject falls on ${sayOwner(on)}`);

/** The middle width along the outlines of all subjects on a surface. */
function edge(scene: Scene, source: Source, expr: ResultExpr, on: string): Found {
  const shadows = shadowsOn(scene, source, on).filter(({ thrower }) => thrower.subject !== null);
  if (shadows.length === 0) return none("length", on);
  const edges = shadows.flatMap((shadow) => outlineEdges(shadow)).sort((a, b) => a.full - b.full);
  const middle = middleEdge(edges);
  const width = middle === null ? null : expr.name === "shadow_edge" ? middle.full : narrowWidth(middle);
  return {
    ...valueOr("length", width, `the shadow's edge on ${sayOwner(on)} has no end, or lies outside of it`),
    edge: true,
  };
}

function ofFirst(
  scene: Scene,
  source: Source,
  expr: ResultExpr,
  on: string,
  work: (shadow: Shadow) => Found,
): Found {
  const first = firstSubject(scene);
  if (first === null) return nothing(expr.type, "there is no subject");
  const shadow = shadowsOn(scene, source, on).find(({ thrower }) => thrower.subject === first);
  return shadow === undefined ? none(expr.type, on) : work(shadow);
}

function fan(scene: Scene, source: Source): Found {
  const corners = backgroundCorners(scene);
  if (corners.length === 0) return nothing("angle", "no piece of the set stands upright");
  const middle = firstSubject(scene)?.place ?? [0, 0, 0];
  return value("angle", fanOf(seenLight(source).centre, corners, middle));
}
