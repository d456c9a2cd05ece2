import type { Diagnostic } from "../diagnostics/diagnostic.js";
import type { Evaluated } from "../pipeline.js";
import { CLEAN, FOUND, TROUBLE } from "./exit.js";
import { kitsOf } from "./kits.js";
import { misuse, type Session } from "./session.js";
import { type Language, light } from "./stages/load.js";
import { loadText, printOptions, sayProblem } from "./texts.js";

/** A recipe worked out, or the exit code when it could not be; what is wrong has been said then. */
export type Evaluation =
  | { readonly evaluated: Evaluated; readonly exit: number }
  | { readonly evaluated: null; readonly exit: number };

/**
 * Reads, checks and works out one recipe; findings are said on standard error.
 * @param passOver - True where a kit or a session is no mistake, since it only lies among recipes.
 */
export async function evaluateFile(
  session: Session,
  language: Language,
  name: string,
  passOver = false,
): Promise<Evaluation> {
  const loaded = await loadText(session, language, name);
  if (loaded.problem !== undefined) {
    sayProblem(session, language, loaded.problem);
    return { evaluated: null, exit: TROUBLE };
  }
  const { source } = loaded;
  const compiled = language.compile(source, kitsOf(session, language, name));
  const say = (findings: readonly Diagnostic[]): void => {
    if (findings.length === 0) return;
    session.io.err(language.printDiagnostics(findings, printOptions(session, compiled.sources, "err")));
  };
  if (!compiled.sound || compiled.recipe === null) {
    say(compiled.diagnostics);
    return { evaluated: null, exit: FOUND };
  }
  if (compiled.recipe.kind !== "recipe") {
    if (passOver) return { evaluated: null, exit: CLEAN };
    say(compiled.diagnostics);
    const what =
      compiled.recipe.kind === "kit" ? "a kit: it holds definitions" : "a session: it holds measurements";
    return {
      evaluated: null,
      exit: misuse(session, `${source.name} is ${what}, and there is nothing to work out.`),
    };
  }
  const { evaluate } = await light();
  const evaluated = evaluate(compiled.recipe, source);
  say([...compiled.diagnostics, ...evaluated.diagnostics]);
  const broken = evaluated.diagnostics.some((finding) => finding.severity === "error");
  return broken ? { evaluated: null, exit: FOUND } : { evaluated, exit: CLEAN };
}
