import type { Source } from "../core/source.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import type { PrintOptions } from "../diagnostics/print.js";
import type { TextOf } from "../diagnostics/print-place.js";
import { near } from "./arguments/near.js";
import type { Session } from "./session.js";
import type { Language } from "./stages/load.js";

/** A text that a command was given, or the finding that says why it cannot be had. */
export type Loaded =
  | { readonly source: Source; readonly bytes: Uint8Array; readonly problem?: never }
  | { readonly source?: never; readonly problem: Diagnostic };

/** Reads a file, or standard input for `-`. */
export async function loadText(session: Session, language: Language, name: string): Promise<Loaded> {
  if (name !== "-") session.reading?.(name);
  const read = name === "-" ? await language.readStream(session.io.input()) : language.readTextFile(name);
  if (read.problem !== undefined) return { problem: withNearFiles(language, name, read.problem) };
  const shown = name === "-" ? language.STANDARD_INPUT : name;
  return { source: { name: shown, text: read.text }, bytes: read.bytes };
}

/** A file that is not there, with the names in that folder that are near. */
function withNearFiles(language: Language, name: string, problem: Diagnostic): Diagnostic {
  if (problem.code !== "file.not-found") return problem;
  const [folder, written] = language.folderOf(name);
  const known = language.filesIn(folder).filter((file) => file.endsWith(".light"));
  const found = near(written, known).trim();
  return found === "" ? problem : { ...problem, help: `${found} Or ${problem.help}` };
}

/** Looks up texts by the names of their sources. */
export const textsOf =
  (sources: readonly Source[]): TextOf =>
  (file) =>
    sources.find((source) => source.name === file)?.text ?? null;

/** How findings are printed as data, and as words to the person at the terminal. */
export function printOptions(
  session: Session,
  sources: readonly Source[],
  where: "out" | "err",
): PrintOptions {
  return {
    textOf: textsOf(sources),
    width: session.width,
    paint: where === "out" ? session.paint : session.paintErr,
  };
}

/** Says a finding about a file as a whole. */
export function sayProblem(session: Session, language: Language, problem: Diagnostic): void {
  session.io.err(language.printDiagnostic(problem, printOptions(session, [], "err")));
}
