import type { Vec3 } from "../core/vector.js";
import {
  add,
  addScaled,
  cross,
  dot,
  frameAround,
  length,
  normalise,
  scale,
  subtract,
} from "../math/vector.js";
import type { SourceShape } from "./source-shape.js";

/**
 * The outline of a source as a point sees it, as corners that run counter-clockwise as seen from the point; for
 * round shapes `count` corners on the true outline (a slightly smaller polygon). Empty behind a flat source and
 * inside a body.
 */
export function sourceOutline(source: SourceShape, eye: Vec3, count: number): readonly Vec3[] {
  switch (source.kind) {
    case "polygon": {
      const first = source.corners[0];
      return first !== undefined && dot(subtract(eye, first), source.normal) > 0 ? source.corners : [];
    }
    case "disc": {
      if (!(dot(subtract(eye, source.centre), source.normal) > 0)) return [];
      const [u, v] = frameAround(source.normal);
      return ring(source.centre, scale(u, source.radius), scale(v, source.radius), 0, 2 * Math.PI, count);
    }
    case "sphere":
      return roundEnd(source.centre, source.radius, eye, count);
    case "capsule":
      return capsuleOutline(source.from, source.to, source.radius, eye, count);
    default:
      return source satisfies never;
  }
}

/** Corners on an arc, both ends included unless the arc is a whole turn. */
function ring(centre: Vec3, u: Vec3, v: Vec3, from: number, to: number, count: number): readonly Vec3[] {
  const whole = to - from >= 2 * Math.PI - 1e-12;
  const steps = whole ? count : Math.max(1, count - 1);
  const corners: Vec3[] = [];
  for (let i = 0; i < count; i++) {
    const t = from + ((to - from) * i) / steps;
    corners.push(addScaled(addScaled(centre, u, Math.cos(t)), v, Math.sin(t)));
  }
  return corners;
}

/** The circle on a sphere where the sight lines touch it. */
function touchingCircle(
  centre: Vec3,
  radius: number,
  eye: Vec3,
): { centre: Vec3; back: Vec3; radius: number } | undefined {
  const away = subtract(eye, centre);
  const d = length(away);
  if (!(d > radius)) return undefined;
  return {
    centre: addScaled(centre, away, (radius * radius) / (d * d)),
    back: scale(away, 1 / d),
    radius: (radius * Math.sqrt((d - radius) * (d + radius))) / d,
  };
}

function roundEnd(centre: Vec3, radius: number, eye: Vec3, count: number): readonly Vec3[] {
  const circle = touchingCircle(centre, radius, eye);
  if (circle === undefined) return [];
  const [u, v] = frameAround(circle.back);
  return ring(circle.centre, scale(u, circle.radius), scale(v, circle.radius), 0, 2 * Math.PI, count);
}

function capsuleOutline(from: Vec3, to: Vec3, radius: number, eye: Vec3, count: number): readonly Vec3[] {
  const g = normalise(subtract(to, from));
  if (g === undefined) return roundEnd(from, radius, eye, count);
  const a = subtract(from, eye);
  const z1 = dot(a, g);
  const z2 = z1 + length(subtract(to, from));
  const side = addScaled(a, g, -z1);
  const rho = length(side);
  if (rho <= radius) {
    if (z1 > 0) return roundEnd(from, radius, eye, count);
    return z2 < 0 ? roundEnd(to, radius, eye, count) : [];
  }
  const e = scale(side, 1 / rho);
  const f = cross(e, g);
  const q = Math.sqrt((rho - radius) * (rho + radius));
  const half = Math.max(2, Math.floor(count / 2));
  // Each round end gives an arc of its touching circle, from one side of the tube to the other.
  const end = (z: number, outward: 1 | -1): readonly Vec3[] => {
    const d = Math.sqrt(rho * rho + z * z);
    const circle = touchingCircle(add(eye, add(scale(e, rho), scale(g, z))), radius, eye);
    if (circle === undefined) return [];
    const v = add(scale(e, (-outward * z) / d), scale(g, (outward * rho) / d));
    const turn = Math.atan2(outward * z * radius, q * d);
    const start = scale(f, outward * circle.radius);
    return ring(circle.centre, scale(start, 1), scale(v, circle.radius), turn, Math.PI - turn, half);
  };
  return [...end(z2, 1), ...end(z1, -1)];
}
