import { writeNumber } from "../core/write-number.js";
import { combine, dimensionWords, type Exponents, exponentsOf, namedDimension } from "../units/dimension.js";
import { quantity } from "../units/make.js";
import type { Quantity } from "../units/quantity.js";

/** The outcome of adding or multiplying: a quantity, or why it has none. */
export type Outcome =
  | { readonly kind: "value"; readonly quantity: Quantity }
  | { readonly kind: "refused"; readonly why: "add" | "product" | "stops-on-f-number" | "overflow" };

const refused = (why: "add" | "product" | "stops-on-f-number" | "overflow"): Outcome => ({
  kind: "refused",
  why,
});

/** A worked-out value as a quantity; its written form is the number in the base unit. */
export function computed(unit: Quantity["unit"], value: number): Quantity {
  const number = writeNumber(value);
  if (unit === "1") return quantity(unit, value, number);
  if (unit === "f") return quantity(unit, value, `f/${number}`);
  if (unit === "ISO") return quantity(unit, value, `ISO ${number}`);
  return quantity(unit, value, `${number} ${unit === "J" ? "Ws" : unit}`);
}

function value(unit: Quantity["unit"], number: number): Outcome {
  if (!Number.isFinite(number)) return refused("overflow");
  // 80 cm + 2.5 cm is 0.825 m: the last digits of a sum in binary are nobody's.
  return { kind: "value", quantity: computed(unit, Number(number.toPrecision(12))) };
}

/** a + b or a - b, by the rules of points and differences. */
export function addQuantities(a: Quantity, b: Quantity, sign: "+" | "-"): Outcome {
  const s = sign === "+" ? 1 : -1;
  const pair = `${a.unit} ${b.unit}`;
  if (pair === "f stop" || pair === "stop f") return refused("stops-on-f-number");
  if (pair === "EV stop") return value("EV", a.value + s * b.value);
  if (pair === "EV EV") return sign === "-" ? value("stop", a.value - b.value) : refused("add");
  if (pair === "K mired") {
    const shifted = 1e6 / a.value + s * b.value;
    return shifted > 0 ? value("K", 1e6 / shifted) : refused("overflow");
  }
  if (a.unit !== b.unit || a.unit === "f" || a.unit === "ISO" || a.unit === "K") return refused("add");
  return value(a.unit, a.value + s * b.value);
}

/** A product on its way: a number with exponents, which may have no name yet, or a difference on a scale. */
export interface Running {
  readonly value: number;
  readonly exponents: Exponents | null;
  readonly scale: "stop" | "mired" | null;
}

/** Starts a product with its first factor; null for points on a scale, which do not multiply. */
export function startProduct(q: Quantity): Running | null {
  const exponents = exponentsOf(q.unit);
  if (exponents !== null) return { value: q.value, exponents, scale: null };
  if (q.unit === "stop" || q.unit === "mired") return { value: q.value, exponents: null, scale: q.unit };
  return null;
}

const isPlain = (running: Running): boolean =>
  running.exponents !== null && namedDimension(running.exponents) === "1";

/** Multiplies or divides by one more factor; null where there is no such product. */
export function extendProduct(running: Running, q: Quantity, sign: "*" | "/"): Running | null {
  const next = startProduct(q);
  if (next === null) return null;
  const number = sign === "*" ? running.value * next.value : running.value / next.value;
  if (running.exponents !== null && next.exponents !== null) {
    return {
      value: number,
      exponents: combine(running.exponents, next.exponents, sign === "*" ? 1 : -1),
      scale: null,
    };
  }
  if (running.scale !== null && next.scale === running.scale && sign === "/") {
    const none = exponentsOf("1");
    return none === null ? null : { value: number, exponents: none, scale: null };
  }
  if (running.scale !== null && isPlain(next)) return { ...running, value: number };
  if (next.scale !== null && isPlain(running) && sign === "*") return { ...next, value: number };
  return null;
}

/** The finished product as a quantity, if the trade has a name for its dimension. */
export function finishProduct(running: Running): Outcome {
  if (running.scale !== null) return value(running.scale, running.value);
  const unit = running.exponents === null ? null : namedDimension(running.exponents);
  return unit === null ? refused("product") : value(unit, running.value);
}

/** What a product on its way is, in words. */
export function runningWords(running: Running): string {
  if (running.scale !== null) return dimensionWords(running.scale);
  const unit = running.exponents === null ? null : namedDimension(running.exponents);
  return unit === null ? "a product without a name" : dimensionWords(unit);
}
