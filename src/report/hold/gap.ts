import type { HoldModel } from "../../model/types.js";
import { side } from "../evaluate/claim.js";
import { evaluate } from "../evaluate/expression.js";
import type { Found } from "../evaluate/found.js";
import type { Plan } from "../plan.js";

/** By how much a held result lies above its target, on the scale on which its type is judged. */
export interface Gap {
  readonly by: number | null;
  readonly reason: string | null;
  readonly found: Found;
}

/** How far a set-up is from what is held in it; `from` is the set-up that it comes from. */
export function gapOf(hold: HoldModel, plan: Plan, from: Plan | null): Gap {
  const asked = { plan, alarms: null };
  const found = evaluate(asked, hold.reading);
  const target =
    hold.target !== null
      ? evaluate(asked, hold.target)
      : from === null
        ? found
        : evaluate({ plan: from, alarms: null }, hold.reading);
  return { ...side(asked, found, target), found };
}
