import type { LightModel, Recipe } from "../../model/types.js";
import { buildScene } from "../../scene/build.js";
import { withLight } from "../change/rebuild.js";
import { seenOfLamp } from "../frame/seen.js";
import { fixed } from "../say/number.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Two per cent of the frame, in halves of it: what a slip of the camera shows. */
const MARGIN = 0.04;
/** How far round a lamp is moved in search of a place outside of the picture, deg. */
const FARTHEST = 60;

/** The nearest whole degree round the mark at which lamp and stand are outside of the picture; null up to 60 deg. */
function clearBearing(recipe: Recipe, light: LightModel): string | null {
  const { bearing, name } = light;
  if (bearing === undefined || name === null) return null;
  const sign = bearing.side === "left" ? -1 : 1;
  const before = Math.round(sign * bearing.angle.value);
  for (let turn = 1; turn <= FARTHEST; turn++) {
    // Away from the middle of the picture first: towards the camera's side.
    for (const to of [before - Math.sign(before) * turn, before + Math.sign(before) * turn]) {
      if (Math.abs(to) > 180) continue;
      const side = to < 0 ? "left" : "right";
      const angle = { ...bearing.angle, value: Math.abs(to) };
      const moved = withLight(recipe, name, (row) => ({ ...row, bearing: { ...bearing, side, angle } }));
      const scene = buildScene(moved, () => undefined);
      if (seenOfLamp(scene, name, MARGIN) === null) return `${side}(${fixed(Math.abs(to), 0)} deg)`;
    }
  }
  return null;
}

const partWords: Readonly<Record<string, (name: string) => string>> = {
  lamp: (name) => name,
  stand: (name) => `The stand of ${name}`,
  boom: (name) => `The boom of ${name}`,
};

/** A lamp or what carries it is in the picture. */
export const lampInFrame: Rule = {
  code: "lamp-in-frame",
  thresholds: [],
  safety: false,
  page: {
    when: "A part of a lamp's opening, its stand or its boom lies inside the frame or within 2 % of it, and nothing stands before it. A light with `role: practical` is meant to be seen. The head behind the opening and cables are not looked at.",
    means: "The lamp, or what carries it, is in the picture.",
    todo: "Move it out of the frame, hold the camera the other way, use a longer lens, or hide it.",
    source: "Projection through the lens; what is seen by lines of sight.",
  },
  check: ({ scene, recipe }) =>
    recipe.lights.flatMap((light): RuleFinding[] => {
      const { name } = light;
      if (name === null || light.role === "practical") return [];
      const near = seenOfLamp(scene, name, MARGIN);
      if (near === null) return [];
      const inside = seenOfLamp(scene, name, 0);
      const what = partWords[inside ?? near]?.(name) ?? name;
      return [
        {
          severity: "stop",
          message:
            inside === null
              ? `${what} is within 2 % of the edge of the picture.`
              : `${what} is in the picture.`,
          // Sought only for those who read it: most only ask whether there is such a finding.
          get remedy() {
            const free = clearBearing(recipe, light);
            const move = free === null ? "Move it out of the frame" : `Move it round to ${free}`;
            return `${move}, take a longer lens, or hide it behind the set or the subject.`;
          },
          about: name,
        },
      ];
    }),
};
