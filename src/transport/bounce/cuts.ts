import type { Vec3 } from "../../core/vector.js";
import { clipByPlane } from "../../math/polygon.js";
import { cross, dot, normalise } from "../../math/vector.js";
import type { Scene } from "../../scene/types.js";
import { POLYGON, STRIDE, type World } from "./world.js";

/**
 * A sheet that stands on a side and parts the light on it: bright before, dark behind. `from` and `to` are the ends of
 * its foot in the side's u and v.
 */
export interface Cut {
  /** The sheet, whose plane parts the side. */
  readonly thing: number;
  readonly from: readonly [u: number, v: number];
  readonly to: readonly [u: number, v: number];
}

/** A sheet counts as standing on a side that its edge comes this near to, m. */
const GAP = 0.03;
/** Shorter feet than this do not count, m. */
const SHORTEST = 0.05;

/** Finds the sheets that stand on one side of a polygon. */
export function cutsOf(scene: Scene, world: World, thing: number, front: boolean): readonly Cut[] {
  const at = thing * STRIDE;
  const d = world.data;
  const get = (k: number): Vec3 => [d[at + k] as number, d[at + k + 1] as number, d[at + k + 2] as number];
  const n = get(0);
  const offset = d[at + 3] as number;
  const sign = front ? 1 : -1;
  const found: Cut[] = [];
  scene.polygons.forEach((other, i) => {
    if (i === thing || world.present[i] !== 1 || world.closed[i] === 1 || world.kind[i] !== POLYGON) return;
    if (world.inShell[i] === 1) return;
    const way = normalise(cross(n, other.normal));
    if (way === undefined || Math.abs(dot(n, other.normal)) > 0.995) return;
    // The strip of the sheet just before the side.
    const low = clipByPlane(other.vertices, [n[0] * sign, n[1] * sign, n[2] * sign], sign * offset - GAP);
    const strip = clipByPlane(low, [-n[0] * sign, -n[1] * sign, -n[2] * sign], -sign * offset - GAP);
    if (strip.length < 3) return;
    if (other.vertices.every((p) => sign * (dot(n, p) - offset) <= GAP)) return;
    let least = strip[0] as Vec3;
    let most = least;
    for (const p of strip) {
      if (dot(p, way) < dot(least, way)) least = p;
      if (dot(p, way) > dot(most, way)) most = p;
    }
    if (dot(most, way) - dot(least, way) < SHORTEST) return;
    const spot = (p: Vec3): readonly [number, number] => {
      const x: Vec3 = [
        p[0] - (d[at + 4] as number),
        p[1] - (d[at + 5] as number),
        p[2] - (d[at + 6] as number),
      ];
      return [dot(x, get(7)) / (d[at + 13] as number), dot(x, get(10)) / (d[at + 14] as number)];
    };
    found.push({ thing: i, from: spot(least), to: spot(most) });
  });
  return found;
}

/** Share of the part of a foot that lies inside a rectangle of u and v by the rectangle's shorter side. */
export function footInside(cut: Cut, u: number, v: number, du: number, dv: number): number {
  let low = 0;
  let high = 1;
  const a = (cut.to[0] - cut.from[0]) / du;
  const b = (cut.to[1] - cut.from[1]) / dv;
  for (const [start, rate] of [
    [(cut.from[0] - u) / du, a],
    [(cut.from[1] - v) / dv, b],
  ] as const) {
    if (rate === 0) {
      if (start < 0 || start > 1) return 0;
      continue;
    }
    const t0 = -start / rate;
    const t1 = (1 - start) / rate;
    low = Math.max(low, Math.min(t0, t1));
    high = Math.min(high, Math.max(t0, t1));
  }
  return high > low ? (high - low) * Math.sqrt(a * a + b * b) : 0;
}
