import type { SceneSubject } from "../../scene/types.js";
import { atDistance } from "../change/move-source.js";
import { inFrame } from "../geometry/frame.js";
import { readingAt, stopsOver } from "../light/reading.js";
import { type Lit, stationOf } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { threshold } from "../settings.js";
import { furthestInRoom, keyAtDistance, keyDistanceWhere, keyLight, standsWords } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";

/** Stops by which the shin gets less than the face, all lights together; null where one gets nothing. */
export function headToShin(lit: Lit, subject: SceneSubject): number | null {
  const { scene } = lit;
  const face = stationOf(scene, subject, "face");
  const shin = stationOf(scene, subject, "shin");
  return face === null || shin === null ? null : stopsOver(readingAt(lit, face), readingAt(lit, shin));
}

/** The light falls off between head and feet. */
export const headToToe: Rule = {
  code: "head-to-toe",
  thresholds: ["head_to_toe", "head_to_toe_check"],
  safety: false,
  page: {
    when: "The shin is in the frame and reads more than `head_to_toe` (0.5 stop) off the face, both by discs that look at the key; beyond `head_to_toe_check` (1 stop) it is a check. Bounced light counts: a white floor lifts the shins.",
    means: "The figure sinks into the dark towards the feet, or its legs outshine the face.",
    todo: "Move the lamp back, aim it lower, feather it up, or lay a white floor.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const key = keyLight(plan);
    if (key === null) return [];
    const shin = stationOf(scene, key.subject, "shin");
    if (shin === null || (scene.camera !== null && !inFrame(scene.camera, shin.before?.at ?? shin.at)))
      return [];
    const loss = headToShin(plan, key.subject);
    const least = threshold(recipe, "head_to_toe");
    if (loss === null || Math.abs(loss) <= least + 1e-9) return [];
    const far = keyDistanceWhere(
      plan,
      key,
      key.away,
      furthestInRoom(plan, key),
      (changed) => Math.abs(headToShin(changed, key.subject) ?? 0) - least,
    );
    let remedy = "Move the lamp back, aim it lower, or lay a white floor.";
    if (far !== null) {
      const away = ceilTo(far, 0.01);
      const moved = atDistance(key.source, key.face, away);
      remedy = `Move ${key.source.name} back to ${standsWords(key.face, moved)} for ${fixed(least, 1)} stop${powerWords(plan, keyAtDistance(plan, key, away), key.source)}; or aim it lower, or lay a white floor.`;
    }
    return [
      {
        severity: Math.abs(loss) > threshold(recipe, "head_to_toe_check") ? "check" : "note",
        message: `The shins are ${fixed(Math.abs(loss), 1)} stop ${loss > 0 ? "darker" : "brighter"} than the face.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
