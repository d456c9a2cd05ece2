import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { visibleLine } from "../diagnostics/print-visible.js";
import type { SessionModel } from "../model/session.js";
import type { SetUp } from "../set-ups.js";
import { near } from "./arguments/near.js";
import { CLEAN, FOUND, TROUBLE } from "./exit.js";
import { kitsOf } from "./kits.js";
import { misuse, type Session } from "./session.js";
import { type Language, light } from "./stages/load.js";
import { loadText, printOptions, sayProblem } from "./texts.js";

/** Set-ups worked out, or the exit code when they could not be; what is wrong has been said then. */
export type Evaluation =
  | { readonly name: string; readonly setUps: readonly [SetUp, ...SetUp[]]; readonly exit: number }
  | { readonly setUps: null; readonly exit: number; readonly day?: SessionModel };

/** What to work out of a file. */
export interface Wanted {
  /** Titles of variants; null for all. */
  readonly titles?: readonly string[] | null;
  /** Whether the recipe itself is turned to what it holds. */
  readonly holdRecipe?: boolean;
  /** True where a kit, or a session that is not worked out, is no mistake, since it only lies among recipes. */
  readonly passOver?: boolean;
  /** True where a session is handed on to be worked out as one. */
  readonly days?: boolean;
}

/** Reads, checks and works out one recipe and some of its variants; findings are said on standard error. */
export async function evaluateFile(
  session: Session,
  language: Language,
  name: string,
  wanted: Wanted = {},
): Promise<Evaluation> {
  const failed = (exit: number): Evaluation => ({ setUps: null, exit });
  const loaded = await loadText(session, language, name);
  if (loaded.problem !== undefined) {
    sayProblem(session, language, loaded.problem);
    return failed(TROUBLE);
  }
  const { source } = loaded;
  const compiled = language.compile(source, kitsOf(session, language, name));
  const say = (all: readonly Diagnostic[]): void => {
    const findings = all.filter(isForAnswer);
    if (findings.length === 0) return;
    session.io.err(language.printDiagnostics(findings, printOptions(session, compiled.sources, "err")));
  };
  const { recipe } = compiled;
  if (!compiled.sound || recipe === null) {
    say(compiled.diagnostics);
    return failed(FOUND);
  }
  if (recipe.kind !== "recipe") {
    const day = wanted.days === true ? compiled.session : null;
    if (wanted.passOver === true && day === null) return failed(CLEAN);
    say(compiled.diagnostics);
    if (day !== null) return { setUps: null, day, exit: CLEAN };
    const what = recipe.kind === "kit" ? "a kit: it holds definitions" : "a session: it holds measurements";
    return failed(misuse(session, `${source.name} is ${what}, and there is nothing to work out.`));
  }
  const known = recipe.variants.map((variant) => variant.title);
  const titles = wanted.titles === null ? known : (wanted.titles ?? []);
  const missing = titles.find((title) => !known.includes(title));
  if (missing !== undefined) {
    say(compiled.diagnostics);
    const have = known.length === 0 ? " It has none." : ` It has ${known.map(quoted).join(", ")}.`;
    const help = near(missing, known) || have;
    return failed(misuse(session, `${source.name} has no variant ${quoted(missing)}.${visibleLine(help)}`));
  }
  const { evaluateSetUps } = await light();
  const holdRecipe = wanted.holdRecipe ?? false;
  const [first, ...rest] = evaluateSetUps(recipe, { source, titles, holdRecipe });
  if (first === undefined) return failed(TROUBLE);
  const found = findingsOf([first, ...rest]);
  say([...compiled.diagnostics, ...found]);
  if (found.some((finding) => finding.severity === "error")) return failed(FOUND);
  return { name: source.name, setUps: [first, ...rest], exit: CLEAN };
}

/** The set-up that `--variant` names, else the recipe itself. */
export async function evaluateChosen(
  session: Session,
  language: Language,
  name: string,
  { passOver = false, days = false }: Pick<Wanted, "passOver" | "days"> = {},
): Promise<{ readonly setUp: SetUp | null; readonly day: SessionModel | null; readonly exit: number }> {
  const title = session.options.get("variant");
  const titles = title === undefined ? [] : [title];
  const found = await evaluateFile(session, language, name, { titles, passOver, days });
  const setUp = found.setUps?.find((row) => row.variant === (title ?? null)) ?? null;
  return { setUp, day: found.setUps === null ? (found.day ?? null) : null, exit: found.exit };
}

const quoted = (text: string): string => `"${visibleLine(text)}"`;

/** What is said beside an answer: that a variant expects nothing is for `check` to say. */
export const isForAnswer = ({ code }: Diagnostic): boolean => code !== "variant.unchecked";

/** What could not be built of several set-ups; what they share is said once. */
export function findingsOf(setUps: readonly Pick<SetUp, "diagnostics">[]): readonly Diagnostic[] {
  const said = new Set<string>();
  return setUps
    .flatMap((setUp) => setUp.diagnostics)
    .filter(({ code, place }) => {
      const key = `${code} ${place.file} ${place.start} ${place.end}`;
      return !said.has(key) && said.add(key);
    });
}
