import type { Vec3 } from "../../core/vector.js";
import { addScaled, cross, distance, dot, subtract } from "../../math/vector.js";
import type { ScenePolygon, Source } from "../../scene/types.js";

/** The place of a flat convex surface that is nearest to a point. */
export function nearestOn({ vertices, normal }: ScenePolygon, point: Vec3): Vec3 {
  const corner = vertices[0] ?? point;
  const foot = addScaled(point, normal, -dot(subtract(point, corner), normal));
  const edges = vertices.map((from, i): readonly [Vec3, Vec3] => [
    from,
    vertices[i + 1 < vertices.length ? i + 1 : 0] ?? from,
  ]);
  const inside = edges.every(
    ([from, to]) => dot(cross(subtract(to, from), subtract(foot, from)), normal) >= 0,
  );
  if (inside) return foot;
  let best = corner;
  for (const [from, to] of edges) {
    const way = subtract(to, from);
    const long = dot(way, way);
    const share = long > 0 ? dot(subtract(foot, from), way) / long : 0;
    const place = addScaled(from, way, Math.min(1, Math.max(0, share)));
    if (distance(place, foot) < distance(best, foot)) best = place;
  }
  return best;
}

/** Points of a lit opening, and how far round them it reaches, m. */
export function openingPoints({ shape, centre, across, along }: Source): {
  readonly points: readonly Vec3[];
  readonly radius: number;
} {
  const at = (a: number, b: number): Vec3 => addScaled(addScaled(centre, across, a), along, b);
  switch (shape.kind) {
    case "sphere":
      return { points: [centre], radius: shape.radius };
    case "capsule": {
      const half = Math.max(0, shape.length / 2 - shape.radius);
      return { points: [at(0, half), centre, at(0, -half)], radius: shape.radius };
    }
    case "disc": {
      const rim = Array.from({ length: 16 }, (_, i) => (2 * Math.PI * i) / 16).map((turn) =>
        at(shape.radius * Math.cos(turn), shape.radius * Math.sin(turn)),
      );
      return { points: [centre, ...rim], radius: 0 };
    }
    case "rectangle": {
      const [w, h] = [shape.width / 2, shape.height / 2];
      const steps = [-1, 0, 1];
      return { points: steps.flatMap((i) => steps.map((j) => at(i * w, j * h))), radius: 0 };
    }
    default:
      return shape satisfies never;
  }
}
