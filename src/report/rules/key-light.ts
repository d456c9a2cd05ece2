import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import { distance } from "../../math/vector.js";
import { discTowards } from "../../scene/held-meter.js";
import { lightPlace } from "../../scene/lit/seen.js";
import type { Scene, SceneSubject, Source, Station } from "../../scene/types.js";
import type { Meter } from "../../transport/meter.js";
import { atDistance, withSource } from "../change/move-source.js";
import { directionTo, elevationOf } from "../geometry/directions.js";
import { type Reading, readingAt, stopsFromAperture, stopsOver } from "../light/reading.js";
import { firstSubject, keyOf, type Lit, type Plan, stationOf } from "../plan.js";
import { sayLength } from "../say/quantity.js";

/** How near a search goes, m, where each step carries a cloth and works out all light anew. */
const CARRIED = 1e-3;

/** The key with the first subject that it lights. */
export interface KeyLight {
  readonly index: number;
  readonly source: Source;
  readonly subject: SceneSubject;
  readonly face: Vec3;
  /** The disc at the face that looks at the key. */
  readonly station: Station;
  /** The disc at the face that looks at the opening itself; another one where the key shines into a surface. */
  readonly straight: Meter;
  /** From the face to the centre of the opening, or of the patch that it lights where it shines into a surface, m. */
  readonly away: number;
  /** Of the same at the face, deg. */
  readonly elevation: number;
}

/** The key and its subject; null without either, or with the key off. */
export function keyLight({ scene }: Plan): KeyLight | null {
  const source = keyOf(scene);
  const subject = firstSubject(scene);
  if (source === null || scene.key === null || subject === null || !(source.energy > 0)) return null;
  const station = stationOf(scene, subject, "face");
  if (station === null) return null;
  const { face } = subject;
  return {
    index: scene.key,
    source,
    subject,
    face,
    station,
    straight: discTowards(scene.stations, face, source.centre) ?? station,
    away: distance(face, lightPlace(source)),
    elevation: elevationOf(face, lightPlace(source)),
  };
}

/** The reading at the first face of a disc that looks at the key, in a lit scene that may be a changed one. */
export function faceReading(lit: Lit): Reading | null {
  const { scene } = lit;
  const subject = firstSubject(scene);
  const station = subject === null ? null : stationOf(scene, subject, "face");
  return station === null ? null : readingAt(lit, station);
}

/** Stops of that reading over (+) or under (-) the set aperture; null where it cannot be said. */
export function faceOffAperture(lit: Lit): number | null {
  const reading = faceReading(lit);
  return reading === null ? null : stopsFromAperture(lit.scene, reading.exposure, reading.constant);
}

/** Stops that the face gains (+) or loses (-) by a change of the scene; 0 where the change takes the key out of its room. */
export function faceChange(before: Lit, after: Lit): number {
  const key = keyOf(after.scene);
  if (key !== null && !fitsRoom(after.scene, key)) return 0;
  const a = faceReading(after);
  const b = faceReading(before);
  return a === null || b === null ? 0 : (stopsOver(a, b) ?? 0);
}

/** The plan with the key carried along its line of sight from the face, to another slant distance. */
export function keyAtDistance(plan: Plan, key: KeyLight, away: number): Plan {
  return withSource(plan, key.index, atDistance(key.source, key.face, away));
}

/**
 * The slant distance of the key at which a quantity of the changed plan becomes 0, searched between two distances;
 * null where it does not, and for a key that shines into a surface: its distance is not that of its head.
 */
export function keyDistanceWhere(
  plan: Plan,
  key: KeyLight,
  low: number,
  high: number,
  quantity: (changed: Plan) => number,
): number | null {
  if (key.source.patch !== undefined || !(high > low) || !(low > 0)) return null;
  return (
    findRoot(
      (away) => quantity(keyAtDistance(plan, key, away)),
      low,
      high,
      key.source.cloth === undefined ? 1e-9 : CARRIED,
    ) ?? null
  );
}

/** The greatest slant distance up to 60 m at which the key, carried along its line of sight, is still in the room. */
export function furthestInRoom({ scene: { room } }: Plan, { source, face }: KeyLight): number {
  const sight = directionTo(face, source.centre);
  if (room === null || sight === null) return 60;
  const ends = [
    [sight[0] < 0 ? room.left : room.right, 0],
    [sight[1] < 0 ? room.front : room.back, 1],
    [sight[2] < 0 ? 0 : room.height - source.headHeight / 2, 2],
  ] as const;
  return ends.reduce((least, [end, axis]) => {
    const part = sight[axis];
    return Math.abs(part) < 1e-9 ? least : Math.min(least, (end - face[axis]) / part);
  }, 60);
}

/** Where a lamp would stand, in words: `3.20 m from the face, 2.40 m high`. */
export function standsWords(face: Vec3, source: Source): string {
  return `${sayLength(distance(face, source.centre))} from the face, ${sayLength(source.centre[2])} high`;
}

/** Whether the whole lamp lies in the room; true without a room. */
export function fitsRoom({ room }: Scene, source: Source): boolean {
  if (room === null) return true;
  const [x, y, z] = source.centre;
  return (
    x >= room.left &&
    x <= room.right &&
    y >= room.front &&
    y <= room.back &&
    z + source.headHeight / 2 <= room.height
  );
}
