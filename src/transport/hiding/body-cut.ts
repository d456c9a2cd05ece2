import type { Vec3 } from "../../core/vector.js";
import { frameAround } from "../../math/vector.js";
import type { HalfSpace } from "./half-space.js";
import type { CapsuleOccluder, EllipsoidOccluder } from "./occluder.js";

/** A body with round sides. */
type RoundBody = EllipsoidOccluder | CapsuleOccluder;

/** Corners of a cut. */
const CORNERS = 48;
const STEP = (2 * Math.PI) / CORNERS;
/** By how much corners are moved out, so that the polygon has the area of the round it stands for. */
const WIDE = Math.sqrt(STEP / Math.sin(STEP));
const turn = Array.from({ length: CORNERS }, (_, i) => [Math.cos(i * STEP), Math.sin(i * STEP)] as const);

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

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
  const m = o.axes.map((axis) => dot(normal, axis)) as unknown as Vec3;
  const size = Math.sqrt(dot(m, m));
  const away = (offset - dot(normal, o.centre)) / size;
  const unit: Vec3 = [m[0] / size, m[1] / size, m[2] / size];
  const [u, v] = frameAround(unit);
  const wide = WIDE * Math.sqrt(Math.max(0, (1 - away) * (1 + away)));
  const [f, g, h] = o.axes;
  return turn.map(([cos, sin]): Vec3 => {
    const s = (k: 0 | 1 | 2): number => away * unit[k] + wide * (cos * u[k] + sin * v[k]);
    const [s0, s1, s2] = [s(0), s(1), s(2)];
    const at = (k: 0 | 1 | 2): number => o.centre[k] + s0 * f[k] + s1 * g[k] + s2 * h[k];
    return [at(0), at(1), at(2)];
  });
}

function capsuleCut(o: CapsuleOccluder, normal: Vec3, offset: number): readonly Vec3[] {
  const from = dot(normal, o.from) - offset;
  const to = dot(normal, o.to) - offset;
  // The place of the axis nearest to the plane, moved into it: inside the body.
  const t = from === to ? 0.5 : Math.min(1, Math.max(0, from / (from - to)));
  const away = from + t * (to - from);
  const inside = (k: 0 | 1 | 2): number => o.from[k] + t * (o.to[k] - o.from[k]) - away * normal[k];
  const eye: Vec3 = [inside(0), inside(1), inside(2)];
  const [u, v] = frameAround(normal);
  return turn.map(([cos, sin]): Vec3 => {
    const way: Vec3 = [cos * u[0] + sin * v[0], cos * u[1] + sin * v[1], cos * u[2] + sin * v[2]];
    const far = WIDE * wayOut(o, eye, way);
    return [eye[0] + far * way[0], eye[1] + far * way[1], eye[2] + far * way[2]];
  });
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
