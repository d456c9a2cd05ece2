import { renderJson } from "../../render/json.js";
import type { Comparison } from "../../report/compare/compare.js";
import { chosenForm, deliver } from "../output.js";
import type { Session } from "../session.js";
import { type Language, light } from "../stages/load.js";

/** Shows comparisons in the form that is asked for; the exit code. */
export async function deliverComparisons(
  session: Session,
  stage: Language,
  comparisons: readonly Comparison[],
): Promise<number> {
  const views = await light();
  const all = session.options.has("all");
  const view = { width: session.width, paint: session.paint, all };
  const shown = (comparison: Comparison): Comparison =>
    all ? comparison : { ...comparison, light: comparison.light.filter((row) => row.matters) };
  switch (chosenForm(session, "text")) {
    case "json":
      return deliver(session, stage, renderJson({ format: 1, comparisons: comparisons.map(shown) }));
    case "markdown":
      return deliver(
        session,
        stage,
        comparisons.map((row) => views.renderComparisonMarkdown(row, all)).join("\n"),
      );
    case "csv":
      return deliver(session, stage, views.renderComparisonCsv(comparisons, all));
    default:
      return deliver(
        session,
        stage,
        comparisons.map((row) => views.renderComparisonText(row, view)).join("\n"),
      );
  }
}
