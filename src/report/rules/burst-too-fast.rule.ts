import { burstStops, flashesOn, recycleTime } from "../frame/timing.js";
import { ceilTo, twoFigures } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Less than this is no difference between two frames, stops. */
const SAME = 0.05;

/** A burst is faster than a flash fills up. */
export const burstTooFast: Rule = {
  code: "burst-too-fast",
  thresholds: [],
  safety: false,
  page: {
    when: "The camera has an `interval`, and a flash that is on needs longer to fill up: its `recycles` is for full power, and at a lower one it takes as much less time as there is less energy. Differences under 0.05 stop are left out.",
    means: "The second frame of the burst comes out darker.",
    todo: "A longer interval, less power with a higher ISO or a wider aperture, or a head that fills up faster.",
    source:
      "Charging at a constant rate, so that energy is in proportion to time; common practice, no source. ISO 2827 states recycling for full power (from memory).",
  },
  check: ({ scene }) => {
    const interval = scene.camera?.interval ?? null;
    if (interval === null) return [];
    return flashesOn(scene).flatMap((source): readonly RuleFinding[] => {
      const recycle = recycleTime(source);
      if (recycle === null) return [];
      const under = burstStops(recycle, interval);
      if (!(under > SAME)) return [];
      return [
        {
          severity: "check",
          message: `${source.name} needs ${twoFigures(recycle)} s to fill up, a frame comes every ${twoFigures(interval)} s: the second one is ${sayStops(under)} under.`,
          remedy: `Leave ${twoFigures(ceilTo(recycle, recycle < 1 ? 0.01 : 0.1))} s between frames, or take ${sayStops(ceilTo(under, 0.1))} less power with that much more ISO or aperture.`,
          about: source.name,
        },
      ];
    });
  },
};
