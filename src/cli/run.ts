import { visibleLine } from "../diagnostics/print-visible.js";
import { systemWords } from "../node/system-words.js";
import { commandHelp, generalHelp } from "./arguments/help.js";
import { near } from "./arguments/near.js";
import { parseArguments } from "./arguments/parse.js";
import { commands, findCommand } from "./arguments/table.js";
import { paintFor } from "./colour.js";
import { calcCommand } from "./commands/calc.js";
import { checkCommand } from "./commands/check.js";
import { compareCommand } from "./commands/compare.js";
import { diffCommand } from "./commands/diff.js";
import { drawCommand } from "./commands/draw.js";
import { explainCommand } from "./commands/explain.js";
import { formatCommand } from "./commands/format.js";
import { newCommand } from "./commands/new.js";
import { previewCommand } from "./commands/preview.js";
import { refreshCommand } from "./commands/refresh.js";
import { reportCommand } from "./commands/report.js";
import { sceneCommand } from "./commands/scene.js";
import { sheetCommand } from "./commands/sheet.js";
import { showCommand } from "./commands/show.js";
import { tableCommand } from "./commands/table.js";
import { wordsCommand } from "./commands/words.js";
import { CLEAN, TROUBLE } from "./exit.js";
import { rootProblem } from "./kits.js";
import type { Machine } from "./machine.js";
import { wrongEnding } from "./output.js";
import { misuse, type Session, wholeNumber } from "./session.js";
import { version } from "./version.js";
import { watching } from "./watch.js";

const MOST_WIDTH = 1000;
const USUAL_WIDTH = 80;

const actions: ReadonlyMap<string, (session: Session) => Promise<number>> = new Map([
  ["report", reportCommand],
  ["table", tableCommand],
  ["check", checkCommand],
  ["compare", compareCommand],
  ["diff", diffCommand],
  ["draw", drawCommand],
  ["sheet", sheetCommand],
  ["preview", previewCommand],
  ["format", formatCommand],
  ["refresh", refreshCommand],
  ["scene", sceneCommand],
  ["calc", calcCommand],
  ["words", wordsCommand],
  ["explain", explainCommand],
  ["new", newCommand],
  ["show", showCommand],
  ["help", helpCommand],
]);

async function helpCommand(session: Session): Promise<number> {
  const name = session.operands[0];
  if (name === undefined) {
    session.io.out(generalHelp(session.width));
    return CLEAN;
  }
  const command = findCommand(name);
  if (command === undefined) {
    const names = commands.map((row) => row.name);
    return misuse(session, `There is no command "${visibleLine(name)}".${near(name, names)}`);
  }
  session.io.out(commandHelp(command, session.width));
  return CLEAN;
}

async function start(args: readonly string[], io: Machine): Promise<number> {
  if (args.length === 0) {
    io.err(generalHelp(USUAL_WIDTH));
    return TROUBLE;
  }
  if (args.includes("--version") && args.every((arg) => arg.startsWith("-"))) {
    io.out(`${version}\n`);
    return CLEAN;
  }
  const { parsed, problem, ...rest } = parseArguments(args);
  if (parsed === undefined) {
    const more = "command" in rest && rest.command !== null ? `help ${rest.command.name}` : "help";
    return misuse({ io }, `${visibleLine(problem ?? "")}\n\`halfshade ${more}\` says more.`);
  }
  const width = wholeNumber(parsed.options, "width", 40, MOST_WIDTH);
  if (width !== null && typeof width !== "number") return misuse({ io }, width.problem);
  const when = parsed.options.get("color") ?? "auto";
  const session: Session = {
    ...parsed,
    io,
    width: width ?? Math.min(100, Math.max(40, io.columns() ?? USUAL_WIDTH)),
    paint: paintFor(when, io, io.outIsTerminal && !parsed.options.has("output")),
    paintErr: paintFor(when, io, io.errIsTerminal),
  };
  if (parsed.options.has("help") && parsed.command.name !== "help") {
    io.out(commandHelp(parsed.command, session.width));
    return CLEAN;
  }
  const ending = wrongEnding(session);
  if (ending !== null) return misuse({ io }, visibleLine(ending));
  const wrongRoot = rootProblem(parsed.options.get("root"));
  if (wrongRoot !== null) return misuse({ io }, wrongRoot);
  const action = actions.get(parsed.command.name);
  if (action === undefined) return TROUBLE;
  return parsed.options.has("watch") ? await watching(session, action) : await action(session);
}

/** What the system says of an output that it did not take; null for any other error. */
function outputProblem(error: unknown): string | null {
  if (!(error instanceof Error) || !("code" in error) || !("syscall" in error)) return null;
  if (error.syscall !== "write" || typeof error.code !== "string") return null;
  return systemWords(error.code);
}

/** Runs the program with the arguments behind its name; the exit code. A fault of our own becomes one sentence. */
export async function run(args: readonly string[], io: Machine): Promise<number> {
  try {
    return await start(args, io);
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    const unwritten = outputProblem(error);
    if (unwritten !== null) {
      io.err(`The output could not be written: ${unwritten}.\n`);
      return TROUBLE;
    }
    io.err(
      `This is a mistake of halfshade itself, not of your file; please report it: ${visibleLine(what)}\n`,
    );
    const debug = io.env("HALFSHADE_DEBUG");
    if (debug !== undefined && debug !== "" && error instanceof Error) io.err(`${error.stack ?? ""}\n`);
    return TROUBLE;
  }
}
