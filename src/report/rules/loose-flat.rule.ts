import type { PartModel } from "../../model/types.js";
import type { Plan } from "../plan.js";
import { list } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

type Flat = Extract<PartModel<"set">, { block: "flat" }>;

/** The flats that are so high that they need a weight. */
function highFlats({ recipe }: Plan): readonly Flat[] {
  const least = threshold(recipe, "loose_height");
  return (recipe.set?.parts ?? []).flatMap((part) =>
    part.block === "flat" && (part.size?.height.value ?? 0) > least + 1e-9 ? [part] : [],
  );
}

const nameOf = ({ name }: Flat): string => name ?? "flat";

/** A high flat may fall. */
export const looseFlat: Rule = {
  code: "loose-flat",
  thresholds: ["loose_height"],
  safety: true,
  page: {
    when: "A flat is higher than `loose_height` (1.8 m) and `secured: no`; where the recipe does not say, it is a note. `weighed_down` and `fixed` are silent.",
    means: "A flat is a sail: a sleeve, a draught or a trodden cable brings it down on somebody.",
    todo: "Bags on the feet of every leaf, also of hinged ones; braces where it is high; nobody behind it.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const flats = highFlats(plan);
    const loose = flats.filter(({ secured }) => secured === "no");
    const open = flats.filter(({ secured }) => secured === undefined);
    const todo = (rows: readonly Flat[]): string =>
      `Put bags on the feet of ${list(rows.map(nameOf))}, every leaf of its own, or fix ${rows.length === 1 ? "it" : "them"}`;
    const found: RuleFinding[] = loose.map((flat) => ({
      severity: "stop",
      message: `${nameOf(flat)} is ${sayLength(flat.size?.height.value ?? 0)} high and stands free: it can fall.`,
      remedy: `${todo([flat])}.`,
      about: nameOf(flat),
    }));
    if (open.length > 0) {
      const names = list(open.map(nameOf));
      found.push({
        severity: "note",
        message: `${names} ${open.length === 1 ? "is" : "are"} higher than ${sayLength(threshold(plan.recipe, "loose_height"))}, and nothing says what keeps ${open.length === 1 ? "it" : "them"} from falling.`,
        remedy: `${todo(open)}, and say \`secured: weighed_down\`.`,
        about: null,
      });
    }
    return found;
  },
};
