import type { FaceAngles } from "./angles.js";

/** How far the tip of a nose stands out of the face, m (common practice, no source). */
export const noseProud = 0.025;

/** Lights wider than this from the face, in deg, throw no nose shadow worth the name. */
export const widest = 45;

/** Where the shadow of the tip of the nose falls on the face, from the foot of the nose. */
export interface NoseShadow {
  /** m, to the side away from the light. */
  readonly side: number;
  /** m, downwards; negative for a light from below. */
  readonly drop: number;
}

/**
 * The shadow of the nose on a flat face: 25 mm tan(azimuth) to the side, 25 mm tan(elevation) / cos(azimuth) down. Null
 * for a light from beside or behind, which throws it past the face.
 */
export function noseShadow({ azimuth, elevation }: FaceAngles): NoseShadow | null {
  const a = (azimuth * Math.PI) / 180;
  if (!(Math.abs(azimuth) < 85)) return null;
  const e = (elevation * Math.PI) / 180;
  return { side: Math.abs(noseProud * Math.tan(a)), drop: (noseProud * Math.tan(e)) / Math.cos(a) };
}
