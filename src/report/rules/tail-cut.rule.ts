import { exactShutter } from "../../units/nominal.js";
import { flashesOn, openTime, tailStops } from "../frame/timing.js";
import { sayStops, sayTime } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { ambientUnder } from "./ambient.rule.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Shutter times that a remedy may name, 1 / s, the fastest first. */
const slower = [400, 320, 250, 200, 160, 125, 100, 80, 60, 50, 40, 30, 25, 20, 15] as const;

/** The shutter closes before a long flash is over. */
export const tailCut: Rule = {
  code: "tail-cut",
  thresholds: ["curtain", "tail_lag"],
  safety: false,
  page: {
    when: "A flash with `lasts` is on, the camera's `sync` is known, and the time for which the whole frame is open is shorter than `lasts`: the shutter less `curtain` (0.75) of the sync time, in which a curtain crosses, and less `tail_lag` (0.5 ms) of the trigger. A shutter faster than the sync time is `sync-band` instead.",
    means:
      "The side of the frame that closes first misses the tail of the flash: it comes out darker and bluer.",
    todo: "A longer shutter time, or a shorter flash: with most switched heads a lower power, with others a higher one.",
    source:
      "t0.1: ISO 2827:1988 (edition from memory); the tail of an exponential decay; the time of the curtain and the lag are common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const { camera } = scene;
    const open = openTime(plan);
    if (camera === null || camera.shutter === null || camera.sync === null || open === null) return [];
    if (camera.shutter < camera.sync * (1 - 1e-9)) return [];
    return flashesOn(scene).flatMap((source): readonly RuleFinding[] => {
      const { lasts } = source;
      if (lasts === undefined || lasts <= open * (1 + 1e-9)) return [];
      const lost = tailStops(lasts, open);
      const needed = lasts + (camera.shutter ?? 0) - open;
      const n = slower.find((one) => exactShutter(1 / one) >= needed * (1 - 1e-9));
      const time = n === undefined ? null : exactShutter(1 / n);
      const under = time === null ? null : ambientUnder(scene, time);
      const room = under === null ? "" : `; room light then is ${sayStops(under)} under the exposure`;
      const share = threshold(recipe, "curtain");
      const how =
        lost === null
          ? "never sees the whole frame"
          : `is cut by ${sayStops(lost)} at the side that closes first`;
      return [
        {
          severity: "note",
          message: `${source.name} lasts ${sayTime(lasts)} and ${how}: with a curtain of ${share} of the sync time the frame is open for ${open > 0 ? sayTime(open) : "no time"}.`,
          remedy: `${time === null ? "Take a shorter flash" : `Set ${sayTime(time)} or longer${room}`}.`,
          about: source.name,
        },
      ];
    });
  },
};
