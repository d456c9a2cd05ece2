import type { Vec3 } from "../../core/vector.js";
import { beamToward } from "../../physics/beam.js";
import { samples } from "../../physics/beam-reading.js";
import { discReading } from "../../physics/illuminance.js";
import { emptyVector } from "../../physics/light-vector.js";
import { luminancePerEnergy } from "../../physics/luminous-energy.js";
import { sourceBeam, sourceShape } from "../lamp/optics.js";
import type { Source } from "../types.js";

/** Points across an opening with a beam. */
const fineness = 6;

/**
 * What a head gives surfaces per lumen-second when nothing hides it: a function of a place and the unit vector out of
 * the surface there, in 1/m2. Exact for openings of one luminance; a beam is averaged over 72 points of the opening.
 */
export function headLight(source: Source): (at: Vec3, normal: Vec3) => number {
  const shape = sourceShape(source);
  const beam = sourceBeam(source);
  const luminance = luminancePerEnergy(shape, beam) ?? 0;
  const scratch = emptyVector();
  const whole = (at: Vec3, n: Vec3): number =>
    luminance * discReading(shape, at[0], at[1], at[2], n[0], n[1], n[2], scratch);
  if (beam.kind === "lambert" || (shape.kind !== "disc" && shape.kind !== "polygon")) return whole;
  const points = samples(shape, fineness);
  const out = shape.normal;
  return (at, n) => {
    const all = whole(at, n);
    if (all === 0) return 0;
    let plain = 0;
    let beamed = 0;
    for (const point of points) {
      const x = at[0] - point.at[0];
      const y = at[1] - point.at[1];
      const z = at[2] - point.at[2];
      const d2 = x * x + y * y + z * z;
      const d = Math.sqrt(d2);
      const away = (x * out[0] + y * out[1] + z * out[2]) / d;
      const facing = -(x * n[0] + y * n[1] + z * n[2]) / d;
      if (!(away > 0) || !(facing > 0)) continue;
      const weight = (point.area * away * facing) / d2;
      plain += weight;
      beamed += weight * beamToward(beam, away, x / d, y / d, z / d);
    }
    return plain > 0 ? (all * beamed) / plain : 0;
  };
}
