/**
 * Lighting ratios from the illuminances of key and fill (lx, or any one unit of light). Two conventions are in
 * print: lit to shadow, (K + F) : F, where the fill reaches both sides; and key to fill, K : F. Both are given as one
 * number to 1, and undefined where the fill is nothing.
 */

/** Lit side to shadow side: (K + F) / F. */
export function litToShadow(key: number, fill: number): number | undefined {
  return fill > 0 ? (key + fill) / fill : undefined;
}

/** Key to fill: K / F. */
export function keyToFill(key: number, fill: number): number | undefined {
  return fill > 0 ? key / fill : undefined;
}

/** Stops between the lit and the shadow side: log2((K + F) / F). */
export function litShadowStops(key: number, fill: number): number | undefined {
  return fill > 0 ? Math.log2((key + fill) / fill) : undefined;
}

/** The fill that gives a lit-to-shadow ratio: K / (ratio - 1); undefined for ratios of 1 and below. */
export function fillForRatio(key: number, ratio: number): number | undefined {
  return ratio > 1 ? key / (ratio - 1) : undefined;
}
