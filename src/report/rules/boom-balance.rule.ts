import { lampName } from "../../scene/lit/seen.js";
import type { Stand } from "../../scene/types.js";
import { ceilTo } from "../say/number.js";
import { sayLength, sayMass } from "../say/quantity.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The counterweight that holds a head on its arm, kg, by the law of the lever; 0 where there is no tail to hang it on. */
export const counterweightFor = ({ head, boom, tail }: Stand): number =>
  boom !== null && tail > 0 ? (head * boom) / tail : 0;

/** A boom is heavier at the lamp than at its short end. */
export const boomBalance: Rule = {
  code: "boom-balance",
  thresholds: [],
  safety: true,
  page: {
    when: "The recipe names a boom, and mass of the head times length of the arm is more than mass of the counterweight times length of the short end. The boom's own mass is left out.",
    means: "The boom is nose-heavy: when the clamp slips, the lamp comes down.",
    todo: "Enough counterweight, a second line on lamp and modifier, and nobody beneath while it is moved.",
    source: "Law of the lever.",
  },
  check: ({ scene }) =>
    scene.sources.flatMap((source): RuleFinding[] => {
      const { stand } = source;
      if (stand === null || stand.boom === null || !(stand.tail > 0)) return [];
      const needed = counterweightFor(stand);
      if (stand.counterweight >= needed - 1e-9) return [];
      return [
        {
          severity: "stop",
          message: `The boom of ${lampName(source)} is nose-heavy: ${sayMass(stand.head)} at ${sayLength(stand.boom)} against ${sayMass(stand.counterweight)} at ${sayLength(stand.tail)}.`,
          remedy: `Hang a counterweight of ${sayMass(ceilTo(needed, 0.5))} on the short end; a second line on the lamp, and nobody beneath while it is moved.`,
          about: lampName(source),
        },
      ];
    }),
};
