import { findRoot } from "../../math/roots.js";
import type { Source } from "../../scene/types.js";
import { atDistance, moveTo, withSource } from "../change/move-source.js";
import { alongFloor, bearingOf, elevationOf, pointAt } from "../geometry/directions.js";
import type { Plan } from "../plan.js";
import { ceilTo, floorTo } from "../say/number.js";
import { threshold } from "../settings.js";
import { fitsRoom, type KeyLight, standsWords } from "./key-light.js";
import { powerWords } from "./power-words.js";
import { sunWish } from "./wishes.js";

/** How far back a key is carried where no wall ends the search, m. */
const FURTHEST = 60;

/** The key further back, and where that is in words with the power that it takes; or how far it gets. */
export interface CarriedBack {
  readonly there: Source;
  /** Whether what was asked for holds there; if not, this is as far as the room lets it. */
  readonly enough: boolean;
  /**
   * `Move key back to 4.23 m from the face, 3.57 m high, with 1.2 stop more power for the same reading`; where that is not
   * enough `as far back as room and stand let it, 3.10 m from the face, 2.40 m high,`.
   */
  readonly words: string;
}

/**
 * The least way back of the key that brings an excess to nothing, as far as room and stand let it: along its line of sight, which keeps its
 * elevation, or else at its height, if the wish for sun still has its elevation there. Without either, the key as far
 * back along its line of sight as it gets; null where that is no way at all, and for a key that shines into a surface.
 *
 * @param excess - Of a key somewhere: above 0 where it is too near.
 */
export function carriedBack(
  plan: Plan,
  key: KeyLight,
  excess: (source: Source) => number,
): CarriedBack | null {
  if (key.source.patch !== undefined) return null;
  const sight = (away: number): Source => atDistance(key.source, key.face, away);
  const ways = [
    { at: sight, from: key.away, to: lastThat((away) => fits(plan, sight(away)), key.away) },
    levelWay(plan, key),
  ] as const;
  for (const way of ways) {
    if (way === null || !(way.to > way.from)) continue;
    const root = findRoot((away) => excess(way.at(away)), way.from, way.to, 1e-9);
    if (root === undefined) continue;
    const there = way.at(ceilTo(root, 0.01));
    if (fits(plan, there) && excess(there) <= 1e-9 && keepsWish(plan, key, there))
      return { there, enough: true, words: wordsOf(plan, key, there) };
  }
  const end = floorTo(ways[0].to, 0.01);
  const there = sight(end);
  if (!(end > key.away + 0.05)) return null;
  const far = end >= FURTHEST - 0.1 ? "even" : "as far back as room and stand let it,";
  return { there, enough: false, words: `${far} ${standsWords(key.face, there)},` };
}

/** The way along the floor away from the face, at the height where the key stands. */
function levelWay(plan: Plan, key: KeyLight) {
  const bearing = bearingOf(key.face, key.source.centre);
  if (bearing === null) return null;
  const height = key.source.centre[2];
  const at = (away: number): Source => moveTo(key.source, pointAt(key.face, bearing, away, height));
  const level = alongFloor(key.face, key.source.centre);
  return { at, from: level, to: lastThat((away) => fits(plan, at(away)), level) };
}

/** The greatest distance up to the search's end from which on something no longer holds, to the centimetre. */
function lastThat(holds: (away: number) => boolean, from: number): number {
  if (!holds(from)) return from;
  let [least, most] = [from, FURTHEST];
  while (most - least > 0.01) {
    const middle = (least + most) / 2;
    if (holds(middle)) least = middle;
    else most = middle;
  }
  return least;
}

/** Whether a lamp has a place in the room, and its stand the height. */
function fits({ scene, recipe }: Plan, source: Source): boolean {
  const { stand, centre } = source;
  const highest = stand === null || stand.boom !== null ? null : stand.highest;
  const reached = highest === null || centre[2] <= highest - threshold(recipe, "stand_margin") + 1e-9;
  return reached && fitsRoom(scene, source);
}

/** Whether a key that stands as high as the sun that is wished for does so there too. */
function keepsWish({ recipe }: Plan, key: KeyLight, there: Source): boolean {
  const wished = sunWish(recipe)?.elevation ?? null;
  if (wished === null) return true;
  const off = (elevation: number): number => Math.abs(elevation - wished);
  const allowed = threshold(recipe, "sun_elevation_wanted");
  const [before, after] = [off(key.elevation), off(elevationOf(key.face, there.centre))];
  return after <= Math.max(allowed, before) + 1e-6;
}

function wordsOf(plan: Plan, key: KeyLight, there: Source): string {
  return `Move ${key.source.name} back to ${standsWords(key.face, there)}${powerWords(plan, withSource(plan, key.index, there), key.source)}`;
}
