import type { Vec3 } from "../core/vector.js";
import { addScaled, dot, subtract } from "../math/vector.js";
import { crosses } from "./crosses.js";
import { sightOfPicture } from "./lens.js";
import { surfaceStation } from "./set/piece.js";
import type { SceneCamera, ScenePolygon, Station } from "./types.js";

/** The walls by the words of a recipe, the one behind the subject first, and the names of their polygons. */
export const wallWords: ReadonlyMap<string, string> = /* @__PURE__ */ new Map([
  ["wall_back", "wall back"],
  ["wall_left", "wall left"],
  ["wall_right", "wall right"],
  ["wall_front", "wall front"],
]);

/** The polygons of a wall; one with openings comes in several. */
export function wallPolygons(polygons: readonly ScenePolygon[], word: string): readonly ScenePolygon[] {
  const name = wallWords.get(word);
  return polygons.filter(
    (polygon) =>
      polygon.kind === "wall" &&
      name !== undefined &&
      (polygon.name === name || polygon.name.startsWith(`${name}.`)),
  );
}

/** Where the lens sees a wall at a place of the picture, an opening in it included; null where it sees none of it. */
export function wallAt(
  walls: readonly ScenePolygon[],
  camera: SceneCamera,
  x: number,
  y: number,
): Vec3 | null {
  const [wall] = walls;
  const [corner] = wall?.vertices ?? [];
  const sight = sightOfPicture(camera, x, y);
  if (wall === undefined || corner === undefined || sight === null) return null;
  const towards = dot(sight, wall.normal);
  // From the room's side alone.
  if (!(towards < -1e-9)) return null;
  const away = dot(subtract(corner, camera.at), wall.normal) / towards;
  const at = addScaled(camera.at, sight, away);
  return away > 0 && isOver(walls, at) ? at : null;
}

/** The least and the greatest of all corners, axis by axis. */
function boundsOf(walls: readonly ScenePolygon[]): readonly (readonly [number, number])[] {
  return [0, 1, 2].map((axis) => {
    const all = walls.flatMap(({ vertices }) => vertices.map((vertex) => vertex[axis] as number));
    return [Math.min(...all), Math.max(...all)] as const;
  });
}

function isOver(walls: readonly ScenePolygon[], at: Vec3): boolean {
  return boundsOf(walls).every(
    ([low, high], axis) => (at[axis] as number) >= low - 1e-9 && (at[axis] as number) <= high + 1e-9,
  );
}

/** Places across the picture at which a wall is looked for. */
const ACROSS = 100;

/** From where to where the lens sees a wall on the line through the middle of the picture, in halves of the frame. */
export function seenAcross(
  walls: readonly ScenePolygon[],
  camera: SceneCamera,
): readonly [number, number] | null {
  let low = 2;
  let high = -2;
  for (let i = 0; i <= ACROSS; i++) {
    const x = (2 * i) / ACROSS - 1;
    if (wallAt(walls, camera, x, 0) === null) continue;
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  return high > low ? [low, high] : null;
}

/** True for a place on a wall itself, not in one of its openings. */
export function isOnWall(walls: readonly ScenePolygon[], at: Vec3): boolean {
  return walls.some((wall) => {
    const { normal } = wall;
    return crosses(wall, addScaled(at, normal, 2e-3), addScaled(at, normal, -2e-3));
  });
}

/** The place of a share of a way along a wall; where that lies in an opening, the nearest one that does not. */
function onWallNear(
  walls: readonly ScenePolygon[],
  along: (share: number) => Vec3 | null,
  share: number,
): Vec3 | null {
  for (let i = 0; i <= ACROSS; i++) {
    for (const other of [share - i / ACROSS, share + i / ACROSS]) {
      const at = other < 0 || other > 1 ? null : along(other);
      if (at !== null && isOnWall(walls, at)) return at;
    }
  }
  return along(share);
}

/** The middle of a wall and of its left and right third. */
export interface WallPlaces {
  readonly middle: Vec3;
  readonly left: Vec3;
  readonly right: Vec3;
}

/**
 * The middle of a wall and of its left and right third: of what the picture shows of it on the line through the middle
 * of the frame, whatever stands before it; without a camera that sees it there, of the whole wall at half its height.
 * Where an opening lies there, the nearest places beside it. Null without that wall.
 */
export function wallPlaces(walls: readonly ScenePolygon[], camera: SceneCamera | null): WallPlaces | null {
  const [wall] = walls;
  if (wall === undefined) return null;
  const seen = camera === null ? null : seenAcross(walls, camera);
  if (camera !== null && seen !== null) {
    const [low, high] = seen;
    const along = (share: number): Vec3 | null => wallAt(walls, camera, low + share * (high - low), 0);
    const [left, middle, right] = [1 / 6, 1 / 2, 5 / 6].map((share) => onWallNear(walls, along, share));
    if (left && middle && right) return { left, middle, right };
  }
  const bounds = boundsOf(walls);
  const whole = (share: number): Vec3 => {
    const [x, y, z] = bounds.map(([low, high], axis) => low + (axis === 2 ? 1 / 2 : share) * (high - low));
    return [x as number, y as number, z as number];
  };
  const at = (share: number): Vec3 => onWallNear(walls, whole, share) ?? whole(share);
  // One who looks at the wall from inside has its left where the axis along it has its low end: back and left walls.
  const turned = wall.normal[0] < -0.5 || wall.normal[1] > 0.5;
  return { left: at(turned ? 5 / 6 : 1 / 6), middle: at(1 / 2), right: at(turned ? 1 / 6 : 5 / 6) };
}

/** The stations on the walls that a recipe counts as set. */
export function wallStations(
  polygons: readonly ScenePolygon[],
  placesOf: (word: string) => WallPlaces | null,
): readonly Station[] {
  return [...wallWords.keys()].flatMap((word) => {
    const [wall] = wallPolygons(polygons, word);
    const places = wall?.asSet === true ? placesOf(word) : null;
    if (wall === undefined || places === null) return [];
    return [
      surfaceStation(`${word}.left`, places.left, wall.normal),
      surfaceStation(word, places.middle, wall.normal),
      surfaceStation(`${word}.right`, places.right, wall.normal),
    ];
  });
}
