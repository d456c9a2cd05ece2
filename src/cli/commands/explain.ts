import type { CatalogueRow } from "../../diagnostics/catalogue/row.js";
import { asSentence } from "../../diagnostics/print-sentence.js";
import { visibleLine } from "../../diagnostics/print-visible.js";
import { wrap } from "../../diagnostics/print-width.js";
import { near } from "../arguments/near.js";
import { CLEAN } from "../exit.js";
import { misuse, type Session } from "../session.js";
import { language, light } from "../stages/load.js";

/** A page of a code: its title, and paragraphs. */
interface Page {
  readonly code: string;
  readonly severity: string;
  readonly line: string;
  readonly paragraphs: readonly string[];
}

/** A sentence of the catalogue without its holes: what stands there comes from the text. */
const withoutHoles = (words: string): string => words.replace(/\{[a-zA-Z]+\}/g, "...");

function findingPage(code: string, row: CatalogueRow): Page {
  const help = /^\{[a-zA-Z]+\}$|^$/.test(row.help)
    ? []
    : [`What to do: ${asSentence(withoutHoles(row.help))}`];
  return {
    code,
    severity: row.severity,
    line: asSentence(withoutHoles(row.message)),
    paragraphs: [...row.page.split(/\n{2,}/), ...help],
  };
}

/** A warning's page, which is Markdown, for a terminal: its first paragraph says when the warning speaks. */
function warningPage(code: string, text: string): Page {
  const [first = "", ...paragraphs] = text.replaceAll("**", "").split(/\n{2,}/);
  return { code, severity: "warning", line: first.replace(/^When\. /, ""), paragraphs };
}

/** Every page: findings about texts in the order of the catalogue, then warnings about set-ups. */
async function allPages(): Promise<readonly Page[]> {
  const { catalogue } = await language();
  const { warningPages } = await light();
  const rows = Object.entries<CatalogueRow>(catalogue);
  return [
    ...rows.map(([code, row]) => findingPage(code, row)),
    ...[...warningPages()].map(([code, text]) => warningPage(code, text)),
  ];
}

/** Lines of one paragraph; lines that the page itself breaks stay broken. */
const paragraph = (text: string, width: number): readonly string[] =>
  text.split("\n").flatMap((line) => (line.startsWith("  ") ? [line] : wrap(line, width)));

/** `halfshade explain [CODE]`: the page of a code, or the list of all codes. */
export async function explainCommand(session: Session): Promise<number> {
  const pages = await allPages();
  const wanted = session.operands[0];
  const out = (lines: readonly string[]): number => {
    session.io.out(lines.map((line) => `${line.trimEnd()}\n`).join(""));
    return CLEAN;
  };
  if (wanted === undefined) {
    return out(
      pages.flatMap((page) => [
        `${page.code}  ${page.severity}`,
        ...wrap(page.line, session.width - 4).map((line) => `    ${line}`),
      ]),
    );
  }
  const page = pages.find((one) => one.code === wanted);
  if (page !== undefined) {
    const head = [`${page.code}  ${page.severity}`, ...wrap(page.line, session.width)];
    return out([...head, ...page.paragraphs.flatMap((text) => ["", ...paragraph(text, session.width)])]);
  }
  const codes = pages.map((one) => one.code);
  const alike = codes.filter((code) => code.split(/[.-]/).some((part) => part === wanted)).slice(0, 8);
  const hint = near(wanted, codes) || (alike.length === 0 ? "" : ` There are ${alike.join(", ")}.`);
  return misuse(
    session,
    `There is no code "${visibleLine(wanted)}".${hint} \`halfshade explain\` lists them all.`,
  );
}
