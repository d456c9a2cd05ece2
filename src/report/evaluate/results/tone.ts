import { stationIndex } from "../../../scene/places.js";
import { keyReading } from "../../light/key-reading.js";
import { stopsOver } from "../../light/reading.js";
import { reflectanceAt, toneOf } from "../../light/surface-tone.js";
import { exprArg, type ResultExpr } from "../arguments.js";
import { asReading } from "../as-reading.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, value } from "../found.js";
import type { Inner } from "./index.js";

/** How the surface under a reading comes out in the picture; null for a name that is no such result. */
export function toneResult(asked: Asked, expr: ResultExpr, inner: Inner): Found | null {
  if (expr.name !== "lightness" && expr.name !== "srgb") return null;
  const { plan } = asked;
  const argument = exprArg(expr, "a");
  const found = argument === null ? null : inner(argument);
  const reading = found === null ? null : asReading(plan, found);
  if (argument === null || reading === null)
    return nothing(expr.type, found?.reason ?? "it is not a reading");
  const index =
    argument.kind !== "reading" || argument.towards !== null || argument.lights.length > 0
      ? null
      : stationIndex(plan.scene, argument.station, argument.receptor);
  const station = index === null ? undefined : plan.scene.stations[index];
  const reflectance = station === undefined ? null : reflectanceAt(plan.scene, station);
  if (reflectance === null) {
    return nothing(
      expr.type,
      "a surface is wanted, such as `back` or `floor`, and a meter in the air lies on none",
    );
  }
  const key = keyReading(plan);
  const stops = key === null ? null : stopsOver(reading, key);
  if (stops === null) return nothing(expr.type, "the key gives no reading at the face to expose for");
  const { lightness, srgb } = toneOf(reflectance, stops);
  return { ...value(expr.type, expr.name === "lightness" ? lightness : srgb), error: found?.error ?? 0 };
}
