import type { Plan } from "../plan.js";
import { crossingNoses } from "../rules/crossing-noses.rule.js";
import type { KeyLight } from "../rules/key-light.js";
import { secondShadows } from "../rules/two-suns.rule.js";
import { fixed } from "../say/number.js";
import type { ReportCriterion } from "../schema/intent.js";
import { criterion } from "./criterion.js";

/** One shadow only: how many lights throw one that is seen as its own. */
export function oneShadow(plan: Plan, key: KeyLight): ReportCriterion {
  const second = secondShadows(plan, key);
  // A nose with two shadows has two, whatever the disc that looks at the key sees of the other light.
  const others = second.length > 0 ? second : crossingNoses.check(plan);
  const one = { low: null, high: 1 };
  return criterion({
    wish: "pass_for",
    name: "shadows",
    value: 1 + others.length,
    unit: "1",
    wanted: one,
    still: one,
    say: (count) => fixed(count, 0),
    remedy: () => others[0]?.remedy ?? null,
  });
}
