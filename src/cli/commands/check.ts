import type { CompileOptions } from "../../compile.js";
import type { Source } from "../../core/source.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { renderJson } from "../../render/json.js";
import { defaultView } from "../../render/report-lines.js";
import type { Report } from "../../report/schema/report.js";
import { many } from "../counts.js";
import { CLEAN, FOUND, TROUBLE } from "../exit.js";
import { kitsOf } from "../kits.js";
import { misuse, type Session } from "../session.js";
import { type Language, type Light, language, light } from "../stages/load.js";
import { loadText, printOptions, sayProblem, textsOf } from "../texts.js";
import { exitOf, warningCount, warningLimit } from "../verdict.js";

/** What a check of one file came to. */
interface Checked {
  readonly source: Source;
  /** The file and the kits it uses. */
  readonly sources: readonly Source[];
  readonly findings: readonly Diagnostic[];
  /** Null where no light was worked out. */
  readonly report: Report | null;
  readonly kind: string | null;
}

function checkText(source: Source, stage: Language, views: Light | null, kits: CompileOptions): Checked {
  const compiled = stage.compile(source, kits);
  const { sources } = compiled;
  const kind = compiled.recipe?.kind ?? null;
  if (views === null || !compiled.sound || compiled.recipe === null || kind !== "recipe") {
    return { source, sources, findings: compiled.diagnostics, report: null, kind };
  }
  const { report, diagnostics } = views.evaluate(compiled.recipe, source);
  const broken = diagnostics.some((finding) => finding.severity === "error");
  return {
    source,
    sources,
    findings: [...compiled.diagnostics, ...diagnostics],
    report: broken ? null : report,
    kind,
  };
}

const errorsIn = (checked: Checked): number =>
  checked.findings.filter((item) => item.severity === "error").length;

/** One line on a file: what is wrong with it, in numbers. */
function summary(checked: Checked): string {
  const errors = errorsIn(checked);
  const notes = checked.findings.length - errors;
  const parts = errors === 0 ? ["no errors"] : [many(errors, "error")];
  if (notes > 0) parts.push(many(notes, "note"));
  if (checked.report !== null) {
    const { expectations } = checked.report;
    const passed = expectations.filter((item) => item.outcome === "passed").length;
    if (expectations.length > 0)
      parts.push(`${passed} of ${many(expectations.length, "expectation")} passed`);
    parts.push(many(warningCount(checked.report), "warning"));
  }
  return `${checked.source.name}: ${parts.join(", ")}.\n`;
}

/** Findings, expectations that do not hold, warnings, and the summary. */
function asText(session: Session, stage: Language, views: Light | null, checked: Checked): string {
  const parts: string[] = [];
  if (checked.findings.length > 0) {
    parts.push(stage.printDiagnostics(checked.findings, printOptions(session, checked.sources, "out")));
  }
  if (checked.report !== null && views !== null) {
    const view = { ...defaultView, width: session.width, paint: session.paint };
    const open = checked.report.expectations.filter((item) => item.outcome !== "passed");
    const said = [
      ...open.map((item) => views.expectationLines(item, view)),
      ...checked.report.warnings.map((item) => views.warningLines(item, view)),
    ];
    parts.push(...said.map((lines) => lines.map((line) => `${line}\n`).join("")));
  }
  parts.push(summary(checked));
  return parts.join("\n");
}

/** The same as plain data. */
function asData(stage: Language, checked: Checked): unknown {
  const textOf = textsOf(checked.sources);
  return {
    name: checked.source.name,
    kind: checked.kind,
    errors: errorsIn(checked),
    notes: checked.findings.length - errorsIn(checked),
    diagnostics: stage.inOrder(checked.findings).map((finding) => stage.diagnosticJson(finding, textOf)),
    light: checked.report !== null,
    expectations: checked.report?.expectations ?? [],
    warnings: checked.report?.warnings ?? [],
  };
}

/** `halfshade check FILE...`: everything that is wrong, and nothing else. */
export async function checkCommand(session: Session): Promise<number> {
  const limit = warningLimit(session);
  if (typeof limit === "object" && limit !== null) return misuse(session, limit.problem);
  const stage = await language();
  const views = session.options.has("no-light") ? null : await light();
  const json = session.options.get("format") === "json";
  const files: unknown[] = [];
  let exit = CLEAN;
  for (const name of session.operands) {
    const loaded = await loadText(session, stage, name);
    if (loaded.problem !== undefined) {
      sayProblem(session, stage, loaded.problem);
      exit = TROUBLE;
      continue;
    }
    const checked = checkText(loaded.source, stage, views, kitsOf(session, stage, name));
    if (json) files.push(asData(stage, checked));
    else session.io.out(asText(session, stage, views, checked));
    if (errorsIn(checked) > 0) exit = Math.max(exit, FOUND);
    if (checked.report !== null) exit = Math.max(exit, exitOf(checked.report, limit));
  }
  if (json) session.io.out(renderJson({ format: 1, files }));
  return exit;
}
