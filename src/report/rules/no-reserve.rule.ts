import { exp2 } from "../../core/exp2.js";
import type { Station } from "../../scene/types.js";
import { directFrom, shareOf } from "../light/reading.js";
import { lightsOn, type Plan } from "../plan.js";
import { isoAtLeast } from "../say/nominal.js";
import { sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { settingWords } from "./power-words.js";
import { reachOf, tooWeak } from "./reach.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Whether anything of a light comes to a place, straight or bounced. */
function arrives(plan: Plan, name: string, station: Station): boolean {
  if (directFrom(plan, name, station) > 0) return true;
  return shareOf(plan, name, station, "glance").bounced > 0;
}

/** A flash works near its full power. */
export const noReserve: Rule = {
  code: "no-reserve",
  thresholds: ["reserve"],
  safety: false,
  page: {
    when: "A flash that is on is set less than `reserve` (1 stop) below full power. Silent for a key that is too weak anyway, and for one that the set aperture asks to be turned down that far.",
    means: "It works, with the slowest recycling and nothing left for a gel, a grid or a smaller aperture.",
    todo: "Raise the ISO value, come nearer, or open the aperture, and turn the flash down.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const least = threshold(recipe, "reserve");
    const reach = reachOf(plan);
    // A key that is too weak, or that the set aperture asks to be turned down far enough, has another warning.
    const spoken =
      reach !== null && (tooWeak(reach) || reach.needed > least - reach.slack + 1e-9)
        ? reach.key.source.name
        : null;
    const iso = scene.camera?.iso ?? null;
    return lightsOn(scene).flatMap((source): RuleFinding[] => {
      const { below } = source;
      if (source.kind !== "flash" || below === null || below >= least - 1e-9 || source.name === spoken)
        return [];
      // A lamp whose light comes to no place has nothing to be turned down for; other warnings say why.
      if (!scene.stations.some((station) => arrives(plan, source.name, station))) return [];
      const faster = iso === null ? null : isoAtLeast(iso * exp2(least - below));
      const gained = faster === null || iso === null ? 0 : Math.log2(faster.exact / iso);
      return [
        {
          severity: "note",
          message: `${source.name} works at ${settingWords(below)}: ${sayStops(Math.max(0, below))} in reserve.`,
          remedy:
            faster === null
              ? "Come nearer or open the aperture, and turn it down."
              : `At ${faster.text} the same picture takes ${settingWords(below + gained)}.`,
          about: source.name,
        },
      ];
    });
  },
};
