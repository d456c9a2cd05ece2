/** All that computes light or shows a report. Loaded by the commands that need it and by no other. */
export { evaluate } from "../../pipeline.js";
export { renderMarkdown } from "../../render/markdown.js";
export { renderReportCsv } from "../../render/report-csv.js";
export { renderText } from "../../render/text.js";
export { expectationLines, warningLines } from "../../render/text-verdicts.js";
export { warningPages } from "../../report/rules/explain.js";
export { sceneToJson } from "../../scene/export.js";
export { pagesOfWarnings } from "../check/warning-pages.js";
