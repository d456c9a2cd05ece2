import { type Closing, closings } from "../frame/close-gap.js";
import { behind, coverageOf } from "../frame/coverage.js";
import { bareSides, type FrameSide } from "../frame/sides.js";
import type { Plan } from "../plan.js";
import { fixed, list } from "../say/number.js";
import { sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import type { Rule, RuleSeverity } from "./rule.js";

/** A share in per cent, with a decimal below 2 %. */
function share(value: number): string {
  return `${fixed(value * 100, value < 0.0195 ? 1 : 0)} %`;
}

const where: Readonly<Record<FrameSide, string>> = {
  left: "on the left",
  right: "on the right",
  top: "at the top",
  bottom: "at the bottom",
  within: "between the pieces",
};

/** Ways that close the gap, the camera's first; at most four of them. */
function remedyOf(found: readonly Pick<Closing, "text">[], extend: string): string {
  const ways = found.slice(0, 4).map(({ text }) => text);
  if (ways.length === 0) return `No single change closes it: turn or add a piece, or ${extend}.`;
  const words = ways.length === 1 ? ways[0] : `${ways.slice(0, -1).join(", ")} or ${ways[ways.length - 1]}`;
  return `It takes ${words}; else ${extend}.`;
}

/** The changes that close the gap: those of the report's picture where it is of this very set-up. */
function closingsOf({ scene, recipe, picture }: Plan): readonly Pick<Closing, "text">[] {
  return picture !== undefined && picture.scene === scene && picture.recipe === recipe
    ? picture.frame.closings
    : closings(recipe, scene);
}

/** The set does not fill the picture. */
export const bareFrame: Rule = {
  code: "bare-frame",
  thresholds: ["bare", "bare_check", "bare_stop"],
  safety: false,
  page: {
    when: "More than `bare` (0.1 %) of the picture is neither set nor subject: a note, from `bare_check` (5 %) on a check, from `bare_stop` (40 %) on a stop. It speaks only where there is a background: a flat, a paper, a panel, or a surface of the room with `belongs_to: set`.",
    means: "The room shows beside or above the set and has to be painted over afterwards.",
    todo: "A longer lens, a nearer camera, a wider opening, a larger piece; or plan the work afterwards. Where the floor or a wall may be seen, say `belongs_to: set` there.",
    source: "Exact areas of the outlines; the thresholds are common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const found = coverageOf(scene);
    if (typeof found === "string") return [];
    const bare = 1 - found.covered;
    if (!(bare > threshold(recipe, "bare"))) return [];
    const severity: RuleSeverity =
      bare >= threshold(recipe, "bare_stop")
        ? "stop"
        : bare >= threshold(recipe, "bare_check")
          ? "check"
          : "note";
    const sides = bareSides(found.bare, found.set)
      .filter((row) => row.share > 0.0005)
      .map((row) => `${share(row.share)} ${where[row.side]}`);
    const shown = behind(scene, found.bare)
      .filter((row) => row.surface !== "open" && row.share > 0.0005)
      .map((row) => sayOwner(row.surface));
    const shows = shown.length === 0 ? "" : `; there one sees ${list(shown)}`;
    return [
      {
        severity,
        message: `${share(bare)} of the picture is neither set nor subject: ${list(sides)}${shows}.`,
        remedy: remedyOf(closingsOf(plan), "extend the picture afterwards"),
        about: null,
      },
    ];
  },
};
