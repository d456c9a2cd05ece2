import type { Scene, ScenePolygon } from "../../scene/types.js";
import { sceneLight } from "../../transport/scene-light.js";
import type { Lit } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";

/** Reflectance of a board painted black (common practice, no source). */
export const blackBoard = 0.05;
/** Reflectance of a white board or of white paper (common practice, no source). */
export const whiteBoard = 0.85;

/** A lit scene with another set: its light is worked out anew. */
function withPolygons<T extends Lit>(lit: T, polygons: readonly ScenePolygon[]): T {
  const scene: Scene = { ...lit.scene, polygons };
  return { ...lit, scene, light: sceneLight(scene) };
}

/** The back of a surface of the room lies outside and stays black. */
const hasBack = ({ kind }: ScenePolygon): boolean =>
  kind !== "floor" && kind !== "ceiling" && kind !== "wall";

/** A lit scene with some flat surfaces of another reflectance, pieces of the set on both sides. */
export function withReflectance<T extends Lit>(
  lit: T,
  which: (polygon: ScenePolygon) => boolean,
  reflectance: number,
): T {
  return withPolygons(
    lit,
    lit.scene.polygons.map((row) =>
      which(row)
        ? { ...row, frontReflectance: reflectance, ...(hasBack(row) ? { backReflectance: reflectance } : {}) }
        : row,
    ),
  );
}

/**
 * A lit scene in which the flat surfaces of some owners throw back so many times as much, none more than `most`.
 */
export function withMoreReflectance<T extends Lit>(
  lit: T,
  owners: readonly string[],
  times: number,
  most: number,
): T {
  const more = (reflectance: number): number => Math.min(Math.max(most, reflectance), reflectance * times);
  return withPolygons(
    lit,
    lit.scene.polygons.map((row) =>
      owners.includes(ownerOf(row.name))
        ? {
            ...row,
            frontReflectance: more(row.frontReflectance),
            backReflectance: more(row.backReflectance),
          }
        : row,
    ),
  );
}

/** A lit scene with one more flat surface. */
export function withPiece<T extends Lit>(lit: T, piece: ScenePolygon): T {
  return withPolygons(lit, [...lit.scene.polygons, piece]);
}
