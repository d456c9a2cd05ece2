import type { Vec3 } from "../../core/vector.js";
import type { Expr } from "../../model/values.js";
import { heldAt } from "../../scene/held-meter.js";
import { placeOf, stationIndex } from "../../scene/places.js";
import type { Station } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";
import { whyNoLight } from "../light/no-light.js";
import { errorOf, fNumberOf, readingAt } from "../light/reading.js";
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

/** The meter of a reading, where it is and the way it looks; a reason in words where it has no place or looks nowhere. */
export function meterHeld(plan: Plan, expr: ReadingExpr): Pick<Station, "at" | "facing"> | string {
  const place = meterPlace(plan, expr);
  if (place === null) return `the scene has no place called ${expr.station}`;
  let { at, facing } = place;
  if (expr.towards !== null) {
    const target = placeOf(plan.scene, expr.towards);
    if (target === null) return `the scene has no place called ${expr.towards.written}`;
    // A disc is held for what it looks at, a dome for the key.
    if (place.before !== undefined && expr.receptor === "disc") at = heldAt(place.before, target);
    facing = directionTo(at, target);
  }
  return facing === null ? `it is not said where the meter at ${expr.station} looks` : { at, facing };
}

/** A reading of the recipe: at any named place, turned to any point, of all lights or of some. */
export function evaluateReading(plan: Plan, expr: ReadingExpr): Found {
  const meter = meterHeld(plan, expr);
  if (typeof meter === "string") return nothing("reading", meter);
  const { at, facing } = meter;
  const reading = readingAt(plan, { at, facing, receptor: expr.receptor }, expr.lights);
  const fNumber = fNumberOf(plan.scene, reading.exposure, reading.constant);
  const reason =
    reading.exposure > 0
      ? fNumber === null
        ? "the camera's ISO is not known"
        : null
      : `${expr.station} ${whyNoLight(plan.scene, at, facing)}`;
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
