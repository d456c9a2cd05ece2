import { directPerLumenSecond } from "../../transport/direct.js";
import { moveTo, withSource } from "../change/move-source.js";
import { alongFloor, bearingOf, pointAt } from "../geometry/directions.js";
import { hiddenFromMeter } from "../light/set-hides.js";
import type { Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { type KeyLight, keyLight } from "./key-light.js";

/** Above this share a light counts as hidden, and below it as free (common practice, no source). */
const HIDDEN = 0.5;
const FREE = 0.05;

/** The share of the key's straight light that people keep from the disc at the face; 0 where the set takes part. */
function hiddenByPeople({ scene, light }: Plan, { source, station }: KeyLight): number {
  const { room } = scene;
  // The face need not see a head that shines into a surface.
  if (source.patch !== undefined) return 0;
  const [x, y] = source.centre;
  // What a wall hides is not hidden by a head.
  if (room !== null && (x < room.left || x > room.right || y < room.front || y > room.back)) return 0;
  const open = directPerLumenSecond(source, station.at, station.facing, station.receptor);
  if (!(open > 0) || (hiddenFromMeter(scene, source, station)?.share ?? 0) > FREE) return 0;
  return 1 - light.direct(source, station) / open;
}

/** Whether the key stands behind the head, so that the meter before the face does not see most of it. */
export function isBehindHead(plan: Plan, key: KeyLight): boolean {
  return hiddenByPeople(plan, key) > HIDDEN;
}

/**
 * The bearing, in the recipe's words, at which the meter sees all of the key, brought round the face towards the nose at
 * the same height; null where there is none.
 */
export function bearingBeforeHead(plan: Plan, key: KeyLight): string | null {
  const { face, source, subject, index } = key;
  const here = bearingOf(face, source.centre);
  const nose = bearingOf([0, 0, 0], subject.nose);
  if (here === null || nose === null) return null;
  const off = ((((here - nose) % 360) + 540) % 360) - 180;
  for (let angle = Math.floor(Math.abs(off)); angle >= 0; angle--) {
    const raw = nose + Math.sign(off) * angle;
    const bearing = Math.round(((((raw % 360) + 540) % 360) - 180) * 1e6) / 1e6;
    const place = pointAt(face, bearing, alongFloor(face, source.centre), source.centre[2]);
    const there = withSource(plan, index, moveTo(source, place));
    const moved = keyLight(there);
    if (moved !== null && hiddenByPeople(there, moved) < FREE)
      return `${bearing < 0 ? "left" : "right"}(${fixed(Math.abs(bearing), 0)} deg)`;
  }
  return null;
}
