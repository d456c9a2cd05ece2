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

/** Something that a value is worked out of. */
export interface Term {
  readonly quantity: Quantity;
  /** What the value changes by, in its unit or on its scale, where this one is off by 1. */
  readonly slope: number;
}

/**
 * A worked-out value with the tolerances of what it was worked out of, which add up as squares (JCGM 100:2008, 5.1.2);
 * what comes from one `let` is off together, and adds up with its sign before that (5.2.2, inputs correlated fully).
 */
export function withSpreads(value: Quantity, terms: readonly Term[]): Quantity {
  const shared = new Map<string, { readonly name: string; readonly off: number }>();
  let squares = 0;
  for (const { quantity, slope } of terms) {
    const off = absolute(quantity) * slope;
    squares += ownShare(quantity) * off * off;
    for (const { tape, name, share } of quantity.origin ?? []) {
      shared.set(tape, { name, off: (shared.get(tape)?.off ?? 0) + off * share });
    }
  }
  for (const { off } of shared.values()) squares += off * off;
  // Where a name takes itself away nothing is left to be off, which is another thing than to have no tolerance.
  if (terms.every(({ quantity }) => quantity.plusMinus === undefined)) return value;
  const size = Math.sqrt(squares);
  const whole = Number(size.toPrecision(12));
  const spread = { value: whole, unit: scaleOf(value.unit), written: sayNumber(scaleOf(value.unit), whole) };
  const origin = [...shared].flatMap(([tape, { name, off }]) =>
    Math.abs(off) > NOTHING * size ? [{ tape, name, share: off / size }] : [],
  );
  return { ...value, plusMinus: spread, ...(origin.length === 0 ? {} : { origin }) };
}

/** A share of a tolerance that is none. */
const NOTHING = 1e-9;

/** What of the square of a tolerance is a value's own, and comes from no `let`. */
function ownShare({ origin = [] }: Quantity): number {
  const rest = origin.reduce((sum, { share }) => sum - share * share, 1);
  return rest > NOTHING ? rest : 0;
}

/** The value of a `let`: what it is off by, all that is worked out of it is off by with it. */
export function shared(value: Quantity, tape: string, name: string): Quantity {
  const own = ownShare(value);
  if (!(absolute(value) > 0) || own === 0) return value;
  return { ...value, origin: [...(value.origin ?? []), { tape, name, share: Math.sqrt(own) }] };
}

/** The opposite of a value, with its tolerance: what makes the one more makes the other less. */
export function turnedRound(opposite: Quantity, { plusMinus, origin }: Quantity): Quantity {
  if (plusMinus === undefined) return opposite;
  if (origin === undefined) return { ...opposite, plusMinus };
  return { ...opposite, plusMinus, origin: origin.map((part) => ({ ...part, share: -part.share })) };
}

/** A value with another tolerance behind it: where the one before came from no longer counts. */
const bare = ({ value, unit, written }: Quantity): Quantity => ({ value, unit, written });

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
  if (tolerance.unit === allowed.unit || isShare || inStops) return plusMinus(bare(value), tolerance);
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
