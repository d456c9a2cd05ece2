import type { Vec3 } from "../../core/vector.js";
import { solidsOf, sunkIn, surfaced } from "../../scene/sunk.js";
import type { Body, Scene, ScenePolygon, Source } from "../../scene/types.js";
import { prepareSource } from "../../transport/direct.js";
import { occludersOf } from "../../transport/hiding/occluder.js";
import { seenShare, shadedSource } from "../../transport/hiding/shaded.js";
import type { Meter } from "../../transport/meter.js";
import { directionTo } from "../geometry/directions.js";
import { ownerOf } from "../say/surfaces.js";

/** What pieces of the set take of a light on its straight way to a place. */
export interface Hidden {
  /** Share of the light, 0 to 1, by all pieces together. */
  readonly share: number;
  /** The piece that takes most. */
  readonly piece: ScenePolygon | Body;
}

const isPiece = ({ kind }: ScenePolygon): boolean =>
  kind !== "floor" && kind !== "ceiling" && kind !== "wall";

/** The flat and the round parts of pieces. */
type Parts = Pick<Scene, "polygons" | "bodies">;

/** All pieces of the set that can stand before a place: no round one in which the place itself lies. */
function partsBefore({ polygons, bodies }: Scene, at: Vec3): Parts {
  return {
    polygons: polygons.filter(isPiece),
    bodies: bodies.filter(
      (body) => body.of === undefined && sunkIn(solidsOf({ bodies: [body], polygons: [] }), at) === null,
    ),
  };
}

/** The share that parts of pieces take of the light on a flat receptor that looks at the source. */
function takenBy(scene: Scene, source: Source, at: Vec3, parts: Parts): number {
  const facing = directionTo(at, source.centre);
  if (facing === null || parts.polygons.length + parts.bodies.length === 0) return 0;
  const occluders = occludersOf({ ...scene, ...parts });
  return 1 - seenShare(shadedSource(prepareSource(source), occluders), at, facing, false);
}

/** What pieces of the set, people not counted, hide of a light from a place; null where they hide nothing. */
export function hiddenBySet(scene: Scene, source: Source, at: Vec3): Hidden | null {
  const parts = partsBefore(scene, at);
  const share = takenBy(scene, source, at, parts);
  if (!(share > 0)) return null;
  const pieces = [...parts.polygons, ...parts.bodies];
  let piece: ScenePolygon | Body | null = null;
  let most = 0;
  for (const owner of new Set(pieces.map(({ name }) => ownerOf(name)))) {
    const isOwn = ({ name }: ScenePolygon | Body): boolean => ownerOf(name) === owner;
    const own = { polygons: parts.polygons.filter(isOwn), bodies: parts.bodies.filter(isOwn) };
    const taken = takenBy(scene, source, at, own);
    if (taken <= most) continue;
    most = taken;
    piece = pieces.find(isOwn) ?? null;
  }
  return piece === null ? null : { share, piece };
}

/** The same for a meter: from the surface of a piece or a body where the meter is held in one, as its reading is taken. */
export function hiddenFromMeter(scene: Scene, source: Source, { at, facing }: Meter): Hidden | null {
  return hiddenBySet(scene, source, surfaced(solidsOf(scene), at, facing) ?? at);
}
