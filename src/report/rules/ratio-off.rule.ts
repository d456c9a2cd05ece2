import { findRoot } from "../../math/roots.js";
import type { Station } from "../../scene/types.js";
import { blackenUntil } from "../change/blacken.js";
import { boardWords, withBoardBeside } from "../change/board-beside.js";
import { atPower, withSource } from "../change/move-source.js";
import { litToShadowStops } from "../light/contrast.js";
import { faceName, firstSubject, lightsOn, type Plan, stationOf } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayContrast } from "../say/quantity.js";
import { sayOwners } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";

/** Stops by which a fill light is turned up or down at most. */
const MOST = 6;

function contrastOf(plan: Plan): number | null {
  return litToShadowStops(plan, faceName(plan.scene)).stops;
}

/** Turning the fill light, where there is one that reaches the wish; null where there is none. */
function fillRemedy(plan: Plan, wished: number): string | null {
  const fill = lightsOn(plan.scene).find((source) => source.role === "fill");
  if (fill === undefined) return null;
  const index = plan.scene.sources.indexOf(fill);
  const after = (change: number): number =>
    (contrastOf(withSource(plan, index, atPower(fill, change))) ?? Number.NaN) - wished;
  const found = findRoot(after, -MOST, MOST, 1e-3);
  if (found === undefined) return null;
  const change = Number(fixed(found, 1));
  return `Turn ${fill.name} ${change > 0 ? "up" : "down"} by ${fixed(Math.abs(change), 1)} stop: the face is then ${sayContrast(after(change) + wished)}.`;
}

function remedyFor(plan: Plan, shaded: Station, found: number, wished: number): string {
  const fill = fillRemedy(plan, wished);
  if (fill !== null) return fill;
  if (found > wished) {
    const brought = withBoardBeside(plan, shaded);
    const there = brought === null ? null : contrastOf(brought);
    return there === null
      ? "Add a weak light from the camera, or a white board on the shaded side."
      : `${boardWords} makes it ${sayContrast(there)}; nearer or a weak light from the camera makes it less still.`;
  }
  const black = blackenUntil(plan, shaded, null, (changed) => (contrastOf(changed) ?? wished) >= wished);
  const there = black === null ? null : contrastOf(black.plan);
  return black === null || there === null
    ? "Turn the other lights down, or move the key further to the side."
    : `Cover ${sayOwners(black.owners)} with black: the face is then ${sayContrast(there)}. Or move the key further to the side.`;
}

/** The contrast of the face is not as wished. */
export const ratioOff: Rule = {
  code: "ratio-off",
  thresholds: ["ratio"],
  safety: false,
  page: {
    when: "`intent` wishes for a `lit_to_shadow`, and lit against shaded cheek of the first subject differ from it by more than `ratio` (0.5 stop), or by more than the wish itself allows. Discs on both cheeks, 45 deg off the nose line, all light counted.",
    means: "The shaded side comes out darker or lighter than planned.",
    todo: "Turn the fill light; or bring a white board to the shaded side, or black.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const wish = plan.recipe.intent?.lit_to_shadow;
    const subject = firstSubject(plan.scene);
    const shaded = subject === null ? null : stationOf(plan.scene, subject, "shaded_cheek");
    const found = wish === undefined ? null : contrastOf(plan);
    if (wish === undefined || shaded === null || found === null || keyLight(plan) === null) return [];
    const allowed = wish.plusMinus ?? threshold(plan.recipe, "ratio");
    if (Math.abs(found - wish.stops) <= allowed + 1e-9) return [];
    return [
      {
        severity: "check",
        message: `Lit and shaded cheek are ${sayContrast(found)}, ${sayContrast(wish.stops)} is wished for.`,
        remedy: remedyFor(plan, shaded, found, wish.stops),
        about: null,
      },
    ];
  },
};
