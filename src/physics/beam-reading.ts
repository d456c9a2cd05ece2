import type { Vec3 } from "../core/vector.js";
import { gaussLegendre } from "../math/quadrature.js";
import { frameAround } from "../math/vector.js";
import { type Beam, beamShare } from "./beam.js";
import { discReading, domeReading } from "./illuminance.js";
import { emptyVector } from "./light-vector.js";
import type { DiscSource, PolygonSource } from "./source-shape.js";

/** A flat receptor (cosine response, horizon) or a dome (response (1 + cos) / 2). */
export type Receptor = "disc" | "dome";

/** A reading by quadrature, with its error. */
export interface BeamReading {
  /** sr per unit of axial luminance. */
  readonly value: number;
  /** How far the value may be off, in the same unit: the change from a coarser rule. */
  readonly error: number;
}

/** One point of a source with the share of the area it stands for. */
interface Sample {
  readonly at: Vec3;
  readonly area: number;
}

/**
 * What a receptor gets from a flat source with a beam, in sr per unit of axial luminance. The source is summed point
 * by point and the sum is corrected by what the same points make of a Lambertian source, whose value is known
 * exactly; a Lambertian beam is therefore exact, and a small source nearly so.
 *
 * @param normal - unit vector that the receptor faces
 * @param fineness - points to a side, 4 to 64; the error is judged against two thirds of it
 */
export function beamReading(
  source: DiscSource | PolygonSource,
  beam: Beam,
  point: Vec3,
  normal: Vec3,
  receptor: Receptor,
  fineness = 18,
): BeamReading {
  const exact = (receptor === "disc" ? discReading : domeReading)(
    source,
    point[0],
    point[1],
    point[2],
    normal[0],
    normal[1],
    normal[2],
    emptyVector(),
  );
  if (beam.kind === "lambert" || exact === 0) return { value: exact, error: 0 };
  const fine = exact * shareSum(source, beam, point, normal, receptor, fineness);
  const coarse = exact * shareSum(source, beam, point, normal, receptor, Math.ceil((fineness * 2) / 3));
  return { value: fine, error: Math.abs(fine - coarse) };
}

/** The mean beam share over a source, weighted by what each point gives the receptor. */
function shareSum(
  source: DiscSource | PolygonSource,
  beam: Beam,
  point: Vec3,
  normal: Vec3,
  receptor: Receptor,
  fineness: number,
): number {
  const n = source.normal;
  let whole = 0;
  let beamed = 0;
  for (const { at, area } of samples(source, fineness)) {
    const x = at[0] - point[0];
    const y = at[1] - point[1];
    const z = at[2] - point[2];
    const d2 = x * x + y * y + z * z;
    const d = Math.sqrt(d2);
    if (!(d > 0)) continue;
    const away = -(x * n[0] + y * n[1] + z * n[2]) / d;
    const facing = (x * normal[0] + y * normal[1] + z * normal[2]) / d;
    const response = receptor === "disc" ? Math.max(0, facing) : (1 + facing) / 2;
    const weight = (area * Math.max(0, away) * response) / d2;
    whole += weight;
    beamed += weight * beamShare(beam, away);
  }
  return whole > 0 ? beamed / whole : 0;
}

/** Points over a source: rings of equal-area Gauss points for a disc, a Gauss grid on each triangle of a polygon. */
export function samples(source: DiscSource | PolygonSource, fineness: number): readonly Sample[] {
  const rule = gaussLegendre(fineness);
  const out: Sample[] = [];
  if (source.kind === "disc") {
    const [u, v] = frameAround(source.normal);
    const turns = 2 * fineness;
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
