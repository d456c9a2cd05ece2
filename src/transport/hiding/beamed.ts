import type { Vec3 } from "../../core/vector.js";
import { type Beam, beamToward } from "../../physics/beam.js";
import type { Region } from "./region.js";
import type { View } from "./view.js";

/** Most parts along a side of a triangle. */
const MOST = 40;

/** Parts of a light with a measured beam: two degrees. */
const TABLE_PART = 0.035;

/** Parts are no larger than this on the view's plane: a share of the way a beam takes to fall off. */
function partOf(beam: Beam): number {
  if (beam.kind === "grid") return Math.tan(beam.cutoff / 2) / 24;
  if (beam.kind === "table") return TABLE_PART;
  return beam.kind === "cosine-power" ? 0.25 / Math.sqrt(Math.max(1, beam.n)) : 1;
}

/**
 * What a receptor makes of a region of a flat light with a beam, by its luminance on the axis: the region is cut into
 * small triangles, each seen from its middle. Only the ratio of two such sums is used.
 *
 * @param axis - Unit vector out of the light's front.
 */
export function beamReceived(
  { data, ends, count }: Region,
  view: View,
  n: Vec3,
  dome: boolean,
  axis: Vec3,
  beam: Beam,
): number {
  const { across, up, ahead } = view;
  const parts = (a: Vec3): Vec3 => [dotted(across, a), dotted(up, a), dotted(ahead, a)];
  const [nu, nv, nw] = parts(n);
  const [au, av, aw] = parts(axis);
  const part = partOf(beam);
  let sum = 0;
  let start = 0;
  for (let p = 0; p < count; p++) {
    const end = ends[p] as number;
    const u0 = data[start] as number;
    const v0 = data[start + 1] as number;
    for (let i = start + 2; i + 2 < end; i += 2) {
      const bu = (data[i] as number) - u0;
      const bv = (data[i + 1] as number) - v0;
      const cu = (data[i + 2] as number) - u0;
      const cv = (data[i + 3] as number) - v0;
      const area = Math.abs(bu * cv - bv * cu) / 2;
      const long = Math.sqrt(Math.max(bu * bu + bv * bv, cu * cu + cv * cv, square(cu - bu, cv - bv)));
      const k = Math.min(MOST, Math.max(1, Math.ceil(long / part)));
      const small = area / (k * k);
      for (let row = 0; row < k; row++) {
        for (let at = 0; at < 2 * row + 1; at++) {
          // Triangles that point up and down by turns; s and t are their middles along the two sides.
          const t = (at >> 1) + (at % 2 === 0 ? 1 / 3 : 2 / 3);
          const s = row + (at % 2 === 0 ? 2 / 3 : 1 / 3) - t;
          const u = u0 + (s * bu + t * cu) / k;
          const v = v0 + (s * bv + t * cv) / k;
          const d2 = 1 + u * u + v * v;
          const d = Math.sqrt(d2);
          const away = -(u * au + v * av + aw) / d;
          const facing = (u * nu + v * nv + nw) / d;
          const response = dome ? (1 + facing) / 2 : facing;
          if (!(away > 0 && response > 0)) continue;
          const x = -(u * across[0] + v * up[0] + ahead[0]) / d;
          const y = -(u * across[1] + v * up[1] + ahead[1]) / d;
          const z = -(u * across[2] + v * up[2] + ahead[2]) / d;
          sum += (small * beamToward(beam, away, x, y, z) * response) / (d2 * d);
        }
      }
    }
    start = end;
  }
  return sum;
}

const square = (u: number, v: number): number => u * u + v * v;

const dotted = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
