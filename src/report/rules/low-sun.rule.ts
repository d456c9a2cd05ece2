import { alongFloor } from "../geometry/directions.js";
import { ceilTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import { highestUnderCeiling } from "./lamp-through-ceiling.rule.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

/** A light that is to pass for sun stands very low. */
export const lowSun: Rule = {
  code: "low-sun",
  thresholds: ["low_sun"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and the key stands less than `low_sun` (15 deg) above the horizontal of the face. Silent where the wish itself names an elevation below that.",
    means: "It reads as the sun of the first or last hour of the day, whatever was meant.",
    todo: "Accept it as evening sun, raise the lamp, bring it nearer, or seat the subject: a lower face makes the same lamp steeper.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const wish = sunWish(plan.recipe);
    const key = keyLight(plan);
    const low = threshold(plan.recipe, "low_sun");
    if (wish === null || key === null || key.elevation >= low - 1e-9) return [];
    if (wish.elevation !== null && wish.elevation < low) return [];
    const wanted = wish.elevation ?? low;
    const level = alongFloor(key.face, key.source.centre);
    const height = ceilTo(key.face[2] + level * Math.tan((wanted * Math.PI) / 180), 0.01);
    const { room } = plan.scene;
    const most =
      room === null ? Number.POSITIVE_INFINITY : highestUnderCeiling(plan, room.height, key.source);
    const raise = `Raise ${key.source.name} to ${sayLength(height)} for ${sayAngle(wanted)}`;
    let remedy = `${raise}, or take it as evening sun.`;
    if (key.source.patch !== undefined) {
      remedy = `Turn ${key.source.name} to the face, or take it as evening sun.`;
    } else if (height > most) {
      const rise = most - key.face[2];
      const nearer = rise / Math.tan((wanted * Math.PI) / 180);
      remedy =
        rise > 0.1
          ? `The ceiling allows ${sayLength(most)}: bring it to ${sayLength(nearer)} from the face along the floor at that height for ${sayAngle(wanted)}, seat the subject, or take it as evening sun.`
          : "The ceiling does not allow more: seat the subject, or take it as evening sun.";
    }
    return [
      {
        severity: "note",
        message: `From the face this sun stands only ${sayAngle(key.elevation)} high: it reads as the first or last hour of the day.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
