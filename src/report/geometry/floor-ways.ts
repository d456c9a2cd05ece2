import type { Vec3 } from "../../core/vector.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene, ScenePolygon, SceneRoom } from "../../scene/types.js";
import { isWithin } from "../frame/region.js";
import { ownerOf } from "../say/surfaces.js";

/** A place on the floor. */
type Spot = readonly [x: number, y: number];

/** What stands in the way on the floor: an outline, and how far round it it reaches. */
interface Obstacle {
  readonly name: string;
  readonly ring: readonly Spot[];
  readonly radius: number;
}

/** Higher than this is walked under, lower than this is walked over, m. */
const OVERHEAD = 2;
const UNDERFOOT = 0.05;
/** Steps of the floor that is searched, m, and how many there are at most along a side. */
const STEP = 0.05;
const MOST = 400;
/** How far from the mark the way may begin; how far before the door it may end beyond half its width; what is kept free there. */
const BEGIN = 1;
const END = 0.25;
const THROUGH = 0.2;

function toSegment([x, y]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const [dx, dy] = [bx - ax, by - ay];
  const long = dx * dx + dy * dy;
  const t = long > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** From a spot to an obstacle, m; 0 on it. */
function distanceTo(spot: Spot, { ring, radius }: Obstacle): number {
  let least = Number.POSITIVE_INFINITY;
  if (isWithin([ring], spot)) return 0;
  ring.forEach((a, i) => {
    const b = ring[i + 1 < ring.length ? i + 1 : 0] ?? a;
    least = Math.min(least, toSegment(spot, a, b));
  });
  return Math.max(0, least - radius);
}

function stands({ vertices, kind }: ScenePolygon): boolean {
  if (kind === "floor" || kind === "ceiling" || kind === "wall") return false;
  const heights = vertices.map(([, , z]) => z);
  return Math.min(...heights) < OVERHEAD && Math.max(...heights) > UNDERFOOT;
}

/** Pieces of the set and the feet of stands; people walk away, and lamps without a stand are not known to have feet. */
function obstaclesOf(scene: Scene): readonly Obstacle[] {
  const flat = scene.polygons.filter(stands).map(({ name, vertices }) => ({
    name: ownerOf(name),
    ring: vertices.map(([x, y]): Spot => [x, y]),
    radius: 0,
  }));
  const round = scene.bodies.flatMap((body): readonly Obstacle[] => {
    if (body.of === "subject" || (body.of === "stand" && body.name.endsWith(" boom"))) return [];
    const owner = body.name.replace(/ stand$/, "");
    const feet = scene.sources.find((source) => lampName(source) === owner)?.stand?.feet ?? 0;
    if (body.kind === "capsule") {
      const ends = [body.from, body.to];
      if (Math.min(...ends.map(([, , z]) => z)) - body.radius > OVERHEAD) return [];
      const radius = body.of === "stand" ? Math.max(feet, body.radius) : body.radius;
      return [{ name: body.name, ring: ends.map(([x, y]): Spot => [x, y]), radius }];
    }
    const [x, y, z] = body.centre;
    const radius = body.kind === "sphere" ? body.radius : Math.max(...body.axes.map((a) => Math.hypot(...a)));
    return z - radius > OVERHEAD ? [] : [{ name: body.name, ring: [[x, y]], radius }];
  });
  return [...flat, ...round];
}

/** The ways over the floor of a room. */
export interface FloorWays {
  /** Whether a way leads from a place to a door, the pieces of a name left out. */
  readonly isFree: (from: Vec3, door: Vec3, without?: string) => boolean;
  /** The names of what stands on the floor. */
  readonly names: readonly string[];
}

/**
 * The ways of a width over the floor of a room, past the set and the feet of stands, looked for on squares of 5 cm
 * (larger in a room of more than 20 m): a gap that is narrower by less than that may pass.
 */
export function floorWays(scene: Scene, room: SceneRoom, width: number): FloorWays {
  const obstacles = obstaclesOf(scene);
  const names = [...new Set(obstacles.map(({ name }) => name))];
  const step = Math.max(STEP, room.width / MOST, room.depth / MOST);
  const [columns, rows] = [Math.ceil(room.width / step), Math.ceil(room.depth / step)];
  const spotAt = (i: number, j: number): Spot => [
    room.left + ((i + 0.5) / columns) * room.width,
    room.front + ((j + 0.5) / rows) * room.depth,
  ];
  const near = width / 2 - step / 2;
  // For each square, how many names stand too near, and the one where it is one.
  const crowd = new Int32Array(columns * rows);
  const lone = new Int32Array(columns * rows);
  names.forEach((name, index) => {
    const own = obstacles.filter((row) => row.name === name);
    for (let j = 0; j < rows; j++) {
      for (let i = 0; i < columns; i++) {
        const spot = spotAt(i, j);
        if (!own.some((row) => distanceTo(spot, row) < near)) continue;
        const cell = j * columns + i;
        crowd[cell] = (crowd[cell] ?? 0) + 1;
        lone[cell] = index;
      }
    }
  });
  const isOff = ([x, y]: Spot): boolean =>
    Math.min(x - room.left, room.right - x, y - room.front, room.back - y) < near;

  const isFree = (from: Vec3, door: Vec3, without?: string): boolean => {
    const out = without === undefined ? -1 : names.indexOf(without);
    const isOpen = (cell: number, spot: Spot): boolean =>
      (crowd[cell] === 0 || (crowd[cell] === 1 && lone[cell] === out)) && !isOff(spot);
    const left = obstacles.filter(({ name }) => name !== without);
    const goes = (spot: Spot): boolean =>
      [0, 0.25, 0.5, 0.75, 1].every((t) =>
        left.every(
          (row) =>
            distanceTo([spot[0] + t * (door[0] - spot[0]), spot[1] + t * (door[1] - spot[1])], row) >=
            THROUGH,
        ),
      );
    const far = (spot: Spot, to: Vec3): number => Math.hypot(spot[0] - to[0], spot[1] - to[1]);
    const queue: number[] = [];
    const reached = new Uint8Array(columns * rows);
    for (let cell = 0; cell < columns * rows; cell++) {
      const spot = spotAt(cell % columns, Math.floor(cell / columns));
      if (far(spot, from) > BEGIN || !isOpen(cell, spot)) continue;
      reached[cell] = 1;
      queue.push(cell);
    }
    for (let at = 0; at < queue.length; at++) {
      const cell = queue[at] as number;
      const [i, j] = [cell % columns, Math.floor(cell / columns)];
      const spot = spotAt(i, j);
      if (far(spot, door) <= width / 2 + END && goes(spot)) return true;
      for (const [a, b] of [
        [i - 1, j],
        [i + 1, j],
        [i, j - 1],
        [i, j + 1],
      ] as const) {
        if (a < 0 || b < 0 || a >= columns || b >= rows) continue;
        const next = b * columns + a;
        if (reached[next] === 1 || !isOpen(next, spotAt(a, b))) continue;
        reached[next] = 1;
        queue.push(next);
      }
    }
    return false;
  };
  return { isFree, names };
}
