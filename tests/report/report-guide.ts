import { run } from "../../src/pipeline.js";
import { type Fence, fencesOf } from "../docs/fences.js";

/** Numbers of a value rounded to six figures, as the guide shows them. */
function rounded(value: unknown): unknown {
  if (typeof value === "number") return Number(value.toPrecision(6));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, rounded(item)]));
}

/** A part of a report by its path: `lights[0]`. */
function part(report: object, path: string): unknown {
  const match = /^(\w+)(?:\[(\d+)\])?$/.exec(path);
  const whole = (report as Record<string, unknown>)[match?.[1] ?? ""];
  return match?.[2] === undefined ? whole : (whole as unknown[])[Number(match[2])];
}

function fill(report: object, fence: Fence): string {
  const paths = (fence.marks.get("report") ?? "").split(" ");
  const values = paths.map((path) => rounded(part(report, path)));
  const whole =
    paths.length === 1
      ? values[0]
      : paths[0]?.includes("[")
        ? values
        : Object.fromEntries(paths.map((path, i) => [path, values[i]]));
  return `${JSON.stringify(whole, null, 2)}\n`;
}

/** The guide with every cut of the report made anew from its own recipe. */
export function withReport(page: string): string {
  const fences = fencesOf(page);
  const recipe = fences.find((fence) => fence.marks.has("report-recipe"));
  if (recipe === undefined) throw new Error("the guide has no recipe");
  const outcome = run({ name: "guide.light", text: recipe.text });
  if (outcome.evaluated === null) throw new Error(JSON.stringify(outcome.diagnostics));
  const { report } = outcome.evaluated;
  let made = "";
  let at = 0;
  for (const fence of fences.filter((row) => row.marks.has("report"))) {
    made += page.slice(at, fence.start) + fill(report, fence);
    at = fence.end;
  }
  return made + page.slice(at);
}
