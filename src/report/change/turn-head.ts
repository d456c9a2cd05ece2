import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import { addScaled, dot, normalise, subtract } from "../../math/vector.js";
import { relit } from "../../scene/lit/into-surface.js";
import { lightPlace } from "../../scene/lit/seen.js";
import type { Scene, Source } from "../../scene/types.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayOwner } from "../say/surfaces.js";
import { aimAt } from "./move-source.js";

/** The aim is carried along the surface by no more than this, m. */
const MOST = 4;

/** A head turned where it stands, or carried, so that it lights another part of the surface that it shines into. */
export interface TurnedHead {
  readonly there: Source;
  /** `Aim key 62 cm further from the face along the ceiling`, `Lower key with its aim by 30 cm`. */
  readonly words: string;
}

/**
 * The least turn of a head that shines into a surface by which its patch, seen from a face, no longer stands too high:
 * the aim goes down along a wall, and along floor or ceiling away from the face. Where no turn does it, head and aim are
 * carried that way. Null for any other light, where neither does it inside the room, and where the patch stands straight
 * above.
 *
 * @param excess - Of a light somewhere: above 0 where it stands too high.
 */
export function turnedDown(
  scene: Scene,
  source: Source,
  face: Vec3,
  excess: (light: Vec3) => number,
): TurnedHead | null {
  const { patch } = source;
  if (patch === undefined) return null;
  const upright = Math.abs(patch.normal[2]) < 0.7;
  const raw: Vec3 = upright ? [0, 0, -1] : subtract(patch.centre, face);
  const way = normalise(addScaled(raw, patch.normal, -dot(raw, patch.normal)));
  if (way === undefined) return null;
  const { polygons } = scene;
  const turned = (by: number): Source => relit(aimAt(source, addScaled(source.aim, way, by)), polygons);
  const carried = (by: number): Source =>
    relit(
      { ...source, centre: addScaled(source.centre, way, by), aim: addScaled(source.aim, way, by) },
      polygons,
    );
  const where = sayOwner(patch.surface);
  const further = `further from the face along ${where}`;
  const { name } = source;
  const ways = [
    { at: turned, ends: [source.aim], before: `Aim ${name}`, after: upright ? `lower on ${where}` : further },
    {
      at: carried,
      ends: [source.aim, source.centre],
      before: `${upright ? "Lower" : "Carry"} ${name} with its aim by`,
      after: upright ? "" : further,
    },
  ] as const;
  for (const { at, ends, before, after } of ways) {
    const left = (by: number): number => {
      const moved = at(by);
      return moved.patch === undefined ? Number.NaN : excess(lightPlace(moved));
    };
    const most = Math.min(...ends.map((end) => lastInRoom(scene, end, way)));
    const found = findRoot(left, 0, most, 1e-3);
    const by = found === undefined ? Number.NaN : ceilTo(found, 0.01);
    if (!(left(by) <= 0)) continue;
    const words = `${before} ${fixed(by * 100, 0)} cm ${after}`.trim();
    return { there: at(by), words };
  }
  return null;
}

/** How far a point may be carried along a way and still be in the room, m. */
function lastInRoom({ room }: Scene, from: Vec3, way: Vec3): number {
  if (room === null) return MOST;
  const ends = [
    [room.left, room.right],
    [room.front, room.back],
    [0, room.height],
  ] as const;
  return ends.reduce((least, [low, high], axis) => {
    const step = way[axis] as number;
    if (Math.abs(step) < 1e-9) return least;
    return Math.min(least, ((step < 0 ? low : high) - (from[axis] as number)) / step);
  }, MOST);
}
