import { atPower, withSource } from "../change/move-source.js";
import { readingAt } from "../light/reading.js";
import { sizeFrom } from "../light/size.js";
import { lightsOn } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { faceChange, keyLight } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";
import { sunWish } from "./wishes.js";

/** Above this angular size in deg a light throws no shadow that looks like one of its own. */
const SHADOWLESS = 25;

/** The depth in stops of the shadow in which one light of several is missing: log2(all / the others). */
export function shadowDepth(all: number, own: number): number {
  return own >= all ? Number.POSITIVE_INFINITY : Math.log2(all / (all - own));
}

/** A second light throws a shadow of its own where there should be one sun. */
export const twoSuns: Rule = {
  code: "two-suns",
  thresholds: ["second_shadow"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and at the face a light other than the key, up to 25 deg wide, throws a shadow deeper than `second_shadow` (0.5 stop).",
    means: "Two shadows of one nose: there is only one sun, and the picture reads as a studio.",
    todo: "Use one lamp, turn the other down until its shadow drowns, or make it very large.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (sunWish(plan.recipe) === null || key === null) return [];
    const most = threshold(plan.recipe, "second_shadow");
    const reading = readingAt(plan, key.station);
    return lightsOn(plan.scene).flatMap((source): RuleFinding[] => {
      if (source.name === key.source.name) return [];
      const share = reading.shares.find((row) => row.name === source.name);
      const own = share?.direct ?? 0;
      const size = sizeFrom(source, key.face)?.equivalent ?? 0;
      const depth = own > 0 ? shadowDepth(reading.exposure, own) : 0;
      if (depth <= most + 1e-9 || size > SHADOWLESS) return [];
      // Turned down to a share x it has a depth of log2(1 + own x / (rest + bounced x)) = most.
      const bounced = share?.bounced ?? 0;
      const rest = reading.exposure - own - bounced;
      const over = Math.exp(most * Math.LN2) - 1;
      const down = ceilTo(Math.log2((own - over * bounced) / (over * rest)), 0.1);
      const index = plan.scene.sources.indexOf(source);
      const change = faceChange(plan, withSource(plan, index, atPower(source, -down)));
      return [
        {
          severity: "check",
          message: `${source.name} throws a second shadow, ${sayStops(depth)} deep: two suns.`,
          remedy: `Turn ${source.name} down by ${fixed(down, 1)} stop (the face loses ${sayStops(-change)}), or use one lamp.`,
          about: source.name,
        },
      ];
    });
  },
};
