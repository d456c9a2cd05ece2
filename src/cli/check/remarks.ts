import type { Place } from "../../core/span.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { asSentence } from "../../diagnostics/print-sentence.js";
import type { Remark, RemarkPlace } from "../../render/remark.js";
import type { ReportExpectation, ReportWarning } from "../../report/schema/report.js";
import type { Language } from "../stages/load.js";
import { textsOf } from "../texts.js";
import { type Examined, notHeld, ownWarnings, type VariantVerdict } from "./examine.js";
import { aboutOf, placeAbout } from "./warning-places.js";

const whole = (file: string): RemarkPlace => ({
  file,
  line: null,
  column: null,
  end_line: null,
  end_column: null,
});

const sentences = (...parts: readonly (string | null)[]): string =>
  parts
    .filter((part): part is string => part !== null && part !== "")
    .map((words) => asSentence(words))
    .join(" ");

/** A finding about a text, or about a file that cannot be read. */
export function findingRemark(stage: Language, finding: Diagnostic, examined: Examined | null): Remark {
  const said = stage.diagnosticJson(finding, textsOf(examined?.sources ?? []));
  const { code, message, help, label, related, fixes } = said;
  const { file, line, column, end_line, end_column } = said;
  return {
    code,
    level: finding.severity,
    message: sentences(message, label, help),
    place: { file, line, column, end_line, end_column },
    related,
    // A fix of a text that is not at hand has no place to stand.
    fixes: fixes.filter(({ edits }) => edits.every((edit) => edit.line !== null)),
  };
}

/** An expectation that does not hold, at its line. */
function expectationRemark(item: ReportExpectation, examined: Examined): Remark {
  const failed = item.outcome === "failed";
  const { line } = item;
  const place = whole(examined.source.name);
  const length = line === null ? 0 : (examined.source.text.split(/\r\n|\n|\r/)[line - 1]?.length ?? 0);
  return {
    code: failed ? "expectation.failed" : "expectation.undecidable",
    level: "error",
    message: sentences(
      `${failed ? "Failed" : "Not decidable"}: ${item.text.replace(/^expect /, "")}`,
      item.found === null ? null : `Found: ${item.found}`,
      item.reason,
      item.nearest === null ? item.nearest_reason : `Nearest single change: ${item.nearest.text}`,
    ),
    place: line === null ? place : { ...place, line, column: 1, end_line: line, end_column: length + 1 },
    related: [],
    fixes: [],
  };
}

/** A warning at what it is about, else at the title of the recipe. */
function warningRemark(
  stage: Language,
  item: ReportWarning,
  examined: Examined,
  variant: string | null = null,
): Remark {
  const name = aboutOf(item);
  const about = placeAbout(examined.places, name);
  const made = variant === null ? null : placeAbout(examined.variantPlaces, variant);
  const place = firstLine(stage, made ?? about, examined);
  const related = made === null || about === null || name === null ? null : firstLine(stage, about, examined);
  return {
    code: item.code,
    level: item.severity === "note" ? "note" : "warning",
    message: sentences(item.message, item.remedy, item.caution),
    place,
    related: related === null ? [] : [{ ...related, text: "it is about this" }],
    fixes: [],
  };
}

/** A place as far as its first line goes; the file where there is none. */
function firstLine(stage: Language, place: Place | null, examined: Examined): RemarkPlace {
  if (place === null) return whole(examined.source.name);
  const textOf = textsOf(examined.sources);
  const said = stage.jsonPlace(place, textOf);
  const { line, column } = said;
  if (line === null || column === null || said.end_line === line) return said;
  const text = (textOf(place.file) ?? "").split(/\r\n|\n|\r/)[line - 1] ?? "";
  const end = text.replace(/\s*\{?\s*$/, "").length + 1;
  return { ...said, end_line: line, end_column: Math.max(column, end) };
}

/** A hold of a variant that is not held, at the variant. */
function holdRemark(
  stage: Language,
  { title }: VariantVerdict,
  { text, reason }: VariantVerdict["held"][number],
  examined: Examined,
): Remark {
  return {
    code: "hold.missed",
    level: "warning",
    message: sentences(`Not held: ${text}: ${reason}`),
    place: firstLine(stage, placeAbout(examined.variantPlaces, title), examined),
    related: [],
    fixes: [],
  };
}

/** What is to be said about a variant: what is not held, what does not hold, and warnings that the recipe itself does not have. */
function variantRemarks(stage: Language, variant: VariantVerdict, examined: Examined): readonly Remark[] {
  return [
    ...notHeld(variant).map((item) => holdRemark(stage, variant, item, examined)),
    ...variant.expectations
      .filter((item) => item.outcome !== "passed")
      .map((item) => expectationRemark(item, examined)),
    ...ownWarnings(examined, variant).map((item) => warningRemark(stage, item, examined, variant.title)),
  ].map((remark) => ({ ...remark, message: `Variant "${variant.title}": ${remark.message}` }));
}

/** All that is to be said about one file. */
export function remarksOf(
  stage: Language,
  examined: Examined,
  fresh: readonly Diagnostic[],
): readonly Remark[] {
  const { report } = examined;
  return [
    ...stage.inOrder(fresh).map((finding) => findingRemark(stage, finding, examined)),
    ...(report?.expectations ?? [])
      .filter((item) => item.outcome !== "passed")
      .map((item) => expectationRemark(item, examined)),
    ...(report?.warnings ?? []).map((item) => warningRemark(stage, item, examined)),
    ...examined.variants.flatMap((variant) => variantRemarks(stage, variant, examined)),
  ];
}
