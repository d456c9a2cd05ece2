/**
 * Length on a level floor of the shadow of a thing `height` metres tall that stands `away` metres from the point
 * below a small lamp `lampHeight` metres up: away height / (lampHeight - height), from similar triangles. Undefined
 * where the lamp is not above the top: the shadow has no end.
 */
export function floorShadowLength(height: number, away: number, lampHeight: number): number | undefined {
  return lampHeight > height ? (away * height) / (lampHeight - height) : undefined;
}

/** How much larger a shadow is than what casts it, on a parallel surface: 1 + gap / distance from the lamp. */
export function shadowGrowth(sourceToEdge: number, edgeToReceiver: number): number {
  return 1 + edgeToReceiver / sourceToEdge;
}
