import { exp2 } from "../core/exp2.js";
import type { Span } from "../core/span.js";
import { type BaseUnit, dimensionWords } from "../units/dimension.js";
import { plusMinus } from "../units/make.js";
import type { Quantity } from "../units/quantity.js";
import { unitTable } from "../units/spellings.js";
import { type Context, replace, report } from "./context.js";
import { sayNumber } from "./say-number.js";

/** Amounts of light and energy, which may be off by stops as well. */
const LIGHT: ReadonlySet<BaseUnit> = new Set(["J", "lm s", "lm", "cd s", "cd", "lm/W", "lx"]);

/** The unit in which a tolerance of a value may be given, besides per cent. */
function toleranceUnit(value: Quantity): {
  readonly unit: string;
  readonly share: boolean;
  readonly stops?: boolean;
  readonly example: string;
} {
  if (value.unit === "f" || value.unit === "ISO" || value.unit === "EV" || value.written.includes(":")) {
    return { unit: "stop", share: false, example: `${value.written} +- 1/3 stop` };
  }
  if (LIGHT.has(value.unit))
    return { unit: value.unit, share: true, stops: true, example: `${value.written} +- 5 %` };
  if (value.unit === "K") return { unit: "mired", share: false, example: `${value.written} +- 10 mired` };
  return {
    unit: value.unit,
    share: value.unit !== "stop" && value.unit !== "mired",
    example: `${value.written} +- 5 %`,
  };
}

/** How far a value may be off, in its own unit or on its scale; 0 for one that has no tolerance. */
export function absolute({ value, unit, plusMinus }: Quantity): number {
  if (plusMinus === undefined) return 0;
  if (plusMinus.unit === "stop" && LIGHT.has(unit))
    return Math.abs(value) * (exp2(Math.abs(plusMinus.value)) - 1);
  return Math.abs(plusMinus.value * (plusMinus.unit === "%" ? value : 1));
}

/**
 * A worked-out value with the tolerances of what it was worked out of, which add up as squares (JCGM 100:2008, 5.1.2,
 * inputs independent of each other).
 *
 * @param spreads - Each in the unit of the value, or on its scale.
 */
export function withSpreads(value: Quantity, spreads: readonly number[]): Quantity {
  const squares = spreads.reduce((sum, spread) => sum + spread * spread, 0);
  if (!(squares > 0)) return value;
  const whole = Number(Math.sqrt(squares).toPrecision(12));
  const spread = { value: whole, unit: scaleOf(value.unit), written: sayNumber(scaleOf(value.unit), whole) };
  return { ...value, plusMinus: spread };
}

/** The unit in which a value of a unit is off. */
function scaleOf(unit: BaseUnit): BaseUnit {
  if (unit === "f" || unit === "ISO" || unit === "EV") return "stop";
  return unit === "K" ? "mired" : unit;
}

/** A value with its tolerance; a tolerance of the wrong kind is reported and left off. */
export function withTolerance(ctx: Context, value: Quantity, tolerance: Quantity, span: Span): Quantity {
  const allowed = toleranceUnit(value);
  const isShare = allowed.share && tolerance.unit === "1" && tolerance.written.endsWith("%");
  const inStops = allowed.stops === true && tolerance.unit === "stop";
  if (isShare && Math.abs(tolerance.value) >= 1) {
    const { example } = allowed;
    report(ctx, "value.tolerance-whole", span, { written: tolerance.written, example });
    return value;
  }
  if (tolerance.unit === allowed.unit || isShare || inStops) return plusMinus(value, tolerance);
  const unit = unitTable.find((row) => row.base === allowed.unit && value.written.endsWith(` ${row.name}`));
  const text = `${tolerance.written} ${allowed.unit === value.unit ? unit?.name : allowed.unit}`;
  const fixes =
    tolerance.unit === "1" &&
    /^[\d./ ]+$/.test(tolerance.written) &&
    (unit !== undefined || allowed.unit !== value.unit)
      ? [replace(ctx, `write \`${text}\``, span, text)]
      : [];
  report(
    ctx,
    "value.tolerance",
    span,
    {
      words: value.written.includes(":") ? "a ratio" : dimensionWords(value.unit),
      allowed: allowed.share
        ? `${dimensionWords(value.unit)} or a share in per cent`
        : dimensionWords(allowed.unit === "stop" ? "stop" : "mired"),
      found: tolerance.written.endsWith("%") ? "a share in per cent" : dimensionWords(tolerance.unit),
      example: allowed.example,
    },
    { fixes },
  );
  return value;
}
