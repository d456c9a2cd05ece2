import type { Vec3 } from "../../core/vector.js";
import type { Scene, ScenePolygon, Source } from "../../scene/types.js";
import { prepareSource } from "../../transport/direct.js";
import { occludersOf } from "../../transport/hiding/occluder.js";
import { seenShare, shadedSource } from "../../transport/hiding/shaded.js";
import { directionTo } from "../geometry/directions.js";
import { ownerOf } from "../say/surfaces.js";

/** What pieces of the set take of a light on its straight way to a place. */
export interface Hidden {
  /** Share of the light, 0 to 1, by all pieces together. */
  readonly share: number;
  /** The piece that takes most. */
  readonly piece: ScenePolygon;
}

const isPiece = ({ kind }: ScenePolygon): boolean =>
  kind !== "floor" && kind !== "ceiling" && kind !== "wall";

/** The share that flat pieces take of the light on a flat receptor that looks at the source. */
function takenBy(scene: Scene, source: Source, at: Vec3, polygons: readonly ScenePolygon[]): number {
  const facing = directionTo(at, source.centre);
  if (facing === null || polygons.length === 0) return 0;
  const occluders = occludersOf({ ...scene, polygons, bodies: [] });
  return 1 - seenShare(shadedSource(prepareSource(source), occluders), at, facing, false);
}

/** What pieces of the set, people not counted, hide of a light from a place; null where they hide nothing. */
export function hiddenBySet(scene: Scene, source: Source, at: Vec3): Hidden | null {
  const pieces = scene.polygons.filter(isPiece);
  const share = takenBy(scene, source, at, pieces);
  if (!(share > 0)) return null;
  let piece: ScenePolygon | null = null;
  let most = 0;
  for (const owner of new Set(pieces.map(({ name }) => ownerOf(name)))) {
    const own = pieces.filter(({ name }) => ownerOf(name) === owner);
    const taken = takenBy(scene, source, at, own);
    if (taken <= most) continue;
    most = taken;
    piece = own[0] ?? null;
  }
  return piece === null ? null : { share, piece };
}
