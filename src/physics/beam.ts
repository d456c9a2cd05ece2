import type { Vec3 } from "../core/vector.js";
import { power } from "../math/power.js";
import { type BeamTable, tableIntensity } from "./beam-table.js";

/**
 * How the luminance of a flat source falls off away from its axis. `theta` is the angle from the axis.
 * - lambert: the same in every direction.
 * - cosine-power: intensity I0 cos^n theta; n = 1 is Lambertian. n from 0 up.
 * - grid: intensity I0 cos theta (1 - tan theta / tan(cutoff / 2)), nothing beyond; `cutoff` is the full angle to
 *   zero, in radians, above 0 and below pi. This is the share of a cell's end that is seen through a grid of
 *   channels in the plane of a wall; common practice, no source.
 * - table: a measured intensity, spread evenly over the opening; `across` and `along` are the unit vectors of the
 *   opening's width and height, to which the table is turned.
 */
export type Beam =
  | { readonly kind: "lambert" }
  | { readonly kind: "cosine-power"; readonly n: number }
  | { readonly kind: "grid"; readonly cutoff: number }
  | { readonly kind: "table"; readonly table: BeamTable; readonly across: Vec3; readonly along: Vec3 };

/** The beams that are the same all round their axis. */
export type RoundBeam = Exclude<Beam, { kind: "table" }>;

/** Luminance at an angle from the axis, given by its cosine, as a share of the luminance on the axis. */
export function beamShare(beam: RoundBeam, cosine: number): number {
  if (!(cosine > 0)) return 0;
  switch (beam.kind) {
    case "lambert":
      return 1;
    case "cosine-power":
      return power(cosine, beam.n - 1);
    case "grid": {
      const tangent = Math.sqrt(Math.max(0, 1 - cosine * cosine)) / cosine;
      return Math.max(0, 1 - tangent / Math.tan(beam.cutoff / 2));
    }
    default:
      return beam satisfies never;
  }
}

/**
 * Luminance in a direction as a share of the luminance on the axis.
 *
 * @param cosine - Of the angle from the axis.
 * @param x - Direction away from the source, a unit vector, in the frame in which the source stands.
 */
export function beamToward(beam: Beam, cosine: number, x: number, y: number, z: number): number {
  if (beam.kind !== "table") return beamShare(beam, cosine);
  if (!(cosine > 0)) return 0;
  const { table, across, along } = beam;
  const a = x * across[0] + y * across[1] + z * across[2];
  const b = x * along[0] + y * along[1] + z * along[2];
  return tableIntensity(table, a, b, cosine) / cosine;
}

/**
 * Luminous energy of a beam as a share of the energy of a Lambertian source with the same intensity on its axis
 * (that one has pi times the axial intensity): 2 / (n + 1) for cos^n, and 1 - c cot c for a grid with the half
 * cut-off c; of a table its flux into the front half. All are the integral of the intensity over the half sphere.
 */
export function beamEnergyShare(beam: Beam): number {
  switch (beam.kind) {
    case "lambert":
      return 1;
    case "cosine-power":
      return 2 / (beam.n + 1);
    case "grid": {
      const c = beam.cutoff / 2;
      // For narrow grids the difference loses its digits; the series c^2/3 + c^4/45 + 2 c^6/945 takes over.
      const c2 = c * c;
      return c < 0.02 ? c2 * (1 / 3 + c2 * (1 / 45 + (c2 * 2) / 945)) : 1 - c / Math.tan(c);
    }
    case "table":
      return beam.table.front / (Math.PI * beam.table.axial);
    default:
      return beam satisfies never;
  }
}
