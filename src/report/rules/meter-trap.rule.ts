import { fNumberOf, readingAt, stopsOver } from "../light/reading.js";
import { firstSubject, stationOf } from "../plan.js";
import { sayFNumber, sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";

/** A disc to the key and a dome to the camera say different things. */
export const meterTrap: Rule = {
  code: "meter-trap",
  thresholds: ["meter_trap"],
  safety: false,
  page: {
    when: "At the first face a disc that looks at the key and a dome that looks at the camera differ by more than `meter_trap` (1 stop). Bounced light counts and brings the two nearer.",
    means: "The light comes so far from the side that the way the meter is held decides the exposure.",
    todo: "Choose: the disc keeps texture in the lit side, the dome shows more of the shaded side, between them splits it.",
    source: "Common practice, no source; meter constants by ISO 2720.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const key = keyLight(plan);
    const subject = firstSubject(scene);
    const dome = subject === null || scene.camera === null ? null : stationOf(scene, subject, "face", "dome");
    if (key === null || dome === null) return [];
    const a = readingAt(plan, key.station);
    const b = readingAt(plan, dome);
    const difference = stopsOver(a, b);
    if (difference === null || Math.abs(difference) <= threshold(recipe, "meter_trap") + 1e-9) return [];
    const [lit, whole] = [fNumberOf(scene, a.exposure, a.constant), fNumberOf(scene, b.exposure, b.constant)];
    const numbers =
      lit === null || whole === null
        ? "Expose for the side towards the light, for the whole face, or between."
        : `Set ${sayFNumber(lit)} for the side towards ${key.source.name}, ${sayFNumber(whole)} for the whole face, or ${sayFNumber(Math.sqrt(lit * whole))} between.`;
    return [
      {
        severity: "check",
        message: `At the face the disc to ${key.source.name} and the dome to the camera are ${sayStops(Math.abs(difference))} apart.`,
        remedy: numbers,
        about: key.source.name,
      },
    ];
  },
};
