import { asSentence } from "../diagnostics/print-sentence.js";
import { visibleLine } from "../diagnostics/print-visible.js";
import { cells, wrap } from "../diagnostics/print-width.js";
import type { Report } from "../report/schema/report.js";
import { defaultView, indented, labelled, type ViewOptions, wrapText } from "./report-lines.js";
import { layTable } from "./table.js";
import { cameraSentences } from "./text-camera.js";
import { colourLines, hasColour } from "./text-colour.js";
import { faceSentences, faceTitle } from "./text-face.js";
import { finishingSentences } from "./text-finishing.js";
import { frameSentences, seamTable, seamWords, sharpSentences, timingSentences } from "./text-frame.js";
import { glossSentences } from "./text-gloss.js";
import { lightBlock } from "./text-lights.js";
import { shadowLines } from "./text-shadows.js";
import { stationLines } from "./text-stations.js";
import { thrownLines } from "./text-thrown.js";
import {
  expectationLines,
  heldSentences,
  resultLines,
  silenceLines,
  titleOf,
  warningLines,
} from "./text-verdicts.js";
import { wishLines } from "./text-wishes.js";

type Lines = readonly string[];

const joined = (blocks: readonly Lines[]): Lines =>
  blocks.flatMap((block, index) => (index === 0 ? block : ["", ...block]));

/** The report's expectations in numbers: `3 passed, 1 failed`. */
export function expectationCount(report: Report): string {
  const count = (outcome: string): number =>
    report.expectations.filter((item) => item.outcome === outcome).length;
  const parts = [`${count("passed")} passed`];
  if (count("failed") > 0) parts.push(`${count("failed")} failed`);
  if (count("undecidable") > 0) parts.push(`${count("undecidable")} not decidable`);
  return parts.join(", ");
}

/** The lines in the picture for a terminal; on a narrow one a list. */
function lineTable(frame: NonNullable<Report["frame"]>, view: ViewOptions): Lines {
  if (frame.seams.length === 0) return [];
  const { columns, rows } = seamTable(frame);
  const table = layTable(columns, rows, view.width - 2, 1);
  const lines =
    table === null
      ? rows.flatMap(([line = "", of = "", from = "", to = ""]) =>
          indented(visibleLine(`${line} of ${of}: ${from} to ${to}`), "  ", view.width),
        )
      : table.map((line) => `  ${line}`);
  return [...lines, ...indented(seamWords, "  ", view.width)];
}

/** The sections of a report in the order in which it is read, each with its lines. */
function sections(report: Report, view: ViewOptions): readonly (readonly [title: string, lines: Lines])[] {
  const say = (texts: readonly string[]): Lines =>
    texts.flatMap((text) => indented(visibleLine(text), "  ", view.width));
  const bullet = (sign: string, text: string): Lines =>
    labelled(sign, visibleLine(text), "  ", 2, view.width);
  const found: [string, Lines][] = [];
  const held = heldSentences(report);
  if (held.length > 0) found.push(["Held", say(held)]);
  if (report.setup.length > 0) found.push(["Set-up", say(report.setup)]);
  if (report.camera !== null) {
    const sharp = [
      ...(report.sharpness === null ? [] : sharpSentences(report.sharpness)),
      ...timingSentences(report.timing),
    ];
    found.push(["Camera", say([...cameraSentences(report.camera), ...sharp])]);
  }
  if (report.frame !== null)
    found.push(["Picture", [...say(frameSentences(report.frame)), ...lineTable(report.frame, view)]]);
  if (report.lights.length > 0)
    found.push(["Lights", joined(report.lights.map((light) => lightBlock(light, view)))]);
  found.push(["Readings", stationLines(report, view)]);
  if (report.shadows.length > 0) found.push(["Shadows", shadowLines(report, view)]);
  if (report.gloss.length > 0) found.push(["Gloss", say(glossSentences(report))]);
  const thrown = thrownLines(report, view);
  if (thrown.length > 0) found.push(["Shadows as they fall", thrown]);
  for (const face of report.faces) {
    const lines = say(faceSentences(face));
    if (lines.length > 0) found.push([faceTitle(face), lines]);
  }
  if (report.colour !== null && hasColour(report.colour))
    found.push(["Colour", colourLines(report.colour, view)]);
  if (report.intent !== null)
    found.push([`Wishes: ${visibleLine(report.intent.summary)}`, wishLines(report.intent, view)]);
  if (report.finishing !== null) found.push(["Afterwards", say(finishingSentences(report.finishing))]);
  if (report.results.length > 0) found.push(["Results", resultLines(report.results, view)]);
  if (report.expectations.length > 0) {
    const lines = report.expectations.flatMap((item) => expectationLines(item, view));
    found.push([`Expectations: ${expectationCount(report)}`, lines]);
  }
  const warnings = joined(report.warnings.map((item) => warningLines(item, view)));
  found.push(report.warnings.length === 0 ? ["Warnings: none", []] : ["Warnings", warnings]);
  if (report.silenced.length > 0) {
    found.push(["Silenced", joined(report.silenced.map((item) => silenceLines(item, view)))]);
  }
  if (report.assumed.length > 0) {
    const lines = report.assumed.flatMap((item) =>
      bullet(item.matters ? "*" : "-", `${item.what}: ${item.value}`),
    );
    const star = report.assumed.some((item) => item.matters)
      ? bullet("*", "may move a result by more than 0.2 stop; say it in the recipe.")
      : [];
    found.push(["Assumed", [...lines, ...star]]);
  }
  if (report.not_claimed.length > 0) {
    found.push(["Not claimed", report.not_claimed.flatMap((text) => bullet("-", asSentence(text)))]);
  }
  return found;
}

/** What a brief report keeps besides its headline, by the first words of the headings. */
const inBrief: readonly string[] = ["Held", "Readings", "Wishes", "Expectations", "Warnings", "Silenced"];

const firstWords = (heading: string): string => heading.split(":")[0] as string;

/**
 * The report for a terminal: lines of at most `width` cells (40 at least), words for verdicts, figures rounded. A brief
 * one says at its end what it leaves out.
 */
export function renderText(report: Report, options: Partial<ViewOptions> = {}): string {
  const given = { ...defaultView, ...options };
  const view: ViewOptions = { ...given, width: Math.max(40, Math.floor(given.width)) };
  const title = wrap(visibleLine(titleOf(report)), view.width);
  const line = "=".repeat(title.reduce((most, part) => Math.max(most, cells(part)), 0));
  const out: string[] = [...title.map((part) => view.paint("strong", part)), line, ""];
  out.push(...wrapText(visibleLine(report.headline), view.width));
  if (report.matters_most !== null) {
    out.push(...wrapText(`Measure this with care: ${visibleLine(report.matters_most)}`, view.width));
  }
  const all = sections(report, view);
  const isShown = (heading: string): boolean => view.brief !== true || inBrief.includes(firstWords(heading));
  for (const [heading, lines] of all.filter(([heading]) => isShown(heading))) {
    out.push("", ...wrapText(heading, view.width).map((part) => view.paint("strong", part)), ...lines);
  }
  const left = all.map(([heading]) => heading).filter((heading) => !isShown(heading));
  if (left.length > 0)
    out.push("", ...wrapText(`Left out for being brief: ${left.map(firstWords).join(", ")}.`, view.width));
  return out.map((text) => `${text.trimEnd()}\n`).join("");
}
