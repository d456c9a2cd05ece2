import type { Plan } from "../plan.js";
import type { ReportCriterion } from "../schema/intent.js";

/** Wishes for the pattern of light on the face and for its side. */
export function faceWishes({ recipe }: Plan): readonly ReportCriterion[] {
  const { intent } = recipe;
  return (["pattern", "side"] as const).flatMap((wish): ReportCriterion[] => {
    const wanted = intent?.[wish];
    if (wanted === undefined) return [];
    return [
      {
        wish,
        name: wish,
        wanted,
        wanted_least: null,
        wanted_most: null,
        found: null,
        value: null,
        unit: "1",
        verdict: "not known",
        reason: "shadows on the face are not worked out",
        remedy: null,
      },
    ];
  });
}
