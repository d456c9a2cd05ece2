import { CLEAN, TROUBLE } from "../exit.js";
import type { Session } from "../session.js";
import { language } from "../stages/load.js";
import { starter } from "../starter.js";
import { sayProblem } from "../texts.js";

/** `halfshade new [FILE]`: writes a recipe to start from; never over a file that is there. */
export async function newCommand(session: Session): Promise<number> {
  const name = session.operands[0] ?? "setup.light";
  if (name === "-") {
    session.io.out(starter);
    return CLEAN;
  }
  const stage = await language();
  const written = stage.writeSafely(name, Buffer.from(starter, "utf8"), { kind: "create" });
  if (written.outcome === "refused") {
    sayProblem(session, stage, written.problem);
    return TROUBLE;
  }
  session.io.out(`${name}: written. \`halfshade ${name}\` works it out.\n`);
  return CLEAN;
}
