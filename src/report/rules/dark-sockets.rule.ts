import { atHeight } from "../change/move-source.js";
import { alongFloor, elevationOf } from "../geometry/directions.js";
import { lightsOn } from "../plan.js";
import { floorTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";

/** A light up to this elevation in deg at the face reaches the eyes from below the brow. */
const LOW = 20;

/** A steep key leaves the eyes dark. */
export const darkSockets: Rule = {
  code: "dark-sockets",
  thresholds: ["dark_sockets"],
  safety: false,
  page: {
    when: "The key stands higher than `dark_sockets` (50 deg) from the first subject's face, and no other light on the face is 20 deg up or lower.",
    means: "The brow shades the eyes, and the upper lid hides the light's mirror image in them.",
    todo: "Lower the key or move it back, have the chin raised, or bring light from below: a card on the lap, a white floor, a second light.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const most = threshold(plan.recipe, "dark_sockets");
    if (key === null || key.elevation <= most + 1e-9) return [];
    const helped = lightsOn(plan.scene).some(
      (source) => source.name !== key.source.name && elevationOf(key.face, source.centre) <= LOW,
    );
    if (helped) return [];
    const level = alongFloor(key.face, key.source.centre);
    const height = floorTo(key.face[2] + level * Math.tan((most * Math.PI) / 180), 0.01);
    const lower = atHeight(key.source, height);
    const remedy =
      level > 0.2
        ? `Lower ${key.source.name} to ${sayLength(height)} for ${sayAngle(elevationOf(key.face, lower.centre))}, have the chin raised, or bring light from below.`
        : "Move the key forward, have the chin raised, or bring light from below.";
    return [
      {
        severity: "check",
        message: `${key.source.name} stands at ${sayAngle(key.elevation)} to the face: the brow shades the eyes.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
