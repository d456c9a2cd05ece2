import { headroom } from "../../geometry/headroom.js";
import type { ResultExpr } from "../arguments.js";
import type { Asked } from "../expression.js";
import { type Found, nothing, value, valueOr } from "../found.js";

/** A result of the whole set-up; null for a name that is none. */
export function setResult(asked: Asked, expr: ResultExpr): Found | null {
  switch (expr.name) {
    case "headroom": {
      const found = headroom(asked.plan.scene);
      return valueOr("length", found.metres, found.reason ?? "");
    }
    case "no_warnings":
      return asked.alarms === null
        ? nothing("truth", "the warnings are not worked out")
        : value("truth", asked.alarms === 0 ? 1 : 0);
    default:
      return null;
  }
}
