import { renderJson } from "../../render/json.js";
import { evaluateFile } from "../evaluate-file.js";
import { chosenForm, deliver } from "../output.js";
import { misuse, type Session } from "../session.js";
import { language, light } from "../stages/load.js";
import { exitOf, warningLimit } from "../verdict.js";

/** `halfshade report FILE`: works out a recipe and shows the report in one of its forms. */
export async function reportCommand(session: Session): Promise<number> {
  const limit = warningLimit(session);
  if (typeof limit === "object" && limit !== null) return misuse(session, limit.problem);
  const stage = await language();
  const result = await evaluateFile(session, stage, session.operands[0] ?? "");
  if (result.evaluated === null) return result.exit;
  const { report } = result.evaluated;
  const views = await light();
  const form = chosenForm(session, "text");
  const data =
    form === "json"
      ? renderJson(report)
      : form === "markdown"
        ? views.renderMarkdown(report)
        : form === "csv"
          ? views.renderReportCsv(report)
          : views.renderText(report, { width: session.width, paint: session.paint });
  const delivered = deliver(session, stage, data);
  return Math.max(delivered, exitOf(report, limit));
}
