import type { SceneSubject } from "../../scene/types.js";
import { atDistance } from "../change/move-source.js";
import { readingAt } from "../light/reading.js";
import { type Lit, stationOf } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { furthestInRoom, keyAtDistance, keyDistanceWhere, keyLight, standsWords } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";

/** The brightest and the darkest face, and the stops between them; null unless two faces get light. */
function extremes(lit: Lit): {
  readonly bright: SceneSubject;
  readonly dark: SceneSubject;
  readonly stops: number;
} | null {
  const faces = lit.scene.subjects.flatMap((subject) => {
    const station = stationOf(lit.scene, subject, "face");
    const exposure = station === null ? 0 : readingAt(lit, station).exposure;
    return exposure > 0 ? [{ subject, exposure }] : [];
  });
  const sorted = [...faces].sort((a, b) => b.exposure - a.exposure);
  const [first, last] = [sorted[0], sorted[sorted.length - 1]];
  if (first === undefined || last === undefined || sorted.length < 2) return null;
  return {
    bright: first.subject,
    dark: last.subject,
    stops: Math.log2(first.exposure / last.exposure),
  };
}

/** Several faces get different amounts of light. */
export const peopleUneven: Rule = {
  code: "people-uneven",
  thresholds: ["people"],
  safety: false,
  page: {
    when: "The faces of several subjects, by discs that look at the key, differ by more than `people` (0.3 stop).",
    means: "One person comes out darker than the other.",
    todo: "Move the lamp back, turn the row square to it, or feather it towards the far person.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const found = extremes(plan);
    const most = threshold(plan.recipe, "people");
    if (key === null || found === null || found.stops <= most + 1e-9) return [];
    const far = keyDistanceWhere(
      plan,
      key,
      key.away,
      furthestInRoom(plan, key),
      (changed) => (extremes(changed)?.stops ?? 0) - most,
    );
    let remedy = "Turn the row square to the light, or feather it towards the darker person.";
    if (far !== null) {
      const away = ceilTo(far, 0.01);
      const moved = atDistance(key.source, key.face, away);
      remedy = `Move ${key.source.name} back to ${standsWords(key.face, moved)} for ${fixed(most, 1)} stop${powerWords(plan, keyAtDistance(plan, key, away), key.source)}; or turn the row square to it.`;
    }
    return [
      {
        severity: "check",
        message: `${found.dark.name} gets ${sayStops(found.stops)} less than ${found.bright.name}.`,
        remedy,
        about: found.dark.name === "" ? null : found.dark.name,
      },
    ];
  },
};
