import { CLEAN, FOUND, TROUBLE } from "../exit.js";
import { misuse, type Session } from "../session.js";
import { type Language, language } from "../stages/load.js";
import { type Loaded, loadText, printOptions, sayProblem } from "../texts.js";

type Text = Extract<Loaded, { readonly bytes: Uint8Array }>;

/** One file in its usual form; an exit code where there is none, which has been said then. */
function formatted(session: Session, stage: Language, loaded: Text): string | number {
  const { source } = loaded;
  const result = stage.formatText(source, { canonicalUnit: stage.canonicalUnit });
  if (result.text !== null) return result.text;
  if (result.fault) {
    session.io.err(
      `${source.name}: left as it is. Its usual form would not mean the same; this is a mistake of halfshade itself, please report it.\n`,
    );
    return TROUBLE;
  }
  session.io.err(stage.printDiagnostics(result.diagnostics, printOptions(session, [source], "err")));
  session.io.err(`${source.name}: left as it is.\n`);
  return FOUND;
}

/** Writes a changed file back; the exit code. */
function writeBack(session: Session, stage: Language, loaded: Text, text: string): number {
  const { name } = loaded.source;
  if (text === loaded.source.text) return CLEAN;
  const written = stage.writeSafely(name, Buffer.from(text, "utf8"), { kind: "edit", before: loaded.bytes });
  if (written.outcome === "refused") {
    sayProblem(session, stage, written.problem);
    return TROUBLE;
  }
  session.io.out(`${name}: written.\n`);
  return CLEAN;
}

/** `halfshade format FILE...`: the usual form to standard output, into the files, or only compared. */
export async function formatCommand(session: Session): Promise<number> {
  const write = session.options.has("write");
  const check = session.options.has("check");
  if (write && check) return misuse(session, "--check changes nothing and --write does: give one of them.");
  if (write && session.operands.includes("-"))
    return misuse(session, "Standard input cannot be written back; leave --write away.");
  const stage = await language();
  const book = stage.filesOf(session.operands);
  if (book.problem !== undefined) return misuse(session, book.problem);
  let exit = CLEAN;
  const ready: { readonly loaded: Text; readonly text: string }[] = [];
  for (const name of book.files) {
    const loaded = await loadText(session, stage, name);
    if (loaded.problem !== undefined) {
      sayProblem(session, stage, loaded.problem);
      exit = TROUBLE;
      continue;
    }
    const text = formatted(session, stage, loaded);
    if (typeof text === "number") exit = Math.max(exit, text);
    else ready.push({ loaded, text });
  }
  for (const { loaded, text } of ready) {
    if (write) exit = Math.max(exit, writeBack(session, stage, loaded, text));
    else if (!check) session.io.out(text);
    else if (text !== loaded.source.text) {
      session.io.out(`${loaded.source.name}: not in its usual form.\n`);
      exit = Math.max(exit, FOUND);
    }
  }
  return exit;
}
