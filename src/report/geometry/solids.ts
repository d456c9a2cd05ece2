import type { Vec3 } from "../../core/vector.js";
import { segmentsApart2 } from "../../math/segments.js";
import { addScaled, dot, subtract } from "../../math/vector.js";
import { crosses } from "../../scene/crosses.js";
import type { Body, ScenePolygon } from "../../scene/types.js";

/** A straight tube with round ends. */
type Tube = Extract<Body, { kind: "capsule" }>;

/** Whether a point lies inside a rounded solid. */
export function inBody(body: Body, point: Vec3): boolean {
  switch (body.kind) {
    case "ellipsoid": {
      const to = subtract(point, body.centre);
      let sum = 0;
      for (const axis of body.axes) {
        const share = dot(to, axis) / dot(axis, axis);
        sum += share * share;
      }
      return sum < 1;
    }
    case "capsule": {
      const [way, to] = [subtract(body.to, body.from), subtract(point, body.from)];
      const share = Math.min(1, Math.max(0, dot(to, way) / Math.max(dot(way, way), 1e-12)));
      const off = addScaled(to, way, -share);
      return dot(off, off) < body.radius * body.radius;
    }
    case "sphere": {
      const off = subtract(point, body.centre);
      return dot(off, off) < body.radius * body.radius;
    }
    default:
      return body satisfies never;
  }
}

/** Whether a point lies behind all sides of a box. */
export function inBox(sides: readonly ScenePolygon[], point: Vec3): boolean {
  return sides.every(({ vertices, normal }) => dot(subtract(point, vertices[0] ?? point), normal) < -1e-6);
}

/** Whether a tube and a flat convex surface meet: nearer to each other than the tube's radius anywhere. Exact. */
export function tubeMeetsSheet({ from, to, radius }: Tube, sheet: ScenePolygon): boolean {
  if (crosses(sheet, from, to)) return true;
  const { vertices, normal } = sheet;
  const square = radius * radius;
  const [corner] = vertices;
  if (corner === undefined) return false;
  // Where neither an edge comes near nor an end lies over the sheet, nothing between does.
  const byEdge = vertices.some((a, i) => {
    const b = vertices[i + 1 < vertices.length ? i + 1 : 0] ?? a;
    return segmentsApart2(from, to, a, b) < square;
  });
  return (
    byEdge ||
    [from, to].some((end) => {
      const off = dot(subtract(end, corner), normal);
      return off * off < square && crosses(sheet, addScaled(end, normal, 1), addScaled(end, normal, -1));
    })
  );
}

/** Share of a stretch, 0 to 1, at which it comes nearest to the origin. */
function nearest(from: Vec3, way: Vec3): number {
  const square = dot(way, way);
  return square > 0 ? Math.min(1, Math.max(0, -dot(from, way) / square)) : 0;
}

/**
 * Whether a tube and a rounded solid meet. Exact for balls and tubes; of an ellipsoid all half axes count as longer by the
 * tube's radius.
 */
export function tubeMeets({ from, to, radius }: Tube, body: Body): boolean {
  const way = subtract(to, from);
  switch (body.kind) {
    case "ellipsoid": {
      // In the measure in which the ellipsoid is the unit ball.
      const inUnits = (v: Vec3): Vec3 => {
        const [x, y, z] = body.axes.map((axis) => {
          const half = Math.sqrt(dot(axis, axis));
          return dot(v, axis) / (half * (half + radius));
        });
        return [x ?? 0, y ?? 0, z ?? 0];
      };
      const [start, along] = [inUnits(subtract(from, body.centre)), inUnits(way)];
      const close = addScaled(start, along, nearest(start, along));
      return dot(close, close) < 1;
    }
    case "sphere": {
      const start = subtract(from, body.centre);
      const close = addScaled(start, way, nearest(start, way));
      return dot(close, close) < (radius + body.radius) * (radius + body.radius);
    }
    case "capsule":
      return segmentsApart2(from, to, body.from, body.to) < (radius + body.radius) * (radius + body.radius);
    default:
      return body satisfies never;
  }
}
