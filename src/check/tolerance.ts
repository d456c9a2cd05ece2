import type { Span } from "../core/span.js";
import { dimensionWords } from "../units/dimension.js";
import { plusMinus } from "../units/make.js";
import type { Quantity } from "../units/quantity.js";
import { type Context, report } from "./context.js";

/** The unit in which a tolerance of a value may be given, besides per cent. */
function toleranceUnit(value: Quantity): {
  readonly unit: string;
  readonly share: boolean;
  readonly example: string;
} {
  if (value.unit === "f" || value.unit === "ISO" || value.unit === "EV" || value.written.includes(":")) {
    return { unit: "stop", share: false, example: `${value.written} +- 1/3 stop` };
  }
  if (value.unit === "K") return { unit: "mired", share: false, example: `${value.written} +- 10 mired` };
  return {
    unit: value.unit,
    share: value.unit !== "stop" && value.unit !== "mired",
    example: `${value.written} +- 5 %`,
  };
}

/** A value with its tolerance; a tolerance of the wrong kind is reported and left off. */
export function withTolerance(ctx: Context, value: Quantity, tolerance: Quantity, span: Span): Quantity {
  const allowed = toleranceUnit(value);
  const isShare = allowed.share && tolerance.unit === "1" && tolerance.written.endsWith("%");
  if (tolerance.unit === allowed.unit || isShare) return plusMinus(value, tolerance);
  report(ctx, "value.tolerance", span, {
    words: value.written.includes(":") ? "a ratio" : dimensionWords(value.unit),
    allowed: allowed.share
      ? `${dimensionWords(value.unit)} or a share in per cent`
      : dimensionWords(allowed.unit === "stop" ? "stop" : "mired"),
    found: tolerance.written.endsWith("%") ? "a share in per cent" : dimensionWords(tolerance.unit),
    example: allowed.example,
  });
  return value;
}
