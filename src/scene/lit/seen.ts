import type { Vec3 } from "../../core/vector.js";
import type { Source } from "../types.js";

/** Where the light that is seen comes from: the lit patch of a head that shines into a surface, else the opening. */
export function lightPlace(source: Source): Vec3 {
  return source.patch?.centre ?? source.centre;
}

/**
 * The light as it is seen: for a head that shines into a surface the evenly shining patch, with what it sends out at
 * its first bounce; for any other source itself. For size, hardness and direction, not for sums of light.
 */
export function seenLight(source: Source): Source {
  const { patch } = source;
  if (patch === undefined) return source;
  return {
    ...source,
    patch: undefined,
    shape: { kind: "rectangle", width: patch.width, height: patch.height },
    centre: patch.centre,
    axis: patch.normal,
    across: patch.across,
    along: patch.along,
    beam: { kind: "lambertian" },
    area: patch.width * patch.height,
    energy: source.energy * patch.share,
    fullEnergy: source.fullEnergy * patch.share,
    aim: patch.aim,
  };
}

/** The name by which a recipe knows a lamp: that of its light, also for a head behind a cloth. */
export function lampName(source: Source): string {
  return source.spillOf ?? source.name;
}
