import { renderJson } from "../../render/json.js";
import { evaluateChosen } from "../evaluate-file.js";
import { deliver } from "../output.js";
import type { Session } from "../session.js";
import { language, light } from "../stages/load.js";

/** `halfshade scene FILE`: gives out the set-up in metres as JSON. */
export async function sceneCommand(session: Session): Promise<number> {
  const stage = await language();
  const result = await evaluateChosen(session, stage, session.operands[0] ?? "");
  if (result.setUp === null) return result.exit;
  const { sceneToJson } = await light();
  return deliver(session, stage, renderJson(sceneToJson(result.setUp.scene)));
}
