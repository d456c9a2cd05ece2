import type { Expr } from "../../../model/values.js";
import { keyToFillStops, litToShadowStops } from "../../light/contrast.js";
import { ev100Of, type Reading, stopsFromAperture, stopsOver } from "../../light/reading.js";
import { exprArg, exprArgs, nameArg, type ResultExpr } from "../arguments.js";
import type { Asked } from "../expression.js";
import { type Found, noDirectLight, nothing, value, valueOr } from "../found.js";
import type { Inner } from "./index.js";

/** A result that is made of readings; null for a name that is none. */
export function readingResult(asked: Asked, expr: ResultExpr, inner: Inner): Found | null {
  const { scene } = asked.plan;
  switch (expr.name) {
    case "f_number":
      return ofOne(expr, inner, (_reading, found) => valueOr("f-number", found.value, found.reason ?? ""));
    case "exposure":
      return ofOne(expr, inner, (reading) =>
        reading.exposure > 0
          ? value("exposure", reading.exposure)
          : nothing("exposure", `it ${noDirectLight}`),
      );
    case "ev":
      return ofOne(expr, inner, (reading, found) =>
        valueOr(
          "ev",
          ev100Of(scene, reading.exposure, reading.constant),
          reading.exposure > 0 ? "the camera's shutter time is not known" : (found.reason ?? ""),
        ),
      );
    case "stops_from_aperture":
      return ofOne(expr, inner, (reading, found) =>
        valueOr(
          "stops",
          stopsFromAperture(scene, reading.exposure, reading.constant),
          found.reason ?? "the camera's aperture is not known",
        ),
      );
    case "stops":
      return difference(expr, inner);
    case "evenness":
      return evenness(expr, inner);
    case "lit_to_shadow": {
      const found = litToShadowStops(scene, nameArg(expr, "face") ?? "face");
      return valueOr("contrast", found.stops, found.reason ?? "");
    }
    case "key_to_fill": {
      const found = keyToFillStops(scene, nameArg(expr, "key") ?? "", nameArg(expr, "fill") ?? "");
      return valueOr("contrast", found.stops, found.reason ?? "");
    }
    default:
      return null;
  }
}

/** Works out the one reading of a result, then what is asked of it; shares are handed on. */
function ofOne(expr: ResultExpr, inner: Inner, work: (reading: Reading, found: Found) => Found): Found {
  const argument: Expr | null = exprArg(expr, "a") ?? exprArg(expr, "reading");
  const found = argument === null ? null : inner(argument);
  if (found === null || found.reading === null)
    return nothing(expr.type, found?.reason ?? "it is not a reading");
  return { ...work(found.reading, found), shares: found.shares };
}

function difference(expr: ResultExpr, inner: Inner): Found {
  const [a, b] = ["a", "b"].map((name) => {
    const argument = exprArg(expr, name);
    return argument === null ? null : inner(argument);
  });
  for (const side of [a, b]) {
    if (!side?.reading || !(side.reading.exposure > 0))
      return nothing("stops", side?.reason ?? "it is not a reading");
  }
  if (!a?.reading || !b?.reading) return nothing("stops", "it is not a reading");
  return valueOr("stops", stopsOver(a.reading, b.reading), "one of the two has no light");
}

function evenness(expr: ResultExpr, inner: Inner): Found {
  const places: number[] = [];
  for (const argument of exprArgs(expr, "reading")) {
    const found = inner(argument);
    if (found.reading === null || !(found.reading.exposure > 0)) {
      return nothing("stops", found.reason ?? "it is not a reading");
    }
    places.push(Math.log2(found.reading.exposure / found.reading.constant));
  }
  if (places.length === 0) return nothing("stops", "there is no reading to compare");
  return value("stops", Math.max(...places) - Math.min(...places));
}
