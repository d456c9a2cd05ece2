import { visibleLine } from "../../diagnostics/print-visible.js";
import type { Table } from "../../tables/types.js";
import { near } from "../arguments/near.js";
import { isForAnswer } from "../evaluate-file.js";
import { CLEAN, FOUND, TROUBLE } from "../exit.js";
import { figureForm, giveFigure } from "../give-figure.js";
import { kitsOf } from "../kits.js";
import { chosenForm, deliver } from "../output.js";
import { watched } from "../progress.js";
import { misuse, type Session } from "../session.js";
import { draw, type Language, type Light, language, light } from "../stages/load.js";
import { loadText, printOptions, sayProblem } from "../texts.js";

/** `halfshade table FILE ["TITLE"]`: the lesson tables of a recipe, row by row. */
export async function tableCommand(session: Session): Promise<number> {
  const [name = "", title] = session.operands;
  const stage = await language();
  const loaded = await loadText(session, stage, name);
  if (loaded.problem !== undefined) {
    sayProblem(session, stage, loaded.problem);
    return TROUBLE;
  }
  const compiled = stage.compile(loaded.source, kitsOf(session, stage, name));
  const said = compiled.diagnostics.filter(isForAnswer);
  if (said.length > 0) {
    session.io.err(stage.printDiagnostics(said, printOptions(session, compiled.sources, "err")));
  }
  if (!compiled.sound || compiled.recipe === null) return FOUND;
  const titles = compiled.recipe.tables.map((table) => table.title);
  if (titles.length === 0)
    return misuse(session, `${name} has no table. Write one: table "..." { sweep ... show ... }`);
  if (title !== undefined && !titles.includes(title)) {
    const known = titles.map((one) => `"${one}"`).join(", ");
    return misuse(
      session,
      visibleLine(`There is no table "${title}" in ${name}.${near(title, titles)} It has ${known}.`),
    );
  }
  const views = await light();
  const chosen = views.tablesOf(compiled).filter((table) => title === undefined || table.title === title);
  const shown = chosenForm(session, "text");
  if (shown === "svg" || shown === "png") return chart(session, stage, name, chosen);
  const made = asked(session, views, chosen);
  return typeof made === "string"
    ? misuse(session, made)
    : give(session, stage, views, compiled.recipe.title, made);
}

/** Gives a table out as a chart. */
async function chart(
  session: Session,
  stage: Language,
  name: string,
  tables: readonly Table[],
): Promise<number> {
  const { options } = session;
  if (options.has("worksheet") || options.has("answers") || options.has("blank"))
    return misuse(session, "A chart is of the whole table: leave --worksheet, --blank and --answers away.");
  const form = figureForm(session, 'halfshade table lesson.light "Walk the lamp in" -o walk');
  if ("problem" in form) return misuse(session, form.problem);
  const [table, ...others] = tables;
  if (table === undefined || others.length > 0) {
    const known = tables.map(({ title }) => `"${title}"`).join(", ");
    return misuse(session, visibleLine(`A chart is of one table; name one of ${known} behind ${name}.`));
  }
  const drawing = await draw();
  const drawn = drawing.tableChart(table, [...watched(session, table).work()]);
  return typeof drawn === "string"
    ? misuse(session, visibleLine(drawn))
    : giveFigure(session, stage, drawing, drawn, form);
}

/** The tables as whole ones, as worksheets or as their answers; a sentence where that is not possible. */
function asked(session: Session, views: Light, tables: readonly Table[]): readonly Table[] | string {
  const { options } = session;
  const blank = options.get("blank");
  const isSheet = options.has("worksheet") || options.has("answers") || blank !== undefined;
  if (!isSheet) return tables;
  const made: Table[] = [];
  for (const table of tables) {
    const own = table.columns.map((column) => column.title);
    const titles =
      blank === undefined
        ? null
        : own.includes(blank)
          ? [blank]
          : blank.split(",").map((text) => text.trim());
    const unknown = titles?.find((one) => !own.includes(one));
    if (unknown !== undefined) {
      return visibleLine(
        `The table "${table.title}" has no column "${unknown}".${near(unknown, own)} It has ${own.map((one) => `"${one}"`).join(", ")}.`,
      );
    }
    const sheet = titles === null ? table : views.withBlank(table, titles);
    if (!sheet.columns.some((column) => column.blank)) {
      return visibleLine(
        `The table "${table.title}" leaves no column blank: name one with --blank, or write \`worksheet: ["..."]\` in it.`,
      );
    }
    made.push(options.has("answers") ? views.answersOf(sheet) : views.worksheetOf(sheet));
  }
  return made;
}

/** Gives the tables out piece by piece; stops where nobody reads on. */
function give(
  session: Session,
  stage: Language,
  views: Light,
  recipe: string,
  tables: readonly Table[],
): number {
  const form = chosenForm(session, "text");
  if (form === "csv" && tables.length > 1) {
    const known = tables.map((table) => `"${table.title}"`).join(", ");
    return misuse(session, visibleLine(`CSV holds one table; name one of ${known}.`));
  }
  const shown = tables.map((table) => watched(session, table));
  const pieces = form === "json" ? views.tablesJson(recipe, shown) : views.inForm(form, shown, session.width);
  if (session.options.has("output")) return deliver(session, stage, [...pieces].join(""));
  // Rows are gathered a little, since every write is a call to the system.
  let waiting = "";
  for (const piece of pieces) {
    waiting += piece;
    if (waiting.length < 4096) continue;
    session.io.out(waiting);
    waiting = "";
    if (session.io.isRead?.() === false) return CLEAN;
  }
  session.io.out(waiting);
  return CLEAN;
}
