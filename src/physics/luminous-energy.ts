import { distance } from "../math/vector.js";
import { type Beam, beamEnergyShare } from "./beam.js";
import { emittingArea, type SourceShape } from "./source-shape.js";

/**
 * Luminance on the axis per unit of luminous energy, in 1/(m2 sr): `L = Q / (pi A share)`, A the emitting area, the
 * share from the beam. With lm s it gives cd s/m2, with lm it gives cd/m2. Bodies emit as Lambertian sources, so a
 * beam counts for flat sources only. Undefined for a source without area.
 */
export function luminancePerEnergy(
  source: SourceShape,
  beam: Beam = { kind: "lambert" },
): number | undefined {
  const flat = source.kind === "disc" || source.kind === "polygon";
  const denominator = Math.PI * emittingArea(source) * (flat ? beamEnergyShare(beam) : 1);
  return denominator > 0 ? 1 / denominator : undefined;
}

/**
 * Intensity on the axis per unit of luminous energy, in 1/sr, far from the source: along the normal of a flat
 * source, anywhere round a sphere, square to the tube of a capsule. Cd s from lm s, cd from lm.
 */
export function axialIntensityPerEnergy(source: SourceShape, beam: Beam = { kind: "lambert" }): number {
  switch (source.kind) {
    case "disc":
    case "polygon":
      return 1 / (Math.PI * beamEnergyShare(beam));
    case "sphere":
      return 1 / (4 * Math.PI);
    case "capsule": {
      const side = 2 * source.radius * distance(source.from, source.to);
      const round = Math.PI * source.radius * source.radius;
      return (side + round) / (Math.PI * emittingArea(source));
    }
    default:
      return source satisfies never;
  }
}
