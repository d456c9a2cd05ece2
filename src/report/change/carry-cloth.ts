import type { Vec3 } from "../../core/vector.js";
import { add, dot, scale, subtract } from "../../math/vector.js";
import type { Scene, Source } from "../../scene/types.js";
import { ownerOf } from "../say/surfaces.js";

/** Whether a light that shines through a cloth has been carried or turned. */
export function isCarried(before: Source, after: Source): boolean {
  if (before.cloth === undefined) return false;
  const parts = ["centre", "axis", "across"] as const;
  return parts.some((part) => before[part].some((x, i) => x !== after[part][i]));
}

/**
 * The scene with the cloth of a light, and the head behind it, carried as the light has been: they keep their places to
 * each other. Stands are left where they are.
 */
export function carryCloth(scene: Scene, before: Source, after: Source): Scene {
  const turn = (vector: Vec3): Vec3 =>
    add(
      add(scale(after.across, dot(vector, before.across)), scale(after.along, dot(vector, before.along))),
      scale(after.axis, dot(vector, before.axis)),
    );
  const carry = (point: Vec3): Vec3 => add(after.centre, turn(subtract(point, before.centre)));
  const scrim = before.cloth?.scrim;
  return {
    ...scene,
    polygons: scene.polygons.map((row) =>
      ownerOf(row.name) === scrim
        ? { ...row, vertices: row.vertices.map(carry), normal: turn(row.normal) }
        : row,
    ),
    sources: scene.sources.map((row) =>
      row.spillOf === before.name
        ? {
            ...row,
            centre: carry(row.centre),
            aim: carry(row.aim),
            axis: turn(row.axis),
            across: turn(row.across),
            along: turn(row.along),
          }
        : row,
    ),
    stations: scene.stations.map((row) =>
      row.subject === null && ownerOf(row.name) === scrim
        ? { ...row, at: carry(row.at), facing: turn(row.facing) }
        : row,
    ),
  };
}
