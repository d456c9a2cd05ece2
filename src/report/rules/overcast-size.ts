import type { Vec3 } from "../../core/vector.js";
import { seenLight } from "../../scene/lit/seen.js";
import type { Source } from "../../scene/types.js";
import { atDistance } from "../change/move-source.js";
import { greatestSide } from "../geometry/shape.js";
import { sizeFrom } from "../light/size.js";
import { keyOf, type Plan } from "../plan.js";
import { ceilTo, floorTo } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { type KeyLight, keyAtDistance, keyDistanceWhere, standsWords } from "./key-light.js";
import { powerWords } from "./power-words.js";

/** How wide a light is from a point as it is seen, deg: a lit patch in place of its head; 0 from where it is not seen. */
export function seenSize(source: Source, eye: Vec3): number {
  return sizeFrom(seenLight(source), eye)?.equivalent ?? 0;
}

/** How a light that is too small from the face becomes large enough. */
export function sizeRemedy(plan: Plan, key: KeyLight, size: number, least: number): string {
  if (key.source.patch !== undefined) {
    return `Move ${key.source.name} further from the surface it shines into, so that it lights more of it.`;
  }
  const near = keyDistanceWhere(plan, key, 0.2, key.away, ({ scene }) => {
    const source = keyOf(scene);
    return (source === null ? 0 : (sizeFrom(source, key.face)?.equivalent ?? 0)) - least;
  });
  // The same measure seen under the wanted angle: the tangent of half of it, for a like shape.
  const half = (angle: number): number => Math.tan((Math.min(170, angle) * Math.PI) / 360);
  const larger = ceilTo((greatestSide(key.source) * half(least)) / half(size), 0.05);
  if (near === null) return `Take an opening of about ${sayLength(larger)}, or light the ceiling.`;
  const away = floorTo(near, 0.01);
  const moved = atDistance(key.source, key.face, away);
  return `Come to ${standsWords(key.face, moved)}${powerWords(plan, keyAtDistance(plan, key, away), key.source)}; or take an opening of about ${sayLength(larger)} where it is, or light the ceiling.`;
}
