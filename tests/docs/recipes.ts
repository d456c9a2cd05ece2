import { sentence } from "../../src/diagnostics/create.js";
import { run } from "../../src/pipeline.js";
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

/** What the program finds wrong in an example, each as a line with its code. */
export function findingsOf(fence: Fence): readonly { readonly code: string; readonly line: string }[] {
  const source = { name: "example.light", text: wholeRecipe(fence) };
  return run(source, withOurKits)
    .diagnostics.filter((finding) => finding.severity === "error" || fence.marks.has("error"))
    .map((finding) => ({ code: finding.code, line: `${finding.code}: ${sentence(finding)}` }));
}

/** Expectations of an example that do not hold, each with what was found. */
export function openExpectations(fence: Fence): readonly string[] {
  const { evaluated } = run({ name: "example.light", text: wholeRecipe(fence) }, withOurKits);
  return (evaluated?.report.expectations ?? [])
    .filter((item) => item.outcome !== "passed")
    .map((item) => `${item.outcome}: ${item.text}: ${item.found}`);
}
