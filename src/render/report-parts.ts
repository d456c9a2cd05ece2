import { asSentence } from "../diagnostics/print-sentence.js";
import type { Report, ReportWarning } from "../report/schema/report.js";
import {
  heading,
  lineBreak,
  list,
  paragraph,
  strong,
  type ViewPart,
  type ViewWords,
  words,
} from "./parts.js";
import type { TableColumn } from "./table.js";
import { expectationCount } from "./text.js";
import { cameraSentences } from "./text-camera.js";
import { colourSentences, colourTable, hasColour, isMixed } from "./text-colour.js";
import { faceSentences, faceTitle } from "./text-face.js";
import { finishingSentences } from "./text-finishing.js";
import { frameSentences, seamTable, seamWords, sharpSentences, timingSentences } from "./text-frame.js";
import { glossSentences } from "./text-gloss.js";
import { lightFacts, lightTitle } from "./text-lights.js";
import { shadowTable, shadowWords } from "./text-shadows.js";
import { bounceSentences, roomLightSentences, stationTable, withinSentences } from "./text-stations.js";
import { doubledSentences, thrownTable, thrownWords } from "./text-thrown.js";
import {
  heldSentences,
  nearestWords,
  outcomeWords,
  severityWords,
  silenceWords,
  titleOf,
} from "./text-verdicts.js";
import { criterionName, naturalSentences } from "./text-wishes.js";

/** A table whose columns are all of words. */
const wordTable = (titles: readonly string[], rows: readonly (readonly string[])[]): ViewPart => ({
  kind: "table",
  columns: titles.map((title) => ({ title, align: null })),
  rows,
});

const section = (title: string, part: ViewPart): readonly ViewPart[] => [heading(2, title), part];

/** The report as parts: the same in the same order as the text. */
export function reportParts(report: Report): readonly ViewPart[] {
  const parts: ViewPart[] = [heading(1, titleOf(report)), paragraph(strong(report.headline))];
  if (report.matters_most !== null)
    parts.push(paragraph(words(`Measure this with care: ${report.matters_most}`)));
  const held = heldSentences(report);
  if (held.length > 0) parts.push(...section("Held", list(held)));
  if (report.setup.length > 0) parts.push(...section("Set-up", list(report.setup)));
  if (report.camera !== null) {
    const sharp = [
      ...(report.sharpness === null ? [] : sharpSentences(report.sharpness)),
      ...timingSentences(report.timing),
    ];
    parts.push(...section("Camera", list([...cameraSentences(report.camera), ...sharp])));
  }
  if (report.frame !== null) parts.push(...picture(report.frame));
  if (report.lights.length > 0) parts.push(heading(2, "Lights"));
  for (const light of report.lights)
    parts.push(heading(3, lightTitle(light)), wordTable(["What", "Value"], lightFacts(light)));
  parts.push(...readings(report), ...verdicts(report));
  parts.push(heading(2, "Warnings"));
  if (report.warnings.length === 0) parts.push(paragraph(words("None.")));
  parts.push(...report.warnings.map(warning));
  if (report.silenced.length > 0) {
    const rows = report.silenced.map((item) => [item.code, item.because, silenceWords(item).join(" ")]);
    parts.push(...section("Silenced", wordTable(["Warning", "Because", "What it would say"], rows)));
  }
  if (report.assumed.length > 0) {
    const rows = report.assumed.map((item) => [
      item.what,
      item.value,
      item.matters ? "more than 0.2 stop" : "",
    ]);
    parts.push(...section("Assumed", wordTable(["What", "Value", "May move a result by"], rows)));
  }
  if (report.not_claimed.length > 0)
    parts.push(...section("Not claimed", list(report.not_claimed.map((text) => asSentence(text)))));
  return parts;
}

/** A table of the text as a part: numbers to the right, words where a page puts them. */
function laidOut(columns: readonly TableColumn[], rows: readonly (readonly string[])[]): ViewPart {
  const titles = columns.map(({ title, align }) => ({ title, align: align === "right" ? align : null }));
  return { kind: "table", columns: titles, rows };
}

function picture(frame: NonNullable<Report["frame"]>): readonly ViewPart[] {
  const parts = [...section("Picture", list(frameSentences(frame)))];
  if (frame.seams.length === 0) return parts;
  const { columns, rows } = seamTable(frame);
  return [...parts, laidOut(columns, rows), paragraph(words(seamWords))];
}

function readings(report: Report): readonly ViewPart[] {
  const parts: ViewPart[] = [];
  if (report.stations.length > 0) {
    const { columns, rows } = stationTable(report, true, true);
    parts.push(...section("Readings", laidOut(columns, rows)));
    const reasons = report.stations.filter((station) => station.reason !== null);
    if (reasons.length > 0)
      parts.push(list(reasons.map((item) => `${item.name} ${item.looks}: ${item.reason ?? ""}`)));
  }
  const sentences = [...withinSentences(report), ...bounceSentences(report), ...roomLightSentences(report)];
  parts.push(...sentences.map((text) => paragraph(words(text))));
  if (report.shadows.length > 0) {
    const { columns, rows } = shadowTable(report);
    parts.push(...section("Shadows", laidOut(columns, rows)), paragraph(words(shadowWords)));
  }
  parts.push(...thrownAndFaces(report));
  return parts;
}

function thrownAndFaces(report: Report): readonly ViewPart[] {
  const parts: ViewPart[] = [];
  const { columns, rows } = thrownTable(report);
  if (rows.length > 0) {
    const doubled = doubledSentences(report).map((text) => paragraph(words(text)));
    parts.push(...section("Shadows as they fall", laidOut(columns, rows)), paragraph(words(thrownWords)));
    parts.push(...doubled);
  }
  for (const face of report.faces) {
    const sentences = faceSentences(face);
    if (sentences.length > 0) parts.push(...section(faceTitle(face), list(sentences)));
  }
  return parts;
}

function verdicts(report: Report): readonly ViewPart[] {
  const parts: ViewPart[] = [];
  if (report.gloss.length > 0) parts.push(...section("Gloss", list(glossSentences(report))));
  if (report.colour !== null && hasColour(report.colour)) {
    parts.push(...section("Colour", list(colourSentences(report.colour))));
    const { columns, rows } = colourTable(report.colour);
    if (isMixed(report.colour)) parts.push(laidOut(columns, rows));
  }
  if (report.intent !== null) parts.push(...wishes(report.intent));
  if (report.finishing !== null)
    parts.push(...section("Afterwards", list(finishingSentences(report.finishing))));
  if (report.results.length > 0) {
    const rows = report.results.map((item) => [
      item.text,
      item.reason === null
        ? [item.shown, item.shown_interval].filter((text) => text !== null).join(", ")
        : `${item.shown} (${item.reason})`,
    ]);
    parts.push(...section("Results", wordTable(["Result", "Value"], rows)));
  }
  if (report.expectations.length > 0) {
    const rows = report.expectations.map((item) => [
      item.text.replace(/^expect /, ""),
      outcomeWords[item.outcome],
      item.found ?? "",
      [item.reason, nearestWords(item), item.because].filter((text) => text !== null).join("; "),
      item.shares.map((share) => `${share.name}: ${share.text}`).join(", "),
    ]);
    const titles = ["Expectation", "Outcome", "Found", "Why", "What each light gives"];
    parts.push(...section(`Expectations: ${expectationCount(report)}`, wordTable(titles, rows)));
  }
  return parts;
}

function wishes(intent: NonNullable<Report["intent"]>): readonly ViewPart[] {
  const parts: ViewPart[] = [heading(2, `Wishes: ${intent.summary}`)];
  parts.push(...naturalSentences(intent).map((text) => paragraph(words(text))));
  const rows = intent.criteria.map((row) => [
    criterionName(row),
    row.wanted,
    row.found ?? row.reason ?? "",
    row.verdict,
    row.remedy ?? "",
  ]);
  if (rows.length > 0) parts.push(wordTable(["Point", "Wanted", "Found", "Verdict", "What to do"], rows));
  return parts;
}

function warning(item: ReportWarning): ViewPart {
  const about = item.about === null ? "" : ` ${item.about}`;
  const inlines: ViewWords[] = [
    strong(`${severityWords[item.severity]}:`),
    words(`${about} ${asSentence(item.message, [item.about])} (${item.code})`),
  ];
  if (item.remedy !== "") inlines.push(lineBreak, words(`What to do: ${item.remedy}`));
  if (item.caution !== null) inlines.push(lineBreak, words(`Caution: ${item.caution}`));
  return paragraph(...inlines);
}
