import { evaluateChosen } from "../evaluate-file.js";
import { chosenForm, deliver } from "../output.js";
import { misuse, type Session } from "../session.js";
import { draw, language } from "../stages/load.js";

/** `halfshade sheet FILE`: makes the sheet for the day as a page of HTML or PDF. */
export async function sheetCommand(session: Session): Promise<number> {
  const form = chosenForm(session, "html");
  const output = session.options.get("output");
  if (form === "pdf" && (output === undefined || output === "-"))
    return misuse(session, "A PDF goes into a file: halfshade sheet plan.light -o sheet.pdf");
  const stage = await language();
  const [file = ""] = session.operands;
  const result = await evaluateChosen(session, stage, file);
  if (result.setUp === null) return result.exit;
  const { daySheet, pdfMaker, renderSheet, sheetPages } = await draw();
  const paper = session.options.get("paper") === "letter" ? "letter" : "a4";
  const sheet = daySheet(result.setUp);
  if (form !== "pdf") return deliver(session, stage, renderSheet(sheet, paper), [file]);
  const maker = pdfMaker();
  if ("problem" in maker) return misuse(session, maker.problem);
  const bytes = await maker.write(sheetPages(sheet, paper, maker), `${sheet.title}: sheet for the day`);
  return deliver(session, stage, bytes, [file]);
}
