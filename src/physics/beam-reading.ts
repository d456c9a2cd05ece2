import type { Vec3 } from "../core/vector.js";
import { areaPoints, type Circle, type HalfPlane, type PlaneRegion } from "../math/plane-region.js";
import { gaussLegendre } from "../math/quadrature.js";
import { addScaled, dot, frameAround, subtract } from "../math/vector.js";
import { type Beam, beamToward } from "./beam.js";
import { discReading, domeReading } from "./illuminance.js";
import { emptyVector } from "./light-vector.js";
import type { SourcePoint } from "./source-samples.js";
import type { DiscSource, PolygonSource } from "./source-shape.js";

export { samples } from "./source-samples.js";

/** A flat receptor (cosine response, horizon) or a dome (response (1 + cos) / 2). */
export type Receptor = "disc" | "dome";

/** A reading by quadrature, with its error. */
export interface BeamReading {
  /** sr per unit of axial luminance. */
  readonly value: number;
  /** How far the value may be off, in the same unit: the change from a coarser rule. */
  readonly error: number;
}

/**
 * What a receptor gets from a flat source with a beam, in sr per unit of axial luminance. The part of the source that
 * shines on the receptor (inside the cone of a grid, above the receptor's horizon) is summed over Gauss points; for
 * beams without an end the sum is corrected by what the same points make of a Lambertian source, whose value is known
 * exactly. A Lambertian beam is exact.
 *
 * @param normal - unit vector that the receptor faces
 * @param fineness - points across each smooth part of the outline, 4 to 64; the error is judged against two thirds
 */
export function beamReading(
  source: DiscSource | PolygonSource,
  beam: Beam,
  point: Vec3,
  normal: Vec3,
  receptor: Receptor,
  fineness = 16,
): BeamReading {
  if (beam.kind === "lambert") return { value: exactReading(source, point, normal, receptor), error: 0 };
  const fine = sum(source, beam, point, normal, receptor, fineness);
  const coarse = sum(source, beam, point, normal, receptor, Math.max(3, Math.ceil((fineness * 2) / 3)));
  if (beam.kind === "grid") return { value: fine.beamed, error: Math.abs(fine.beamed - coarse.beamed) };
  const exact = exactReading(source, point, normal, receptor);
  if (!(fine.whole > 0) || !(coarse.whole > 0)) return { value: 0, error: exact };
  const value = (exact * fine.beamed) / fine.whole;
  return { value, error: Math.abs(value - (exact * coarse.beamed) / coarse.whole) };
}

function exactReading(source: DiscSource | PolygonSource, p: Vec3, n: Vec3, receptor: Receptor): number {
  const reading = receptor === "disc" ? discReading : domeReading;
  return reading(source, p[0], p[1], p[2], n[0], n[1], n[2], emptyVector());
}

/** The sums of what the receptor gets with the beam and without. */
function sum(
  source: DiscSource | PolygonSource,
  beam: Beam,
  point: Vec3,
  normal: Vec3,
  receptor: Receptor,
  fineness: number,
): { readonly whole: number; readonly beamed: number } {
  let whole = 0;
  let beamed = 0;
  for (const { at, area } of litPoints(
    source,
    beam,
    point,
    receptor === "disc" ? normal : undefined,
    fineness,
  )) {
    const ray = subtract(at, point);
    const d2 = dot(ray, ray);
    const d = Math.sqrt(d2);
    const away = -dot(ray, source.normal) / d;
    const facing = dot(ray, normal) / d;
    const response = receptor === "disc" ? Math.max(0, facing) : (1 + facing) / 2;
    if (!(d > 0) || !(away > 0)) continue;
    const weight = (area * away * response) / d2;
    whole += weight;
    beamed += weight * beamToward(beam, away, -ray[0] / d, -ray[1] / d, -ray[2] / d);
  }
  return { whole, beamed };
}

/** Points over the part of a flat source inside a beam's cone from a point and above the point's horizon, if given. */
export function litPoints(
  source: DiscSource | PolygonSource,
  beam: Beam,
  point: Vec3,
  horizon: Vec3 | undefined,
  fineness: number,
): readonly SourcePoint[] {
  const origin = source.kind === "disc" ? source.centre : source.corners[0];
  if (origin === undefined) return [];
  const height = dot(subtract(point, origin), source.normal);
  if (!(height > 0)) return [];
  // Coordinates in the source's plane, from the foot of the perpendicular from the point.
  const foot = addScaled(point, source.normal, -height);
  const [u, v] = frameAround(source.normal);
  const region = outline(source, foot, u, v);
  const lines = [...region.lines];
  const circles = [...region.circles];
  if (beam.kind === "grid") circles.push({ x: 0, y: 0, r: height * Math.tan(beam.cutoff / 2) });
  if (horizon !== undefined) {
    // Above the horizon: horizon . (foot + x u + y v - point) >= 0.
    lines.push({ a: -dot(horizon, u), b: -dot(horizon, v), c: -height * dot(horizon, source.normal) });
  }
  return areaPoints({ lines, circles }, gaussLegendre(fineness)).map(({ x, y, area }) => ({
    at: addScaled(addScaled(foot, u, x), v, y),
    area,
  }));
}

/** The outline of a flat source in its own plane. */
function outline(source: DiscSource | PolygonSource, foot: Vec3, u: Vec3, v: Vec3): PlaneRegion {
  const place = (p: Vec3): readonly [x: number, y: number] => {
    const from = subtract(p, foot);
    return [dot(from, u), dot(from, v)];
  };
  if (source.kind === "disc") {
    const [x, y] = place(source.centre);
    const circle: Circle = { x, y, r: source.radius };
    return { lines: [], circles: [circle] };
  }
  const corners = source.corners.map(place);
  const lines = corners.map(([x, y], i): HalfPlane => {
    const [nextX, nextY] = corners[i + 1 < corners.length ? i + 1 : 0] ?? [x, y];
    const a = nextY - y;
    const b = x - nextX;
    return { a, b, c: a * x + b * y };
  });
  return { lines, circles: [] };
}
