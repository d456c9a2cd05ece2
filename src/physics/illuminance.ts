import { capsuleClippedVector, capsuleSolidAngle, capsuleVector } from "./capsule-source.js";
import { discClippedVector, discSolidAngle, discVector } from "./disc-source.js";
import type { LightVector } from "./light-vector.js";
import { polygonClippedVector, polygonSolidAngle, polygonVector } from "./polygon-source.js";
import type { SourceShape } from "./source-shape.js";
import { sphereClippedVector, sphereSolidAngle, sphereVector } from "./sphere-source.js";

/** Writes the light vector of a uniform source at a point (sr per unit of luminance), horizon not considered. */
export function lightVector(
  source: SourceShape,
  px: number,
  py: number,
  pz: number,
  out: LightVector,
): LightVector {
  switch (source.kind) {
    case "disc":
      return discVector(source, px, py, pz, out);
    case "polygon":
      return polygonVector(source, px, py, pz, out);
    case "sphere":
      return sphereVector(source, px, py, pz, out);
    case "capsule":
      return capsuleVector(source, px, py, pz, out);
    default:
      return source satisfies never;
  }
}

/** Writes the light vector of the part of a source where `m . direction >= 0`, m a unit vector. */
export function clippedLightVector(
  source: SourceShape,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  out: LightVector,
): LightVector {
  switch (source.kind) {
    case "disc":
      return discClippedVector(source, px, py, pz, mx, my, mz, out);
    case "polygon":
      return polygonClippedVector(source, px, py, pz, mx, my, mz, out);
    case "sphere":
      return sphereClippedVector(source, px, py, pz, mx, my, mz, out);
    case "capsule":
      return capsuleClippedVector(source, px, py, pz, mx, my, mz, out);
    default:
      return source satisfies never;
  }
}

/** Solid angle of a source at a point, in sr: 0 behind a flat source and inside a body. */
export function solidAngle(source: SourceShape, px: number, py: number, pz: number): number {
  switch (source.kind) {
    case "disc":
      return discSolidAngle(source, px, py, pz);
    case "polygon":
      return polygonSolidAngle(source, px, py, pz);
    case "sphere":
      return sphereSolidAngle(source, px, py, pz);
    case "capsule":
      return capsuleSolidAngle(source, px, py, pz);
    default:
      return source satisfies never;
  }
}

/**
 * Projected solid angle of a source at a flat receptor with the unit normal n, in sr: the illuminance per unit of
 * luminance, cut at the receptor's horizon. Exact for sources of one luminance. `scratch` is written over.
 */
export function discReading(
  source: SourceShape,
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
  scratch: LightVector,
): number {
  clippedLightVector(source, px, py, pz, nx, ny, nz, scratch);
  const e = scratch.x * nx + scratch.y * ny + scratch.z * nz;
  return Math.max(e, 0);
}

/**
 * What a dome that faces the unit vector n gets from a source, in sr: the illuminance per unit of luminance with the
 * response (1 + cos) / 2, which is 1 on its axis, 1/2 at its side and 0 at its back; no horizon. Exact for sources
 * of one luminance: half the solid angle and half the light vector along n. `scratch` is written over.
 */
export function domeReading(
  source: SourceShape,
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
  scratch: LightVector,
): number {
  lightVector(source, px, py, pz, scratch);
  const e = (solidAngle(source, px, py, pz) + scratch.x * nx + scratch.y * ny + scratch.z * nz) / 2;
  return Math.max(e, 0);
}
