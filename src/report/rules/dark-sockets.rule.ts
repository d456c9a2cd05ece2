import { lightPlace } from "../../scene/lit/seen.js";
import { atHeight, withSource } from "../change/move-source.js";
import { turnedDown } from "../change/turn-head.js";
import { anglesFrom } from "../face/angles.js";
import { alongFloor, elevationOf } from "../geometry/directions.js";
import { lightsOn, type Plan } from "../plan.js";
import { startWithLight } from "../say/light.js";
import { floorTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { type KeyLight, keyLight } from "./key-light.js";
import { highestUnderCeiling } from "./lamp-through-ceiling.rule.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";

/** A light up to this elevation in deg at the face reaches the eyes from below the brow. */
const LOW = 20;

/** Nearer to the face than this along the floor a lamp does not come, m. */
const NEAREST = 0.2;

/** How the key comes to stand at an elevation, worked out: lowered, moved back under the ceiling, or turned on its surface. */
function lowerTo(plan: Plan, key: KeyLight, most: number): string {
  const { source, face } = key;
  if (source.patch !== undefined) {
    const turned = turnedDown(plan.scene, source, face, (at) => elevationOf(face, at) - most);
    if (turned === null) return "Light a part of the surface that is lower or further from the face";
    return `${turned.words} for ${sayAngle(elevationOf(face, lightPlace(turned.there)))}${powerWords(plan, withSource(plan, key.index, turned.there), source)}`;
  }
  const level = alongFloor(face, source.centre);
  if (level <= NEAREST) return "Move the key forward";
  const { room } = plan.scene;
  const ceiling = room === null ? Number.POSITIVE_INFINITY : highestUnderCeiling(plan, room.height, source);
  const height = floorTo(face[2] + level * Math.tan((most * Math.PI) / 180), 0.01);
  const lower = atHeight(source, Math.min(height, ceiling));
  return `Lower ${source.name} to ${sayLength(lower.centre[2])} for ${sayAngle(elevationOf(face, lower.centre))}`;
}

/** A steep key leaves the eyes dark. */
export const darkSockets: Rule = {
  code: "dark-sockets",
  thresholds: ["dark_sockets"],
  safety: false,
  page: {
    when: "The key stands higher than `dark_sockets` (50 deg) from the first subject's face, and no other light before the face is 20 deg up or lower. Of a light that shines into a surface the lit patch counts.",
    means: "The brow shades the eyes, and the upper lid hides the light's mirror image in them.",
    todo: "Lower the key or move it back, have the chin raised, or bring light from below: a card on the lap, a white floor, a second light.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const most = threshold(plan.recipe, "dark_sockets");
    if (key === null || key.elevation <= most + 1e-9) return [];
    const helped = lightsOn(plan.scene).some((source) => {
      const place = lightPlace(source);
      const aside = Math.abs(anglesFrom(key.subject, place)?.azimuth ?? 180);
      return source.name !== key.source.name && aside < 90 && elevationOf(key.face, place) <= LOW;
    });
    if (helped) return [];
    return [
      {
        severity: "check",
        message: `${startWithLight(key.source)} stands at ${sayAngle(key.elevation)} to the face: the brow shades the eyes.`,
        remedy: `${lowerTo(plan, key, most)}, have the chin raised, or bring light from below.`,
        about: key.source.name,
      },
    ];
  },
};
