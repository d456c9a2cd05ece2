/** All that computes light or shows a report. Loaded by the commands that need it and by no other. */
export { differences } from "../../model/differences.js";
export { evaluate, tablesOf } from "../../pipeline.js";
export {
  renderComparisonCsv,
  renderComparisonMarkdown,
  renderComparisonText,
} from "../../render/comparison.js";
export { renderMarkdown } from "../../render/markdown.js";
export { renderReportCsv } from "../../render/report-csv.js";
export { renderSessionCsv, renderSessionMarkdown, renderSessionText } from "../../render/session.js";
export { inForm } from "../../render/tables/form.js";
export { tablesJson } from "../../render/tables/json.js";
export { renderText } from "../../render/text.js";
export { expectationLines, warningLines } from "../../render/text-verdicts.js";
export { compare } from "../../report/compare/compare.js";
export { warningPages } from "../../report/rules/explain.js";
export { sceneToJson } from "../../scene/export.js";
export { evaluateSession, evaluateSetUps, judgeSetUps } from "../../set-ups.js";
export { answersOf, withBlank, worksheetOf } from "../../tables/worksheet.js";
export { pagesOfWarnings } from "../check/warning-pages.js";
