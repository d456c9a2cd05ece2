import { miredShift } from "../../../physics/mired.js";
import { mixtureError, mixtureOf } from "../../colour/mixture.js";
import { noLight } from "../../light/no-light.js";
import { exprArg, type ResultExpr } from "../arguments.js";
import { asReading } from "../as-reading.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, value } from "../found.js";
import type { Inner } from "./index.js";

/** A result of the colour of the light of a reading; null for a name that is none. */
export function colourResult(asked: Asked, expr: ResultExpr, inner: Inner): Found | null {
  if (expr.name !== "colour_temperature" && expr.name !== "warmth") return null;
  const { scene } = asked.plan;
  const argument = exprArg(expr, "a");
  const found = argument === null ? null : inner(argument);
  const reading = found === null ? null : asReading(asked.plan, found);
  if (reading === null) return nothing(expr.type, found?.reason ?? "it is not a reading");
  if (!(reading.exposure > 0)) return nothing(expr.type, found?.reason ?? `it ${noLight}`);
  const kelvin = mixtureOf(scene, reading)?.kelvin;
  if (kelvin === undefined)
    return nothing(expr.type, "the mixture is too far from white to have a temperature");
  const error = mixtureError(scene, reading, kelvin);
  if (expr.name === "colour_temperature") return { ...value(expr.type, kelvin), error };
  const balance = scene.camera?.balance;
  return balance === undefined
    ? nothing(expr.type, "there is no camera with a white balance")
    : { ...value(expr.type, miredShift(balance, kelvin)), error };
}
