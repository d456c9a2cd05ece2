import type { Vec3 } from "../../core/vector.js";
import { addScaled, dot, normalise, scale, subtract } from "../../math/vector.js";
import { cheekPlace } from "../../scene/subject-stations.js";
import type { SceneSubject } from "../../scene/types.js";
import type { Meter } from "../../transport/meter.js";
import { backgroundLamps, type Turned, turnLamps } from "../change/turn-lamps.js";
import { readingAt, stopsOver } from "../light/reading.js";
import { firstSubject, lightsOn, type Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import { beyondDial } from "./power-words.js";
import type { Rule } from "./rule.js";

/** Flat receptors on both sides of the head that look 45 deg back from square to the nose line. */
function rearCheeks(subject: SceneSubject): readonly Meter[] {
  return [1, -1].map((side) => {
    const front = cheekPlace(subject, side);
    const ahead = dot(subtract(front, subject.head), subject.nose);
    const facing: Vec3 =
      normalise(addScaled(scale(subject.across, side), subject.nose, -1)) ?? subject.across;
    return { at: addScaled(front, subject.nose, -2 * ahead), facing, receptor: "disc" };
  });
}

/** Stops of the background lights on the rear cheek that gets more of them, over the face's reading. */
function wrapOf(plan: Plan, subject: SceneSubject): number | null {
  const key = keyLight(plan);
  const lamps = lightsOn(plan.scene).filter((source) => source.role === "background");
  if (key === null || lamps.length === 0) return null;
  const face = readingAt(plan, key.station);
  const names = lamps.map((lamp) => lamp.name);
  const levels = rearCheeks(subject).flatMap((meter) => stopsOver(readingAt(plan, meter, names), face) ?? []);
  return levels.length === 0 ? null : Math.max(...levels);
}

/** That a dial does not go down so far; nothing where it does. */
function lowest({ lamps, change }: Turned): string {
  const least = Math.min(...lamps.map((lamp) => beyondDial(lamp, change)));
  return least < 0 ? `, which is ${sayStops(-least)} lower than it goes: with a neutral gel` : "";
}

/** Light from the background creeps round the subject. */
export const wrap: Rule = {
  code: "wrap",
  thresholds: ["wrap"],
  safety: false,
  page: {
    when: "What lights with the role `background` give the rear cheeks, straight and by way of the background, is less than `wrap` (1.5 stops) under the face's reading. Rear cheeks are discs on the sides of the head that look 45 deg back.",
    means: "Cheeks and hair glow at their edges or drown in the white.",
    todo: "Bring the subject away from the background, mask the part of it that the picture does not show, or turn its lights down.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const subject = firstSubject(plan.scene);
    const level = subject === null ? null : wrapOf(plan, subject);
    const least = threshold(plan.recipe, "wrap");
    if (subject === null || level === null || level <= -least + 1e-9) return [];
    const way = turnLamps(
      plan,
      backgroundLamps(plan),
      (changed) => (wrapOf(changed, subject) ?? Number.NaN) + least + 0.05,
    );
    const away =
      "Bring the subject away from the background, or cover with black what the picture does not show of it";
    return [
      {
        severity: "check",
        message: `The background's light on the rear cheek is ${fixed(Math.abs(level), 1)} stop ${level > 0 ? "over" : "under"} the face: edges glow.`,
        remedy: way === null ? `${away}.` : `${away}; or turn ${way.names} ${way.words}${lowest(way)}.`,
        about: null,
      },
    ];
  },
};
