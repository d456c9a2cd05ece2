import { exp2 } from "../../core/exp2.js";
import type { Scene } from "../../scene/types.js";
import { faceWords, lightsOn } from "../plan.js";
import { apertureFor, isoFor } from "../say/make-up.js";
import { isoAtMost } from "../say/nominal.js";
import { fixed, list, twoFigures } from "../say/number.js";
import { overUnder } from "../say/over-under.js";
import { threshold } from "../settings.js";
import { beyondDial, settingWords } from "./power-words.js";
import { reachOf, tooStrong, tooWeak } from "./reach.js";
import type { Rule } from "./rule.js";

/** What the camera does in place of all lights by as much, in words. */
function instead({ camera }: Scene, off: number): string {
  const iso = camera?.iso ?? null;
  const slower = iso === null ? null : (isoAtMost(iso * exp2(-off))?.text ?? null);
  const ways = (off > 0 ? [slower] : [isoFor(camera, -off), apertureFor(camera, -off)]).filter(
    (way) => way !== null,
  );
  return ways.length === 0 ? "" : `: set ${ways.join(" or ")} instead`;
}

/** The face does not read the set aperture at the present setting, though the dial could make it. */
export const offAperture: Rule = {
  code: "off-aperture",
  thresholds: ["off_aperture"],
  safety: false,
  page: {
    when: "A disc at the first face that looks at the key differs from the set aperture by more than `off_aperture` (0.3 stop), and a setting of the key could meet it.",
    means: "The face comes out brighter or darker than a meter would have it.",
    todo: "Turn the dial by that much, all lights together so that contrasts stay; or leave it, if it is meant.",
    source: "Exposure: ISO 2720, ISO 10157. The threshold is common practice, no source.",
  },
  check: (plan) => {
    const reach = reachOf(plan);
    if (reach === null || tooWeak(reach) || tooStrong(reach)) return [];
    const { key, off, needed } = reach;
    if (Math.abs(off) <= threshold(plan.recipe, "off_aperture") + 1e-9) return [];
    const { source } = key;
    const face = faceWords(plan.scene);
    const full = source.fullWattSeconds;
    const energy = full === null ? "" : ` (${twoFigures(full * exp2(-needed))} Ws)`;
    const others = lightsOn(plan.scene).filter(({ name }) => name !== source.name);
    const short = others.filter((lamp) => beyondDial(lamp, -off) !== 0).map(({ name }) => name);
    const along =
      others.length === 0
        ? ""
        : short.length === 0
          ? ", and the other lights by as much"
          : `, and the other lights by as much, which ${list(short)} cannot${instead(plan.scene, off)}`;
    return [
      {
        severity: "note",
        message: `${face === "the face" ? "The face" : face} is ${overUnder(off, "the set aperture")}.`,
        remedy: `Turn ${source.name} ${off > 0 ? "down" : "up"} by ${fixed(Math.abs(off), 1)} stop, to ${settingWords(needed)}${energy}${along}.`,
        about: source.name,
      },
    ];
  },
};
