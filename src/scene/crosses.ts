import type { Vec3 } from "../core/vector.js";
import { cross, dot, subtract } from "../math/vector.js";
import type { ScenePolygon } from "./types.js";

/** Whether the straight line between two points goes through a flat convex surface, its rim and its ends not counted. */
export function crosses(polygon: Pick<ScenePolygon, "vertices" | "normal">, a: Vec3, b: Vec3): boolean {
  const corner = polygon.vertices[0];
  if (corner === undefined) return false;
  const da = dot(subtract(a, corner), polygon.normal);
  const db = dot(subtract(b, corner), polygon.normal);
  if (Math.abs(da) < 1e-6 || Math.abs(db) < 1e-6 || da * db > 0) return false;
  const t = da / (da - db);
  const p: Vec3 = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
  const { vertices, normal } = polygon;
  return vertices.every((from, i) => {
    const to = vertices[i + 1 < vertices.length ? i + 1 : 0] ?? from;
    return dot(cross(subtract(to, from), subtract(p, from)), normal) > 0;
  });
}
