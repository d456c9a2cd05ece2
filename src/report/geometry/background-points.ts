import type { Vec3 } from "../../core/vector.js";
import { addScaled, dot, subtract } from "../../math/vector.js";
import type { Scene, ScenePolygon, Station } from "../../scene/types.js";
import { isOnWall, seenAcross, wallAt, wallPolygons } from "../../scene/wall-places.js";
import type { Meter } from "../../transport/meter.js";
import { ownerOf } from "../say/surfaces.js";
import { inFrame } from "./frame.js";

/** Points along the width and along the height of a background. */
const ACROSS = 5;
const UP = 4;

/** A place on the background, and where it lies in words. */
export interface BackgroundPoint {
  readonly meter: Meter;
  /** `at the upper left`, `in the middle` ... */
  readonly where: string;
}

/** The flat surface on which a station of the set lies; null where there is none. */
export function surfaceUnder(scene: Scene, station: Station): ScenePolygon | null {
  return (
    scene.polygons.find(
      (polygon) =>
        ownerOf(polygon.name) === ownerOf(station.name) &&
        Math.abs(dot(polygon.normal, station.facing)) > 0.999 &&
        Math.abs(dot(subtract(station.at, polygon.vertices[0] ?? station.at), polygon.normal)) < 0.01,
    ) ?? null
  );
}

const third = (share: number, low: string, high: string): string =>
  share < 0.34 ? low : share > 0.66 ? high : "";

/**
 * A grid of places over an upright rectangular background, those in the picture where there is a camera that shows any
 * of them; of a wall of the room, which goes on beyond the picture, a grid over what the picture shows of it. What a
 * person hides counts as well: people move.
 */
export function backgroundPoints(scene: Scene, station: Station): readonly BackgroundPoint[] {
  const polygon = surfaceUnder(scene, station);
  const shown = polygon?.kind === "wall" ? pointsOfWall(scene, station) : [];
  if (shown.length > 0) return shown;
  const [a, b, , d] = polygon?.vertices ?? [];
  if (a === undefined || b === undefined || d === undefined || polygon?.vertices.length !== 4) return [];
  const alongFirst = subtract(b, a);
  const alongSecond = subtract(d, a);
  const points: BackgroundPoint[] = [];
  for (let j = 0; j < UP; j++) {
    for (let i = 0; i < ACROSS; i++) {
      const u = (i + 0.5) / ACROSS;
      const v = (j + 0.5) / UP;
      const at: Vec3 = addScaled(addScaled(a, alongFirst, u), alongSecond, v);
      points.push({ meter: { at, facing: station.facing, receptor: "disc" }, where: whereOn(polygon, at) });
    }
  }
  const { camera } = scene;
  const seen = camera === null ? [] : points.filter(({ meter }) => inFrame(camera, meter.at));
  return seen.length > 0 ? seen : points;
}

/** The grid over the part of a wall that the picture shows, without what lies in its openings. */
function pointsOfWall({ polygons, camera }: Scene, { name, facing }: Station): readonly BackgroundPoint[] {
  const walls = wallPolygons(polygons, name);
  const seen = camera === null ? null : seenAcross(walls, camera);
  if (camera === null || seen === null) return [];
  const [low, high] = seen;
  const points: BackgroundPoint[] = [];
  for (let j = 0; j < UP; j++) {
    for (let i = 0; i < ACROSS; i++) {
      const [u, v] = [(i + 0.5) / ACROSS, (j + 0.5) / UP];
      const at = wallAt(walls, camera, low + u * (high - low), 2 * v - 1);
      if (at === null || !isOnWall(walls, at)) continue;
      points.push({ meter: { at, facing, receptor: "disc" }, where: placeWords(v, u) });
    }
  }
  return points;
}

function whereOn({ vertices }: ScenePolygon, at: Vec3): string {
  const share = (axis: 0 | 2): number => {
    const all = vertices.map((vertex) => vertex[axis]);
    const [low, high] = [Math.min(...all), Math.max(...all)];
    return high > low ? (at[axis] - low) / (high - low) : 0.5;
  };
  return placeWords(share(2), share(0));
}

/** Where a place lies by its shares of the height and the width, in words. */
function placeWords(up: number, across: number): string {
  const [height, side] = [third(up, "lower", "upper"), third(across, "left", "right")];
  if (height === "") return side === "" ? "in the middle" : `at the ${side}`;
  return side === "" ? `at the ${height === "upper" ? "top" : "bottom"}` : `at the ${height} ${side}`;
}
