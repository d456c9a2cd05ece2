import type { Station } from "../../scene/types.js";
import { blackenUntil } from "../change/blacken.js";
import { boardWords, withBoardBeside } from "../change/board-beside.js";
import { turnLamps } from "../change/turn-lamps.js";
import { litToShadowStops } from "../light/contrast.js";
import { faceName, faceWords, firstSubject, lightsOn, type Plan, stationOf } from "../plan.js";
import { sayContrast } from "../say/quantity.js";
import { sayOwners } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";
import { turnRemedy } from "./turn-words.js";

/** Stops by which a fill light is turned up or down at most. */
const MOST = 6;

function contrastOf(plan: Plan): number | null {
  return litToShadowStops(plan, faceName(plan.scene)).stops;
}

/** Turning the fill light, where there is one that reaches the wish; null where there is none. */
function fillRemedy(plan: Plan, shaded: Station, wished: number): string | null {
  const fill = lightsOn(plan.scene).find((source) => source.role === "fill");
  if (fill === undefined) return null;
  const quantity = (changed: Plan): number => (contrastOf(changed) ?? Number.NaN) - wished;
  const way = turnLamps(plan, [fill], quantity, MOST);
  if (way === null) return null;
  return turnRemedy(plan, way, {
    at: shaded.at,
    name: faceWords(plan.scene),
    quantity,
    outcome: (changed) => `the face is then ${sayContrast(contrastOf(changed) ?? Number.NaN)}`,
  });
}

function remedyFor(plan: Plan, shaded: Station, found: number, wished: number): string {
  const fill = fillRemedy(plan, shaded, wished);
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
    : `Cover ${sayOwners(black.owners)} with black: the face is then ${sayContrast(there)}${there < wished - 0.05 ? ", which is not enough yet" : ""}. Or move the key further to the side.`;
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
