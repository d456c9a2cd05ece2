/**
 * Where a light vector is written: the sum over the seen part of a source of direction times solid angle, in sr, per
 * unit of luminance. It points towards the source. Its product with a receiver's unit normal and the source's
 * luminance is the illuminance, as long as the seen part lies wholly above the receiver's horizon.
 *
 * The object is reused by callers that compute many of them.
 */
export interface LightVector {
  x: number;
  y: number;
  z: number;
}

/** A light vector of nothing, to be written into. */
export function emptyVector(): LightVector {
  return { x: 0, y: 0, z: 0 };
}

/** Writes the three components and hands the same object back. */
export function setVector(out: LightVector, x: number, y: number, z: number): LightVector {
  out.x = x;
  out.y = y;
  out.z = z;
  return out;
}
