import type { Vec3 } from "../../core/vector.js";
import { type Thing, thingAt, thingsOf, thingsOverlap } from "../geometry/things.js";
import { shortestWay } from "../geometry/ways-out.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Two people, or a person and a piece of the set, or two pieces, are where only one of them can be. */
export const overlap: Rule = {
  code: "overlap",
  thresholds: ["overlap_people", "overlap_pieces"],
  safety: false,
  page: {
    when: "Two people, or a person and a piece of the set, reach more than `overlap_people` (5 cm) into each other; or a ball, a post or a box reaches more than `overlap_pieces` (2 cm) into another piece. How far is how far one of them would have to be moved, in whatever direction is the shortest, until they touch. Touching is fine: who sits on a box or leans on a flat does not overlap with it. Arms do not count: they give way. Sheets among themselves are not looked at, nor stands.",
    means:
      "It cannot be built like that, and light and shadows are worked out for bodies that stand in each other.",
    todo: "Look for a slip in a place or a size; move one of the two.",
    source:
      "Common practice, no source: flesh and clothes give, a figure is no likeness, and a tape may be off by 2 cm.",
  },
  check: ({ scene, recipe }) => {
    const [people, pieces] = [threshold(recipe, "overlap_people"), threshold(recipe, "overlap_pieces")];
    const things = thingsOf(scene);
    return things.flatMap((second, i) =>
      things.slice(0, i).flatMap((first): RuleFinding[] => {
        if (!first.solid && !second.solid) return [];
        const isPerson = first.of === "subject" || second.of === "subject";
        const enough = (isPerson ? people : pieces) + 1e-9;
        const by = thingsOverlap(first, second, enough);
        if (!(by > enough)) return [];
        return [
          {
            severity: isPerson ? "check" : "stop",
            message: `${first.name} and ${second.name} reach ${sayLength(by)} into each other.`,
            remedy: remedyFor(first, second, by),
            // The name that the sentence starts with, so that it keeps its small letter.
            about: first.name === "the person" ? second.name : first.name,
          },
        ];
      }),
    );
  },
};

/** What is moved: a piece before a person, else the later one. The way is looked for until they only touch. */
function remedyFor(first: Thing, second: Thing, by: number): string {
  const [moved, other] = first.of === "piece" ? [first, second] : [second, first];
  const touches = (way: Vec3): boolean => thingsOverlap(thingAt(moved, way), other, 1e-3) === 0;
  const way = shortestWay(touches, { level: true, from: by });
  return way === null
    ? `Look for a slip in a place or a size; move ${moved.name}, or ${other.name}.`
    : `Look for a slip in a place or a size; ${moved.name} is clear of ${other.name} ${sayLength(way.by)} ${way.words}.`;
}
