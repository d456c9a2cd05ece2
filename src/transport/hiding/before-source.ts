import type { Vec3 } from "../../core/vector.js";
import type { SourceShape } from "../../physics/source-shape.js";
import type { HalfSpace } from "./half-space.js";

const product = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** How far before the middle of a body its surface lies as the eye sees it, on average over its outline. */
const BALL_SURFACE = 2 / 3;
const TUBE_SURFACE = Math.PI / 4;
/** Cosine from which on a tube is seen by its end rather than by its side. */
const END_ON = 0.97;

/**
 * The side of the source on which the eye is: what lies beyond the source hides nothing of it. The plane is that of a
 * flat source; of a body it lies square to the sight line, or along a tube's axis, where the surface lies on average.
 */
export function beforeSource(shape: SourceShape, centre: Vec3, at: Vec3, ahead: Vec3): HalfSpace {
  const { normal, lift } = facingPlane(shape, centre, at, ahead);
  const offset = product(normal, centre);
  const side = product(normal, at) - offset;
  return side >= 0
    ? { normal, offset: offset + Math.min(lift, side) }
    : { normal: [-normal[0], -normal[1], -normal[2]], offset: -offset };
}

function facingPlane(
  shape: SourceShape,
  centre: Vec3,
  at: Vec3,
  ahead: Vec3,
): { readonly normal: Vec3; readonly lift: number } {
  if (shape.kind === "disc" || shape.kind === "polygon") return { normal: shape.normal, lift: 0 };
  const back: Vec3 = [-ahead[0], -ahead[1], -ahead[2]];
  if (shape.kind === "sphere") return { normal: back, lift: BALL_SURFACE * shape.radius };
  const u: Vec3 = [shape.to[0] - shape.from[0], shape.to[1] - shape.from[1], shape.to[2] - shape.from[2]];
  const m: Vec3 = [at[0] - centre[0], at[1] - centre[1], at[2] - centre[2]];
  const uu = product(u, u);
  const t = uu > 0 ? product(m, u) / uu : 0;
  const d: Vec3 = [m[0] - t * u[0], m[1] - t * u[1], m[2] - t * u[2]];
  const size2 = product(d, d);
  if (!(size2 > (1 - END_ON * END_ON) * product(m, m)))
    return { normal: back, lift: Math.sqrt(uu) / 2 + BALL_SURFACE * shape.radius };
  const size = Math.sqrt(size2);
  return { normal: [d[0] / size, d[1] / size, d[2] / size], lift: TUBE_SURFACE * shape.radius };
}
