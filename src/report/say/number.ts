/** A number with so many decimals, never with a minus before nothing. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** A number above 0 with two figures, and no exponent: 0.083, 1.2, 38, 470. */
export function twoFigures(value: number): string {
  if (value === 0) return "0";
  const size = Math.abs(value);
  if (size >= 9.95) return fixed(value, 0);
  const decimals = Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(size))));
  const text = fixed(value, decimals);
  return text.includes(".") ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
}

/**
 * The greatest multiple of `step` that is not above a value. A hair of rounding is forgiven, so that a number that is
 * a multiple already stays.
 */
export function floorTo(value: number, step: number): number {
  const count = Math.floor(value / step + 1e-6);
  return tidy(count * step);
}

/** The least multiple of `step` that is not below a value, a hair of rounding forgiven. */
export function ceilTo(value: number, step: number): number {
  const count = Math.ceil(value / step - 1e-6);
  return tidy(count * step);
}

/** Takes the last digits off a product, so that 21 * 0.1 is 2.1. */
function tidy(value: number): number {
  const text = Number(value.toPrecision(12));
  return text === 0 ? 0 : text;
}

/** `one light`, `3 lights`: a count with its noun. */
export function count(amount: number, noun: string): string {
  return amount === 1 ? `1 ${noun}` : `${fixed(amount, 0)} ${noun}s`;
}

/** Items joined as a sentence joins them: `a`, `a and b`, `a, b and c`. */
export function list(items: readonly string[]): string {
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} and ${items[items.length - 1]}`;
}
