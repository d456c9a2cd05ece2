import { realpathSync } from "node:fs";
import { extname, resolve } from "node:path";
import { CLEAN, TROUBLE } from "./exit.js";
import { misuse, type Session } from "./session.js";
import type { Language } from "./stages/load.js";
import { sayProblem } from "./texts.js";

const byEnding: ReadonlyMap<string, string> = new Map([
  [".json", "json"],
  [".md", "markdown"],
  [".csv", "csv"],
  [".html", "html"],
  [".txt", "text"],
  [".svg", "svg"],
  [".png", "png"],
  [".pdf", "pdf"],
]);

/** The form to write: what `--format` says, else what the ending of `--output` says, else the command's usual one. */
export function chosenForm(session: Session, usual: string): string {
  const said = session.options.get("format");
  if (said !== undefined) return said;
  const file = session.options.get("output");
  return (file === undefined ? undefined : byEnding.get(extname(file).toLowerCase())) ?? usual;
}

/** Endings of pictures and pages that no command makes. */
const others: readonly string[] = [".jpg", ".jpeg", ".gif", ".webp", ".tif", ".tiff", ".docx", ".xlsx"];

/** A sentence where the ending of `--output` asks for a form that the command does not make; null where it does not. */
export function wrongEnding({ options, command }: Pick<Session, "options" | "command">): string | null {
  const file = options.get("output");
  const words = command.options.find(({ name }) => name === "format")?.words;
  if (file === undefined || words === undefined || options.has("format")) return null;
  const ending = extname(file).toLowerCase();
  const form = byEnding.get(ending);
  if (form === undefined ? !others.includes(ending) : words.includes(form)) return null;
  return `\`${command.name}\` makes ${words.join(", ")}, and no ${ending} file. Give the file another ending, or say --format.`;
}

/** The same file, whatever way it is named. */
function isSameFile(a: string, b: string): boolean {
  try {
    return realpathSync(a) === realpathSync(b);
  } catch {
    return resolve(a) === resolve(b);
  }
}

/**
 * Puts data where it is wanted: into the file of `--output`, else to standard output. The exit code.
 * @param files - What the data was made from, and may not be written over.
 */
export function deliver(
  session: Session,
  language: Language,
  data: string | Uint8Array,
  files: readonly string[] = session.operands,
): number {
  const file = session.options.get("output");
  if (typeof data === "string" && (file === undefined || file === "-")) {
    session.io.out(data);
    return CLEAN;
  }
  if (file === undefined) return misuse(session, "A picture goes into a file: name it with --output.");
  if (files.some((operand) => operand !== "-" && isSameFile(operand, file))) {
    return misuse(session, "--output names the recipe itself; it would be lost.");
  }
  const kind = session.options.has("force") ? "replace" : "create";
  const written = language.writeSafely(file, typeof data === "string" ? Buffer.from(data, "utf8") : data, {
    kind,
  });
  if (written.outcome !== "refused") return CLEAN;
  sayProblem(session, language, written.problem);
  if (written.problem.code === "file.exists") session.io.err("    With --force it is replaced.\n");
  return TROUBLE;
}
