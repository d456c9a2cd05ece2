import type { Vec3 } from "../../core/vector.js";
import type { Expr } from "../../model/values.js";
import { heldAt } from "../../scene/held-meter.js";
import { placeOf, stationIndex } from "../../scene/places.js";
import type { Station } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";
import { errorOf, fNumberOf, noLight, readingAt } from "../light/reading.js";
import type { Plan } from "../plan.js";
import { type Found, nothing } from "./found.js";

type ReadingExpr = Extract<Expr, { kind: "reading" }>;

/** Where a meter is, the way it looks by itself, and the body before which it is held. */
interface Place extends Pick<Station, "at" | "before"> {
  readonly facing: Vec3 | null;
}

/** Where the meter of a reading is; null where the scene has no such place. */
export function meterPlace(plan: Plan, expr: ReadingExpr): Place | null {
  const { scene } = plan;
  const index = stationIndex(scene, expr.station, expr.receptor) ?? stationIndex(scene, expr.station);
  const station = index === null ? undefined : scene.stations[index];
  if (station !== undefined) return station;
  const path = expr.station.split(".");
  const at = placeOf(plan.scene, {
    kind: "named",
    path,
    written: expr.station,
  });
  return at === null ? null : { at, facing: null };
}

/** A reading of the recipe: at any named place, turned to any point, of all lights or of some. */
export function evaluateReading(plan: Plan, expr: ReadingExpr): Found {
  const place = meterPlace(plan, expr);
  if (place === null) return nothing("reading", `the scene has no place called ${expr.station}`);
  let { at, facing } = place;
  if (expr.towards !== null) {
    const target = placeOf(plan.scene, expr.towards);
    if (target === null) return nothing("reading", `the scene has no place called ${expr.towards.written}`);
    // A disc is held for what it looks at, a dome for the key.
    if (place.before !== undefined && expr.receptor === "disc") at = heldAt(place.before, target);
    facing = directionTo(at, target);
  }
  if (facing === null) return nothing("reading", `it is not said where the meter at ${expr.station} looks`);
  const reading = readingAt(plan, { at, facing, receptor: expr.receptor }, expr.lights);
  const fNumber = fNumberOf(plan.scene, reading.exposure, reading.constant);
  const reason =
    reading.exposure > 0
      ? fNumber === null
        ? "the camera's ISO is not known"
        : null
      : `${expr.station} ${noLight}`;
  return {
    type: "reading",
    value: fNumber,
    reason,
    reading,
    shares: reading.shares,
    error: errorOf(reading),
    edge: false,
  };
}
