import { setTop } from "../geometry/set-top.js";
import { floorTo } from "../say/number.js";
import { sayCentimetres, sayLength } from "../say/quantity.js";
import type { Rule, RuleFinding } from "./rule.js";
import { raiseWords, whose } from "./set-top-words.js";

/** Raised hands leave the set. */
export const setTopPose: Rule = {
  code: "set-top-pose",
  thresholds: [],
  safety: false,
  page: {
    when: "A subject's highest fingertip (`reach`, or raised arms) is above the top edge of the set as the lens sees it in the subject's plane, and that edge lies inside the frame.",
    means: "At the highest pose the hands stand before whatever is above the set.",
    todo: "Tell the sitter where the picture ends, and put a mark there; or a taller set, a higher lens.",
    source: "Projection through the lens, exact.",
  },
  check: ({ scene }) =>
    scene.subjects.flatMap((subject): RuleFinding[] => {
      if (!(subject.reachTop > subject.top + 1e-9)) return [];
      const top = setTop(scene, subject);
      if (top === null || !top.inFrame || subject.reachTop <= top.visible + 1e-9) return [];
      const cap = floorTo(top.visible, 0.01);
      const room = cap - subject.top;
      const left =
        room > 0
          ? `Keep hands below ${sayLength(cap)}, ${sayCentimetres(room)} above the head, and mark that height`
          : `The set already ends at ${sayLength(cap)}, below the top of the head`;
      return [
        {
          severity: "check",
          message: `Hands of ${whose(subject)} up to ${sayLength(subject.reachTop)} leave the set by ${sayCentimetres(subject.reachTop - top.visible)}.`,
          remedy: `${left}. It takes ${raiseWords(scene, top, subject.reachTop)}.`,
          about: subject.name === "" ? null : subject.name,
        },
      ];
    }),
};
