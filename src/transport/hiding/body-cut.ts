import type { Vec3 } from "../../core/vector.js";
import { addScaled, between, dot, frameAround, scale } from "../../math/vector.js";
import type { HalfSpace } from "./half-space.js";
import type { CapsuleOccluder, EllipsoidOccluder } from "./occluder.js";

/** A body with round sides. */
type RoundBody = EllipsoidOccluder | CapsuleOccluder;

/** Corners of a cut. */
const CORNERS = 48;
const STEP = (2 * Math.PI) / CORNERS;
/** By how much corners are moved out, so that the polygon has the area of the round it stands for. */
const WIDE = Math.sqrt(STEP / Math.sin(STEP));
const cosines = Float64Array.from({ length: CORNERS }, (_, i) => Math.cos(i * STEP));
const sines = Float64Array.from({ length: CORNERS }, (_, i) => Math.sin(i * STEP));

/** How a body lies to a plane: wholly before it, wholly beyond it, or on both sides. */
export function sideOf(o: RoundBody, { normal, offset }: HalfSpace): "before" | "beyond" | "both" {
  if (o.kind === "ellipsoid") {
    const p = dot(normal, o.axes[0]);
    const q = dot(normal, o.axes[1]);
    const r = dot(normal, o.axes[2]);
    const reach = Math.sqrt(p * p + q * q + r * r);
    const middle = dot(normal, o.centre) - offset;
    return middle >= reach ? "before" : middle <= -reach ? "beyond" : "both";
  }
  const from = dot(normal, o.from) - offset;
  const to = dot(normal, o.to) - offset;
  if (Math.min(from, to) >= o.radius) return "before";
  return Math.max(from, to) <= -o.radius ? "beyond" : "both";
}

/** The corners of what a plane cuts out of a body that lies on both sides of it. */
export function bodyCut(o: RoundBody, { normal, offset }: HalfSpace): readonly Vec3[] {
  return o.kind === "ellipsoid" ? ellipsoidCut(o, normal, offset) : capsuleCut(o, normal, offset);
}

function ellipsoidCut(o: EllipsoidOccluder, normal: Vec3, offset: number): readonly Vec3[] {
  // The plane where the ellipsoid is the unit sphere.
  const m: Vec3 = [dot(normal, o.axes[0]), dot(normal, o.axes[1]), dot(normal, o.axes[2])];
  const size = Math.sqrt(dot(m, m));
  const away = (offset - dot(normal, o.centre)) / size;
  const unit: Vec3 = [m[0] / size, m[1] / size, m[2] / size];
  const [u, v] = frameAround(unit);
  const wide = WIDE * Math.sqrt(Math.max(0, (1 - away) * (1 + away)));
  const [f, g, h] = o.axes;
  const c = o.centre;
  const corners: Vec3[] = [];
  for (let i = 0; i < CORNERS; i++) {
    const cos = cosines[i] as number;
    const sin = sines[i] as number;
    const s0 = away * unit[0] + wide * (cos * u[0] + sin * v[0]);
    const s1 = away * unit[1] + wide * (cos * u[1] + sin * v[1]);
    const s2 = away * unit[2] + wide * (cos * u[2] + sin * v[2]);
    corners.push([
      c[0] + s0 * f[0] + s1 * g[0] + s2 * h[0],
      c[1] + s0 * f[1] + s1 * g[1] + s2 * h[1],
      c[2] + s0 * f[2] + s1 * g[2] + s2 * h[2],
    ]);
  }
  return corners;
}

function capsuleCut(o: CapsuleOccluder, normal: Vec3, offset: number): readonly Vec3[] {
  const from = dot(normal, o.from) - offset;
  const to = dot(normal, o.to) - offset;
  // The place of the axis nearest to the plane, moved into it: inside the body.
  const t = from === to ? 0.5 : Math.min(1, Math.max(0, from / (from - to)));
  const away = from + t * (to - from);
  const eye = addScaled(between(o.from, o.to, t), normal, -away);
  const [u, v] = frameAround(normal);
  const corners: Vec3[] = [];
  for (let i = 0; i < CORNERS; i++) {
    const way = addScaled(scale(u, cosines[i] as number), v, sines[i] as number);
    corners.push(addScaled(eye, way, WIDE * wayOut(o, eye, way)));
  }
  return corners;
}

/** How far it is from a point in a capsule to its surface, in lengths of the direction. */
function wayOut({ from, to, radius }: CapsuleOccluder, eye: Vec3, way: Vec3): number {
  const axis: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const long = dot(axis, axis);
  const m: Vec3 = [eye[0] - from[0], eye[1] - from[1], eye[2] - from[2]];
  const rr = radius * radius;
  if (long > 0) {
    const along = dot(m, axis) / long;
    const rate = dot(way, axis) / long;
    const t = leaving(
      dot(way, way) - rate * rate * long,
      dot(m, way) - along * rate * long,
      dot(m, m) - along * along * long - rr,
    );
    const where = along + t * rate;
    if (where >= 0 && where <= 1) return t;
  }
  const end = dot(way, axis) > 0 ? to : from;
  const e: Vec3 = [eye[0] - end[0], eye[1] - end[1], eye[2] - end[2]];
  return leaving(dot(way, way), dot(e, way), dot(e, e) - rr);
}

/** The greater root of a t2 + 2 b t + c. */
function leaving(a: number, b: number, c: number): number {
  return a > 1e-15 ? (-b + Math.sqrt(Math.max(0, b * b - a * c))) / a : Number.POSITIVE_INFINITY;
}
