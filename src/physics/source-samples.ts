import type { Vec3 } from "../core/vector.js";
import { gaussLegendre } from "../math/quadrature.js";
import { frameAround } from "../math/vector.js";
import type { DiscSource, PolygonSource } from "./source-shape.js";

/** A place on a source with the area it stands for. */
export interface SourcePoint {
  readonly at: Vec3;
  readonly area: number;
}

/**
 * Points over a whole flat source, the same for every receiver: rings of Gauss points of equal area for a disc, a
 * Gauss grid on each triangle of a polygon.
 */
export function samples(source: DiscSource | PolygonSource, fineness: number): readonly SourcePoint[] {
  return source.kind === "disc" ? discSamples(source, fineness) : polygonSamples(source, fineness);
}

function discSamples(source: DiscSource, fineness: number): readonly SourcePoint[] {
  const rule = gaussLegendre(fineness);
  const [u, v] = frameAround(source.normal);
  const turns = 2 * fineness;
  const out: SourcePoint[] = [];
  for (let i = 0; i < fineness; i++) {
    const radius = source.radius * Math.sqrt((1 + (rule.points[i] ?? 0)) / 2);
    const area = ((rule.weights[i] ?? 0) / 2) * ((Math.PI * source.radius * source.radius) / turns);
    for (let j = 0; j < turns; j++) {
      const angle = ((j + (i % 2) / 2) * 2 * Math.PI) / turns;
      const a = radius * Math.cos(angle);
      const b = radius * Math.sin(angle);
      const at: Vec3 = [
        source.centre[0] + a * u[0] + b * v[0],
        source.centre[1] + a * u[1] + b * v[1],
        source.centre[2] + a * u[2] + b * v[2],
      ];
      out.push({ at, area });
    }
  }
  return out;
}

function polygonSamples(source: PolygonSource, fineness: number): readonly SourcePoint[] {
  const rule = gaussLegendre(fineness);
  const out: SourcePoint[] = [];
  const first = source.corners[0];
  if (first === undefined) return out;
  for (let k = 2; k < source.corners.length; k++) {
    const p = source.corners[k - 1] as Vec3;
    const q = source.corners[k] as Vec3;
    const e: Vec3 = [p[0] - first[0], p[1] - first[1], p[2] - first[2]];
    const f: Vec3 = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
    const cx = e[1] * f[2] - e[2] * f[1];
    const cy = e[2] * f[0] - e[0] * f[2];
    const cz = e[0] * f[1] - e[1] * f[0];
    const double = Math.sqrt(cx * cx + cy * cy + cz * cz);
    for (let i = 0; i < fineness; i++) {
      const s = (1 + (rule.points[i] ?? 0)) / 2;
      for (let j = 0; j < fineness; j++) {
        const t = (s * (1 + (rule.points[j] ?? 0))) / 2;
        const area = (double * s * (rule.weights[i] ?? 0) * (rule.weights[j] ?? 0)) / 4;
        const at: Vec3 = [
          first[0] + s * e[0] + t * f[0],
          first[1] + s * e[1] + t * f[1],
          first[2] + s * e[2] + t * f[2],
        ];
        out.push({ at, area });
      }
    }
  }
  return out;
}
