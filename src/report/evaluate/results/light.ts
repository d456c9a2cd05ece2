import type { Vec3 } from "../../../core/vector.js";
import { distance } from "../../../math/vector.js";
import { seenLight } from "../../../scene/lit/seen.js";
import type { Source } from "../../../scene/types.js";
import { alongFloor, bearingOf, elevationOf } from "../../geometry/directions.js";
import { fallOff } from "../../light/fall-off.js";
import { floorShadow } from "../../light/floor-shadow.js";
import { type Across, shadowEdge, shadowEdge10to90, widestAcross } from "../../light/shadow-edge.js";
import { type AngularSize, sizeFrom } from "../../light/size.js";
import { firstFace } from "../../plan.js";
import { exprArg, nameArg, placeArg, type ResultExpr } from "../arguments.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, value, valueOr } from "../found.js";
import { faceResult } from "./face.js";
import type { Inner } from "./index.js";
import { thrownResult } from "./thrown.js";

/** A result that is taken of a light; null for a name that is none. */
export function lightResult(asked: Asked, expr: ResultExpr, inner: Inner): Found | null {
  if (expr.of === null) return null;
  const source = asked.plan.scene.sources.find((row) => row.name === expr.of);
  if (source === undefined) return null;
  const thrown = thrownResult(asked.plan.scene, source, expr) ?? faceResult(asked.plan, source, expr);
  if (thrown !== null) return thrown;
  // Size, direction and hardness are those of the patch that a lamp lights where it shines into a surface.
  const seen = seenLight(source);
  switch (expr.name) {
    case "angular_size":
      return size(asked, expr, seen, (found) => found.equivalent);
    case "angular_least":
      return size(asked, expr, seen, (found) => found.least);
    case "angular_greatest":
      return size(asked, expr, seen, (found) => found.greatest);
    case "angular_diagonal":
      return size(asked, expr, seen, (found) => found.diagonal);
    case "times_sun":
      return size(asked, expr, seen, (found) => found.timesSun);
    case "elevation":
      return fromPoint(asked, expr, "at", (eye) => value("angle", elevationOf(eye, seen.centre)));
    case "bearing":
      return fromPoint(asked, expr, "at", (eye) =>
        valueOr("angle", bearingOf(eye, seen.centre), `${source.name} stands straight above or below`),
      );
    case "distance":
      return fromPoint(asked, expr, "from", (eye) => value("length", distance(eye, source.centre)));
    case "floor_distance":
      return value("length", alongFloor([0, 0, 0], source.centre));
    case "height":
      return value("length", source.centre[2]);
    case "energy":
      return value("luminous-energy", source.energy);
    case "reserve":
      return valueOr("stops", source.below, `${source.name} is off`);
    case "shadow_length": {
      const shadow = floorShadow(asked.plan.scene, seen);
      return valueOr("length", shadow.length, shadow.reason ?? "");
    }
    case "fall_off":
      return between(asked, expr, source);
    case "shadow_edge":
    case "shadow_edge_10_90":
      return edge(expr, seen, inner);
    default:
      return null;
  }
}

/** Something as seen from `at:` or `from:`, else from the first subject's face. */
function fromPoint(asked: Asked, expr: ResultExpr, argument: string, work: (eye: Vec3) => Found): Found {
  const given = placeArg(asked.plan, expr, argument);
  if (given === null) return nothing(expr.type, "the scene has no such place");
  const eye = given ?? firstFace(asked.plan.scene);
  return eye === null ? nothing(expr.type, "there is no subject to take it from") : work(eye);
}

function size(
  asked: Asked,
  expr: ResultExpr,
  source: Source,
  pick: (found: AngularSize) => number | null,
): Found {
  return fromPoint(asked, expr, "at", (eye) => {
    const found = sizeFrom(source, eye);
    if (found === null) return nothing(expr.type, `the lit side of ${source.name} is not seen from there`);
    return valueOr(expr.type, pick(found), `${source.name} is not a rectangle`);
  });
}

function between(asked: Asked, expr: ResultExpr, source: Source): Found {
  const from = placeArg(asked.plan, expr, "from");
  const to = placeArg(asked.plan, expr, "to");
  if (from === null || from === undefined || to === null || to === undefined) {
    return nothing("stops", "the scene has no such place");
  }
  const { stops, error } = fallOff(asked.plan, source, from, to);
  return { ...valueOr("stops", stops, `${source.name} does not reach both places`), error };
}

function edge(expr: ResultExpr, source: Source, inner: Inner): Found {
  const given = exprArg(expr, "gap");
  const gap = given === null ? null : inner(given).value;
  if (gap === null || !(gap >= 0)) return nothing("length", "the gap is not a length");
  const across = acrossOf(expr, source);
  const width =
    expr.name === "shadow_edge" ? shadowEdge(source, gap, across) : shadowEdge10to90(source, gap, across);
  return width === null
    ? nothing("length", `the aim is not in front of ${source.name}`)
    : { ...value("length", width), edge: true };
}

function acrossOf(expr: ResultExpr, source: Source): Across {
  const word = nameArg(expr, "across");
  if (word === "width" || word === "height") return word;
  const given = exprArg(expr, "across");
  return given !== null && given.kind === "value" ? given.quantity.value : widestAcross(source);
}
