import { compile } from "../../src/compile.js";
import { sentence } from "../../src/diagnostics/create.js";
import { judgeSetUps } from "../../src/set-ups.js";
import { withOurKits } from "../helpers/kits.js";
import type { Fence } from "./fences.js";

/** Blocks that a fragment leans on, added where it has none of its own. */
const COMPANIONS: readonly (readonly [kind: string, text: string])[] = [
  ["subject", "subject { }"],
  [
    "light",
    "light key { shape: disc(18 cm), output: 500 lm s, distance: 2 m, bearing: left(30 deg), elevation: 30 deg }",
  ],
  [
    "camera",
    "camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }",
  ],
];

/**
 * The whole recipe behind an example: itself where it starts with the language's name; else a fragment, put inside
 * the blocks that the mark `inside` names, with the blocks it leans on.
 */
export function wholeRecipe(fence: Fence): string {
  const { text, marks } = fence;
  if (text.startsWith("halfshade ") || marks.has("error")) return text;
  const inside = marks.get("inside")?.split(" in ") ?? [];
  const own = inside.reduce((body, head) => `${head} {\n${body}}\n`, text);
  const has = (kind: string): boolean => new RegExp(`^(?:define )?${kind}\\b`, "m").test(own);
  const companions = COMPANIONS.filter(([kind]) => !has(kind)).map(([, block]) => `${block}\n`);
  return `halfshade 1\nrecipe "An example"\n${own}${companions.join("")}`;
}

/** What the program says to an example. */
export interface Said {
  /** What it finds wrong, each as a line with its code. */
  readonly findings: readonly { readonly code: string; readonly line: string }[];
  /** Expectations that do not hold, each with what was found. */
  readonly open: readonly string[];
}

/** Checks an example, with its light. */
export function saidOf(fence: Fence): Said {
  const source = { name: "example.light", text: wholeRecipe(fence) };
  const { diagnostics, sound, recipe } = compile(source, withOurKits);
  const whole = sound && recipe?.kind === "recipe";
  const [judged] = whole ? judgeSetUps(recipe, { source, titles: [] }) : [];
  return {
    findings: [...diagnostics, ...(judged?.diagnostics ?? [])]
      .filter((finding) => finding.severity === "error" || fence.marks.has("error"))
      .map((finding) => ({ code: finding.code, line: `${finding.code}: ${sentence(finding)}` })),
    open: (judged?.expectations ?? [])
      .filter((item) => item.outcome !== "passed")
      .map((item) => `${item.outcome}: ${item.text}: ${item.found}`),
  };
}
