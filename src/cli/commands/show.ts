import type { Source } from "../../core/source.js";
import { lineStarts, positionAt } from "../../core/source.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { visibleLine } from "../../diagnostics/print-visible.js";
import { padEnd } from "../../diagnostics/print-width.js";
import { renderJson } from "../../render/json.js";
import { near } from "../arguments/near.js";
import { CLEAN, FOUND, TROUBLE } from "../exit.js";
import { kitsOf } from "../kits.js";
import { misuse, type Session } from "../session.js";
import { type Language, language } from "../stages/load.js";
import { loadText, printOptions, sayProblem } from "../texts.js";

const stages = ["tokens", "tree", "model"] as const;

/** Tokens and comments in the order of the text: place, kind, and how it is written. */
function tokens(stage: Language, source: Source, sink: (finding: Diagnostic) => void, json: boolean): string {
  const lexed = stage.lex(source, sink);
  const starts = lineStarts(source.text);
  const all = [
    ...lexed.tokens.map((token) => ({
      start: token.startOffset,
      kind: token.tokenType.name,
      text: token.image,
    })),
    ...lexed.comments.map((comment) => ({
      start: comment.startOffset,
      kind: "Comment",
      text: comment.image,
    })),
  ].sort((a, b) => a.start - b.start);
  if (json)
    return renderJson({
      format: 1,
      tokens: all.map((item) => ({ ...item, ...positionAt(starts, item.start) })),
    });
  return all
    .map(({ start, kind, text }) => {
      const { line, column } = positionAt(starts, start);
      return `${padEnd(`${line}:${column}`, 8)}${padEnd(kind, 16)}${visibleLine(text)}`.trimEnd();
    })
    .map((line) => `${line}\n`)
    .join("");
}

/** `halfshade show tokens|tree|model FILE`: how a text is read, stage by stage. Findings go to standard error. */
export async function showCommand(session: Session): Promise<number> {
  const [what = "", name = ""] = session.operands;
  if (!stages.some((stage) => stage === what)) {
    return misuse(
      session,
      `"${visibleLine(what)}" cannot be shown: tokens, tree or model.${near(what, stages)}`,
    );
  }
  const stage = await language();
  const loaded = await loadText(session, stage, name);
  if (loaded.problem !== undefined) {
    sayProblem(session, stage, loaded.problem);
    return TROUBLE;
  }
  const { source } = loaded;
  const findings: Diagnostic[] = [];
  let sources: readonly Source[] = [source];
  const sink = (finding: Diagnostic): void => {
    findings.push(finding);
  };
  if (what === "tokens")
    session.io.out(tokens(stage, source, sink, session.options.get("format") === "json"));
  else if (what === "tree") session.io.out(renderJson(stage.parseFile(source, sink).file));
  else {
    const compiled = stage.compile(source, kitsOf(session, stage, name));
    sources = compiled.sources;
    findings.push(...compiled.diagnostics);
    session.io.out(renderJson(compiled.recipe === null ? null : stage.withoutOrigins(compiled.recipe)));
  }
  if (findings.length > 0) {
    session.io.err(stage.printDiagnostics(findings, printOptions(session, sources, "err")));
  }
  return findings.some((finding) => finding.severity === "error") ? FOUND : CLEAN;
}
