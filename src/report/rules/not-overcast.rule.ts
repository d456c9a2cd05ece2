import { intoCeiling } from "../change/into-ceiling.js";
import { litToShadowStops } from "../light/contrast.js";
import { topOverFront } from "../light/planes.js";
import { faceName, type Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayAngle, sayContrast, sayStops } from "../say/quantity.js";
import { sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { headSpill } from "./head-spill.rule.js";
import { type KeyLight, keyLight } from "./key-light.js";
import { seenSize, sizeRemedy } from "./overcast-size.js";
import type { Rule, RuleFinding } from "./rule.js";
import { overcastWish } from "./wishes.js";

/** The contrast of the face and how far its top is over its front, as the rule judges them. */
function looksOf(
  plan: Plan,
  key: KeyLight,
): { readonly contrast: number | null; readonly top: number | null } {
  return {
    contrast: litToShadowStops(plan, faceName(plan.scene)).stops,
    top: topOverFront(plan, key.subject),
  };
}

/** What the key would do from the ceiling, worked out; nothing where there is none or where it does so already. */
export function ceilingRemedy(plan: Plan, key: KeyLight): string {
  const changed = intoCeiling(plan, key.source.name);
  const there = changed === null ? null : keyLight(changed);
  if (changed === null || there === null)
    return "Light the ceiling instead, or hang a large cloth over the subject.";
  const { contrast, top } = looksOf(changed, there);
  const sides = contrast === null ? "" : ` the cheeks are then ${sayStops(Math.abs(contrast))} apart`;
  const planes = top === null ? "" : `${sides === "" ? "" : " and"} the top of the head is ${overWords(top)}`;
  return `Turn ${key.source.name} into the ceiling over the subject:${sides}${planes}. Or hang a large cloth there.`;
}

/** `0.6 stop over the face`. */
function overWords(top: number): string {
  return `${fixed(Math.abs(top), 1)} stop ${top < 0 ? "under" : "over"} the face`;
}

/** A light that is to pass for an overcast sky is too small, too much from one side, or not from above. */
export const notOvercast: Rule = {
  code: "not-overcast",
  thresholds: ["overcast_size", "overcast_contrast", "second_shadow"],
  safety: false,
  page: {
    when: "`intent` wishes for an overcast sky, and one of these holds, each said by itself: the key (a lit patch of ceiling or wall where it shines into one, the cloth where it shines through one) is less than `overcast_size` (60 deg) wide from the face; lit and shaded cheek are more than `overcast_contrast` (2 stops) apart, all bounced light counted; a flat receptor on top of the head that looks up gets less than one at the face that looks along the nose; a head that shines into a surface also reaches the face straight, and its shadow there is deeper than `second_shadow` (0.5 stop).",
    means:
      "The sky is half of all that is seen, and brightest from above. A smaller light reads as a window, a light from in front as a big window, and what goes past the ceiling draws shadows that no grey day has.",
    todo: "Light the ceiling, hang a cloth overhead, bring light to the other side, or turn the head so that none of it reaches the face straight.",
    source:
      "An overcast sky lights a vertical surface about 1 stop less than a level one (CIE standard overcast sky: 0.396 of it, and light from the ground); the thresholds are common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (!overcastWish(plan.recipe) || key === null) return [];
    const about = key.source.name;
    const found: RuleFinding[] = [];
    const say = (message: string, remedy: string): void => {
      found.push({ severity: "check", message, remedy, about });
    };
    const { patch } = key.source;
    const light =
      patch === undefined ? about : `The patch of ${sayOwner(patch.surface)} that ${about} lights`;
    const least = threshold(plan.recipe, "overcast_size");
    const size = seenSize(key.source, key.face);
    if (size > 0 && size < least - 1e-9)
      say(
        `${light} is ${sayAngle(size)} wide from the face: that is a window, not a sky.`,
        sizeRemedy(plan, key, size, least),
      );
    const { contrast, top } = looksOf(plan, key);
    if (contrast !== null && contrast > threshold(plan.recipe, "overcast_contrast") + 1e-9)
      say(
        `Lit and shaded cheek are ${sayContrast(contrast)}: a grey day has no shady side.`,
        ceilingRemedy(plan, key),
      );
    if (top !== null && top < -1e-9)
      say(
        `The top of the head is ${overWords(top)}: the light comes from in front, not from above.`,
        ceilingRemedy(plan, key),
      );
    const spill = headSpill(plan, key);
    if (spill !== null)
      say(
        `${about} reaches the face straight as well, past ${sayOwner(patch?.surface ?? "")}: it throws a shadow ${sayStops(spill.stops)} deep.`,
        `Turn ${about} further up, or hang a black flag between it and the face.`,
      );
    return found;
  },
};
