import type { Expr } from "../../../model/values.js";
import { surfaceUnder } from "../../geometry/background-points.js";
import { placesInView } from "../../geometry/in-view.js";
import { keyToFillStops, litToShadowStops } from "../../light/contrast.js";
import { noLight } from "../../light/no-light.js";
import {
  errorOf,
  ev100Of,
  fNumberOf,
  type Reading,
  readingAt,
  stopsFromAperture,
  stopsOver,
} from "../../light/reading.js";
import { exprArg, exprArgs, nameArg, type ResultExpr } from "../arguments.js";
import { asReading } from "../as-reading.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, value, valueOr } from "../found.js";
import type { Inner } from "./index.js";

/** A result that is made of readings; null for a name that is none. */
export function readingResult(asked: Asked, expr: ResultExpr, inner: Inner): Found | null {
  const { scene } = asked.plan;
  switch (expr.name) {
    case "f_number":
      return ofOne(asked, expr, inner, (reading, found) =>
        valueOr("f-number", fNumberOf(scene, reading.exposure, reading.constant), found.reason ?? ""),
      );
    case "exposure":
      return ofOne(asked, expr, inner, (reading, found) =>
        reading.exposure > 0
          ? value("exposure", reading.exposure)
          : nothing("exposure", found.reason ?? `it ${noLight}`),
      );
    case "ev":
      return ofOne(asked, expr, inner, (reading, found) =>
        valueOr(
          "ev",
          ev100Of(scene, reading.exposure, reading.constant),
          reading.exposure > 0 ? "the camera's shutter time is not known" : (found.reason ?? ""),
        ),
      );
    case "stops_from_aperture":
      return ofOne(asked, expr, inner, (reading, found) =>
        valueOr(
          "stops",
          stopsFromAperture(scene, reading.exposure, reading.constant),
          found.reason ?? "the camera's aperture is not known",
        ),
      );
    case "stops":
      return difference(asked, expr, inner);
    case "evenness":
      return evenness(asked, expr, inner);
    case "lit_to_shadow": {
      const found = litToShadowStops(asked.plan, nameArg(expr, "face") ?? "face");
      return { ...valueOr("contrast", found.stops, found.reason ?? ""), error: found.error };
    }
    case "key_to_fill": {
      const found = keyToFillStops(asked.plan, nameArg(expr, "key") ?? "", nameArg(expr, "fill") ?? "");
      return { ...valueOr("contrast", found.stops, found.reason ?? ""), error: found.error };
    }
    default:
      return null;
  }
}

/** Works out the one reading of a result, then what is asked of it; shares are handed on. */
function ofOne(
  asked: Asked,
  expr: ResultExpr,
  inner: Inner,
  work: (reading: Reading, found: Found) => Found,
): Found {
  const argument: Expr | null = exprArg(expr, "a") ?? exprArg(expr, "reading");
  const found = argument === null ? null : inner(argument);
  const reading = found === null ? null : asReading(asked.plan, found);
  if (found === null || reading === null) return nothing(expr.type, found?.reason ?? "it is not a reading");
  return { ...work(reading, found), reading, shares: found.shares, error: errorOf(reading) };
}

/** The readings behind some arguments, or why one of them cannot be had. */
function readingsOf(asked: Asked, given: readonly Expr[], inner: Inner): readonly Reading[] | string {
  const readings: Reading[] = [];
  for (const argument of given) {
    const found = inner(argument);
    const reading = asReading(asked.plan, found);
    if (reading === null || !(reading.exposure > 0)) return found.reason ?? "it is not a reading";
    readings.push(reading);
  }
  return readings;
}

function difference(asked: Asked, expr: ResultExpr, inner: Inner): Found {
  const given = [...exprArgs(expr, "a"), ...exprArgs(expr, "b")];
  const readings = readingsOf(asked, given, inner);
  if (typeof readings === "string") return nothing("stops", readings);
  const [a, b] = readings;
  if (a === undefined || b === undefined) return nothing("stops", "it takes two readings");
  const found = valueOr("stops", stopsOver(a, b), "one of the two has no light");
  return { ...found, error: errorOf(a) + errorOf(b) };
}

/** The readings over the part of one surface that the picture shows; null where it is not one surface that is asked. */
function overView({ plan }: Asked, given: readonly Expr[]): readonly Reading[] | string | null {
  const [only] = given;
  if (given.length !== 1 || only?.kind !== "reading" || only.towards !== null) return null;
  const station = plan.scene.stations.find((row) => row.name === only.station && row.natural);
  if (station === undefined || surfaceUnder(plan.scene, station) === null) return null;
  const places = placesInView(plan.scene, station);
  if (typeof places === "string") return places;
  const readings = places.map((meter) => readingAt(plan, meter, only.lights));
  return readings.every(({ exposure }) => exposure > 0) ? readings : `a part of ${station.name} ${noLight}`;
}

function evenness(asked: Asked, expr: ResultExpr, inner: Inner): Found {
  const given = exprArgs(expr, "reading");
  const readings = overView(asked, given) ?? readingsOf(asked, given, inner);
  if (typeof readings === "string") return nothing("stops", readings);
  if (readings.length === 0) return nothing("stops", "there is no reading to compare");
  const place = (reading: Reading): number => Math.log2(reading.exposure / reading.constant);
  const sorted = [...readings].sort((a, b) => place(a) - place(b));
  const [least, most] = [sorted[0] as Reading, sorted[sorted.length - 1] as Reading];
  return { ...value("stops", place(most) - place(least)), error: errorOf(least) + errorOf(most) };
}
