import { visible, visibleLine } from "../../diagnostics/print-visible.js";
import type { PageProblem } from "../../markdown/page.js";
import { CLEAN, FOUND, TROUBLE } from "../exit.js";
import { kitsOf } from "../kits.js";
import { misuse, type Session } from "../session.js";
import { type Language, language, pages } from "../stages/load.js";
import { loadText, sayProblem } from "../texts.js";

/** `halfshade refresh PAGE...`: works out the marked blocks of pages anew, in place, or says which are stale. */
export async function refreshCommand(session: Session): Promise<number> {
  if (session.operands.includes("-"))
    return misuse(session, "Standard input cannot be written back: name the page.");
  const stage = await language();
  let exit = CLEAN;
  for (const name of session.operands) exit = Math.max(exit, await refreshOne(session, stage, name));
  return exit;
}

async function refreshOne(session: Session, stage: Language, name: string): Promise<number> {
  const loaded = await loadText(session, stage, name);
  if (loaded.problem !== undefined) {
    sayProblem(session, stage, loaded.problem);
    return TROUBLE;
  }
  const { read } = kitsOf(session, stage, name);
  const { refreshPage } = await pages();
  const { text } = loaded.source;
  const page = refreshPage(text, { page: name, ...(read === undefined ? {} : { read }) });
  if (page.problems.length > 0) {
    for (const problem of page.problems) session.io.err(problemText(problem));
    session.io.err(`${visibleLine(name)}: left as it is.\n`);
    return FOUND;
  }
  if (page.blocks.length === 0) {
    session.io.err(
      `${visibleLine(name)} has no marked block. Write: <!-- halfshade report of "FILE.light" --> and <!-- /halfshade -->\n`,
    );
    return CLEAN;
  }
  const stale = page.blocks.filter((block) => block.stale);
  if (session.options.has("check")) {
    for (const { line, order } of stale)
      session.io.out(`${visibleLine(`${name}:${line}: stale: ${order}`)}\n`);
    return stale.length === 0 ? CLEAN : FOUND;
  }
  if (stale.length === 0) return CLEAN;
  const bytes = Buffer.from(page.text, "utf8");
  const written = stage.writeSafely(name, bytes, { kind: "edit", before: loaded.bytes });
  if (written.outcome === "refused") {
    sayProblem(session, stage, written.problem);
    return TROUBLE;
  }
  const count = `${stale.length} of ${page.blocks.length} ${page.blocks.length === 1 ? "block" : "blocks"}`;
  session.io.out(`${visibleLine(name)}: ${count} refreshed.\n`);
  return CLEAN;
}

/** A problem at its line, and under it the findings about the recipe. */
function problemText({ page, line, message, findings }: PageProblem): string {
  const head = `${visibleLine(`${page}:${line}: ${message}`)}\n`;
  return findings === null ? head : `${head}${visible(findings)}`;
}
