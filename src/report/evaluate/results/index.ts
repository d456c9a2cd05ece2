import type { Expr } from "../../../model/values.js";
import type { ResultExpr } from "../arguments.js";
import type { Asked } from "../expression.js";
import { type Found, nothing } from "../found.js";
import { colourResult } from "./colour.js";
import { frameResult } from "./frame.js";
import { lightResult } from "./light.js";
import { outlineResult } from "./outline.js";
import { readingResult } from "./readings.js";
import { setResult } from "./set.js";
import { toneResult } from "./tone.js";

/** Works out an expression inside a result. */
export type Inner = (expr: Expr) => Found;

/** One result of the vocabulary. A name that a later version works out gives null with that reason. */
export function evaluateResult(asked: Asked, expr: ResultExpr, inner: Inner): Found {
  return (
    lightResult(asked, expr, inner) ??
    readingResult(asked, expr, inner) ??
    colourResult(asked, expr, inner) ??
    toneResult(asked, expr, inner) ??
    outlineResult(asked, expr) ??
    setResult(asked, expr) ??
    frameResult(asked, expr) ??
    nothing(expr.type, `${expr.name} is not computed yet`)
  );
}
