import { evaluateChosen } from "../evaluate-file.js";
import { deliver } from "../output.js";
import type { Session } from "../session.js";
import { draw, language } from "../stages/load.js";

/** `halfshade sheet FILE`: makes the sheet for the day as a page of HTML. */
export async function sheetCommand(session: Session): Promise<number> {
  const stage = await language();
  const [file = ""] = session.operands;
  const result = await evaluateChosen(session, stage, file);
  if (result.setUp === null) return result.exit;
  const { daySheet, renderSheet } = await draw();
  const paper = session.options.get("paper") === "letter" ? "letter" : "a4";
  return deliver(session, stage, renderSheet(daySheet(result.setUp), paper), [file]);
}
