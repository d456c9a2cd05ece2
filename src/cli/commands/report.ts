import { renderJson } from "../../render/json.js";
import type { Report } from "../../report/schema/report.js";
import type { SessionReport } from "../../report/schema/session.js";
import { evaluateChosen } from "../evaluate-file.js";
import { CLEAN } from "../exit.js";
import { chosenForm, deliver } from "../output.js";
import { misuse, type Session } from "../session.js";
import { type Light, language, light } from "../stages/load.js";
import { exitOf, warningLimit } from "../verdict.js";

/** A report of a book, or a day of it, with the file it is about. */
type Named =
  | { readonly name: string; readonly report: Report; readonly session?: never }
  | { readonly name: string; readonly report?: never; readonly session: SessionReport };

/** One report in the form that is wanted. */
function oneReport(session: Session, views: Light, report: Report, form: string): string {
  switch (form) {
    case "json":
      return renderJson(report);
    case "markdown":
      return views.renderMarkdown(report);
    case "csv":
      return views.renderReportCsv(report);
    default:
      return views.renderText(report, {
        width: session.width,
        paint: session.paint,
        brief: session.options.has("brief"),
      });
  }
}

/** A session in the form that is wanted. */
function oneDay(session: Session, views: Light, report: SessionReport, form: string): string {
  switch (form) {
    case "json":
      return renderJson(report);
    case "markdown":
      return views.renderSessionMarkdown(report);
    case "csv":
      return views.renderSessionCsv(report);
    default:
      return views.renderSessionText(report, {
        width: session.width,
        paint: session.paint,
        brief: session.options.has("brief"),
      });
  }
}

/** What came of one file in the form that is wanted. */
const one = (session: Session, views: Light, { report, session: day }: Named, form: string): string =>
  report === undefined ? oneDay(session, views, day, form) : oneReport(session, views, report, form);

/** Several reports: one after another, or as lists in JSON. */
function allReports(session: Session, views: Light, all: readonly Named[], form: string): string {
  if (form !== "json") return all.map((named) => one(session, views, named, form)).join("\n");
  const sessions = all.filter((named) => named.session !== undefined);
  return renderJson({
    format: 1,
    reports: all.filter((named) => named.report !== undefined),
    ...(sessions.length === 0 ? {} : { sessions }),
  });
}

/** `halfshade report FILE...`: works out recipes and shows their reports in one of the forms. */
export async function reportCommand(session: Session): Promise<number> {
  const limit = warningLimit(session);
  if (typeof limit === "object" && limit !== null) return misuse(session, limit.problem);
  const stage = await language();
  const book = stage.filesOf(session.operands);
  if (book.problem !== undefined) return misuse(session, book.problem);
  const { files, gathered } = book;
  const several = gathered || files.length > 1;
  const form = chosenForm(session, "text");
  if (session.options.has("brief") && form !== "text")
    return misuse(session, "--brief is of the text form: the others hold the whole report.");
  if (several && form === "csv")
    return misuse(session, "A table in CSV is of one file; several go into json, markdown or text.");
  const all: Named[] = [];
  let exit = CLEAN;
  for (const name of files) {
    const result = await evaluateChosen(session, stage, name, { passOver: gathered, days: true });
    exit = Math.max(exit, result.exit);
    if (result.day !== null) {
      const views = await light();
      all.push({ name, session: views.evaluateSession(result.day) });
    }
    if (result.setUp === null) continue;
    const { report } = result.setUp;
    all.push({ name, report });
    exit = Math.max(exit, exitOf(report, limit));
  }
  const [first] = all;
  if (first === undefined) {
    if (exit === CLEAN) return misuse(session, "There are kits only, and nothing to work out.");
    return exit;
  }
  const views = await light();
  const data = several ? allReports(session, views, all, form) : one(session, views, first, form);
  return Math.max(deliver(session, stage, data, files), exit);
}
