import { existsSync } from "node:fs";
import { visibleLine } from "../diagnostics/print-visible.js";
import { CLEAN } from "./exit.js";
import { misuse, type Session } from "./session.js";

/**
 * Runs a command, and again whenever a file that it read has changed: the recipe, a kit, a photograph. What is wrong is
 * said, and it goes on. Ctrl-C ends it with 0.
 */
export async function watching(
  session: Session,
  action: (session: Session) => Promise<number>,
): Promise<number> {
  const { io, operands, options, command } = session;
  if (operands.includes("-")) return misuse(session, "Standard input comes once: --watch takes files.");
  const output = options.get("output");
  if (command.name !== "report" && (output === undefined || output === "-"))
    return misuse(session, "With --watch the result goes into a file: name it with --output.");
  if (output !== undefined && !options.has("force") && existsSync(output))
    return misuse(
      session,
      `${visibleLine(output)} is there already. With --force it is replaced, now and at every change.`,
    );
  if (io.watcher === undefined) return misuse(session, "Files cannot be watched here.");
  const watcher = io.watcher();
  // What the first run wrote, the next one replaces.
  const again = new Map([...options, ["force", ""]]);
  for (;;) {
    const used = new Map<string, string>();
    const reading = (path: string): void => {
      used.set(path, watcher.stamp(path));
    };
    const exit = await action({ ...session, options: again, reading });
    const [first, ...others] = used.keys();
    if (first === undefined) return exit;
    const more = others.length === 0 ? "" : ` and ${others.length} more`;
    const done = exit === CLEAN && output !== undefined ? `${visibleLine(output)} is written. ` : "";
    io.err(`${done}Waiting for ${visibleLine(first)}${more} to change; Ctrl-C ends.\n`);
    if ((await watcher.change(used)) === "ended") return CLEAN;
  }
}
