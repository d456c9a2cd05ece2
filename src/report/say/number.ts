/** A number with so many decimals, never with a minus before nothing. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** A number above 0 with two figures, and no exponent: 0.083, 1.2, 38, 470. */
export function twoFigures(value: number): string {
  return figures(value, 2);
}

/** The same with three figures: 0.0834, 1.23, 38.4, 471. */
export function threeFigures(value: number): string {
  return figures(value, 3);
}

/** Rounded to so many figures, whole numbers never rounded; no zeros at the end, no exponent down to 0.000001. */
function figures(value: number, count: number): string {
  if (value === 0) return "0";
  const rounded = Number(value.toPrecision(count));
  const decimals = Math.min(6, Math.max(0, count - 1 - Math.floor(Math.log10(Math.abs(rounded)))));
  const text = fixed(decimals === 0 ? value : rounded, decimals);
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
