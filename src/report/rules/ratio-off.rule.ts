import { findRoot } from "../../math/roots.js";
import { rectangleCorners, uprightFrame } from "../../scene/frame.js";
import type { ScenePolygon, Station } from "../../scene/types.js";
import { blackenUntil } from "../change/blacken.js";
import { atPower, withSource } from "../change/move-source.js";
import { whiteBoard, withPiece } from "../change/surfaces.js";
import { litToShadowStops } from "../light/contrast.js";
import { faceName, firstSubject, lightsOn, type Plan, stationOf } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayContrast } from "../say/quantity.js";
import { sayOwners } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";

/** The board that is tried: its size, and how far from the cheek it stands, m. */
const BOARD = { width: 1.2, height: 2, away: 0.6 } as const;
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

/** A white board that stands upright on the shaded side of a face and looks at it. */
function boardBeside({ at, facing }: Station): ScenePolygon | null {
  const level = Math.sqrt(facing[0] * facing[0] + facing[1] * facing[1]);
  if (level < 0.1) return null;
  const [x, y] = [facing[0] / level, facing[1] / level];
  const normal = [-x, -y, 0] as const;
  const centre = [at[0] + BOARD.away * x, at[1] + BOARD.away * y, BOARD.height / 2 + 1e-3] as const;
  return {
    name: "white board",
    kind: "card",
    vertices: rectangleCorners(centre, uprightFrame(normal), BOARD.width, BOARD.height),
    normal,
    frontReflectance: whiteBoard,
    backReflectance: whiteBoard,
  };
}

function remedyFor(plan: Plan, shaded: Station, found: number, wished: number): string {
  const fill = fillRemedy(plan, wished);
  if (fill !== null) return fill;
  if (found > wished) {
    const board = boardBeside(shaded);
    const there = board === null ? null : contrastOf(withPiece(plan, board));
    return there === null
      ? "Add a weak light from the camera, or a white board on the shaded side."
      : `A white board of 1.2 x 2 m, 60 cm from the shaded cheek, makes it ${sayContrast(there)}; nearer or a weak light from the camera makes it less still.`;
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
