import type { Vec3 } from "../../core/vector.js";
import { edgeWeight } from "../../math/lambert-polygon.js";
import { triangleSolidAngle } from "../../math/solid-angle.js";
import type { LightVector } from "../../physics/light-vector.js";
import type { Region } from "./region.js";
import type { View } from "./view.js";

/** What a region of light on the view's plane gives an eye: its light vector in the view's axes, and solid angle, sr. */
interface RegionLight extends LightVector {
  solid: number;
}

/**
 * The angle between two sight lines over the length of their vector product, as `edgeWeight` gives it: for the short
 * edges of small pieces by the series of the arc tangent, right to 1e-8, which saves a root and an arc tangent.
 */
function weight(cx: number, cy: number, cz: number, dot: number): number {
  const over = 1 / dot;
  const q = (cx * cx + cy * cy + cz * cz) * over * over;
  if (dot > 0 && q < 0.04) return (1 - q * (1 / 3 - q * (1 / 5 - q * (1 / 7 - q / 9)))) * over;
  return edgeWeight(cx, cy, cz, dot);
}

/** Adds one polygon to a sum: Lambert's sum over its edges, and the solid angle where it is wanted. */
function addPolygon(p: Float64Array, start: number, end: number, sum: RegionLight, wantSolid: boolean): void {
  let au = p[end - 2] as number;
  let av = p[end - 1] as number;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = start; i < end; i += 2) {
    const bu = p[i] as number;
    const bv = p[i + 1] as number;
    // The vector product of the sight lines (au, av, 1) and (bu, bv, 1), with the digits of the edge kept.
    const cx = av - bv;
    const cy = bu - au;
    const cz = au * (bv - av) - av * (bu - au);
    const w = weight(cx, cy, cz, au * bu + av * bv + 1);
    x += cx * w;
    y += cy * w;
    z += cz * w;
    au = bu;
    av = bv;
  }
  sum.x += x / 2;
  sum.y += y / 2;
  sum.z += z / 2;
  if (!wantSolid) return;
  const u = p[start] as number;
  const v = p[start + 1] as number;
  for (let i = start + 4; i < end; i += 2) {
    sum.solid += triangleSolidAngle(
      u,
      v,
      1,
      p[i - 2] as number,
      p[i - 1] as number,
      1,
      p[i] as number,
      p[i + 1] as number,
      1,
    );
  }
}

/** What a receptor makes of a region of light: flat receptors take the part along n, domes (1 + cos) / 2. */
export function received(region: Region, view: View, n: Vec3, dome: boolean): number {
  const sum: RegionLight = { x: 0, y: 0, z: 0, solid: 0 };
  let start = 0;
  for (let i = 0; i < region.count; i++) {
    const end = region.ends[i] as number;
    addPolygon(region.data, start, end, sum, dome);
    start = end;
  }
  const { across, up, ahead } = view;
  const nu = across[0] * n[0] + across[1] * n[1] + across[2] * n[2];
  const nv = up[0] * n[0] + up[1] * n[1] + up[2] * n[2];
  const nw = ahead[0] * n[0] + ahead[1] * n[1] + ahead[2] * n[2];
  const along = sum.x * nu + sum.y * nv + sum.z * nw;
  return Math.max(0, dome ? (sum.solid + along) / 2 : along);
}
