import type { Vec3 } from "../core/vector.js";
import type { ScenePolygon } from "./types.js";

/** A sheet nearer than this above a place covers it, m: paper lies half a millimetre above what it lies on. */
const THIN = 0.001;

/** Where a meter put down at a place lies: on top of the sheets that lie on the same surface, a hair above it. */
export function lyingOn(polygons: readonly ScenePolygon[], at: Vec3): Vec3 {
  let z = at[2];
  for (const { vertices, normal } of polygons) {
    if (!(Math.abs(normal[2]) > 0.999999)) continue;
    const up = (vertices[0] as Vec3)[2];
    if (!(up > z && up - at[2] < THIN)) continue;
    if (isOver(vertices, normal[2] > 0 ? 1 : -1, at)) z = up;
  }
  return z === at[2] ? at : [at[0], at[1], z];
}

/** True for a point straight above or below a level sheet; `sign` is 1 where its front is up, else -1. */
function isOver(vertices: readonly Vec3[], sign: number, at: Vec3): boolean {
  for (let i = 0; i < vertices.length; i++) {
    const a = vertices[i] as Vec3;
    const b = vertices[(i + 1) % vertices.length] as Vec3;
    if (!(sign * ((b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])) >= 0)) return false;
  }
  return true;
}
