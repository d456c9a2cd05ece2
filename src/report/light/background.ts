import type { Scene, Station } from "../../scene/types.js";
import { seenAcross, wallPolygons, wallWords } from "../../scene/wall-places.js";
import { firstSubject, type Plan } from "../plan.js";

/**
 * The middle of the first upright piece of the set behind the first subject, else of a wall that is set: of the one that
 * fills most of the picture's width, or without a camera of the first behind the subject. Null without one, or where the
 * picture shows none.
 */
export function backgroundStation(scene: Scene): Station | null {
  const subject = firstSubject(scene);
  if (subject === null) return null;
  const middles = scene.stations.filter(
    (row) =>
      row.natural &&
      row.subject === null &&
      scene.stations.some((other) => other.name === `${row.name}.left`) &&
      Math.abs(row.facing[2]) < 0.5,
  );
  const isBehind = (row: Station): boolean => row.at[1] > subject.place[1];
  const piece = middles.find((row) => !wallWords.has(row.name) && isBehind(row));
  if (piece !== undefined) return piece;
  const walls = middles.filter((row) => wallWords.has(row.name));
  const { camera } = scene;
  if (camera === null) return walls.find(isBehind) ?? null;
  let most = 0;
  let widest: Station | null = null;
  for (const wall of walls) {
    const [low, high] = seenAcross(wallPolygons(scene.polygons, wall.name), camera) ?? [0, 0];
    if (high - low <= most) continue;
    most = high - low;
    widest = wall;
  }
  return widest;
}

/** Whether the wish is for a background as bright as the reading it is held against, or brighter: a white one. */
export function whiteWish({ recipe }: Plan): boolean {
  const wish = recipe.intent?.background;
  return wish !== undefined && (wish.side === "over" || wish.stops.value === 0);
}
