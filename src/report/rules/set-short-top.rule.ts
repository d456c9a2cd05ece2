import { setTop } from "../geometry/set-top.js";
import { ceilTo } from "../say/number.js";
import { sayCentimetres } from "../say/quantity.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";
import { raiseWords, whose } from "./set-top-words.js";

/** The set ends too close above a head, or below it, as the lens sees it. */
export const setShortTop: Rule = {
  code: "set-short-top",
  thresholds: ["set_headroom"],
  safety: false,
  page: {
    when: "The top edge of the set behind a head, as the lens sees it in the subject's plane, is less than `set_headroom` (10 cm) above the top of the head, and lies inside the frame. Flats, upright paper, panels count; where there is none behind the head, a wall that belongs to the set.",
    means: "The edge of the set cuts the head, or sits on it like a hat.",
    todo: "A taller set, the set raised on secured blocks, a slightly higher lens, a lower pose, or the top extended afterwards.",
    source: "Projection through the lens, exact; the threshold is common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const needed = threshold(recipe, "set_headroom");
    return scene.subjects.flatMap((subject): RuleFinding[] => {
      const top = setTop(scene, subject);
      if (top === null || !top.inFrame) return [];
      const room = top.visible - subject.top;
      if (room >= needed - 1e-9) return [];
      const lower = ceilTo(needed - room, 0.01);
      const message =
        room < 0
          ? `In the picture ${sayOwner(ownerOf(top.piece))} ends ${sayCentimetres(-room)} below the top of the head of ${whose(subject)}.`
          : `In the picture ${sayOwner(ownerOf(top.piece))} ends only ${sayCentimetres(room)} above the head of ${whose(subject)}.`;
      return [
        {
          severity: "stop",
          message,
          remedy: `It takes ${raiseWords(scene, top, subject.top + needed)}, or a pose ${sayCentimetres(lower)} lower; else the top is extended afterwards.`,
          about: subject.name === "" ? null : subject.name,
        },
      ];
    });
  },
};
