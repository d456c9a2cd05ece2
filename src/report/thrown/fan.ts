import type { Vec3 } from "../../core/vector.js";
import { degrees } from "../../math/rotation.js";
import type { Scene } from "../../scene/types.js";
import { seenAcross, wallAt, wallPolygons, wallWords } from "../../scene/wall-places.js";

/**
 * The corners of upright flats, papers and panels, behind which a picture has its background; of walls that are set the
 * ends of what the picture shows of them.
 */
export function backgroundCorners(scene: Scene): readonly Vec3[] {
  const pieces = scene.polygons
    .filter((row) => ["flat", "paper", "panel"].includes(row.kind) && Math.abs(row.normal[2]) < 0.5)
    .flatMap((row) => row.vertices);
  return [...pieces, ...[...wallWords.keys()].flatMap((word) => wallEnds(scene, word))];
}

function wallEnds({ polygons, camera }: Scene, word: string): readonly Vec3[] {
  const walls = wallPolygons(polygons, word);
  const seen = camera === null || walls[0]?.asSet !== true ? null : seenAcross(walls, camera);
  if (camera === null || seen === null) return [];
  return seen.map((x) => wallAt(walls, camera, x, 0)).filter((at) => at !== null);
}

/** The spread in deg of the directions, seen from above, in which a lamp throws shadows over some places. */
export function fanOf(lamp: Vec3, places: readonly Vec3[], middle: Vec3): number {
  const mx = middle[0] - lamp[0];
  const my = middle[1] - lamp[1];
  let low = 0;
  let high = 0;
  for (const place of places) {
    const x = place[0] - lamp[0];
    const y = place[1] - lamp[1];
    const turn = degrees(Math.atan2(mx * y - my * x, mx * x + my * y));
    low = Math.min(low, turn);
    high = Math.max(high, turn);
  }
  return high - low;
}
