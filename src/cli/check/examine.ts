import type { CompileOptions } from "../../compile.js";
import type { Source } from "../../core/source.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Report } from "../../report/schema/report.js";
import type { Verdict } from "../../report/verdict.js";
import { findingsOf } from "../evaluate-file.js";
import type { Language, Light } from "../stages/load.js";
import { type NamedPlace, variantPlaces, warningPlaces } from "./warning-places.js";

/** What a variant's report says to the checks. */
export interface VariantVerdict extends Verdict {
  readonly title: string;
  readonly from: string | null;
  readonly held: NonNullable<Report["variant"]>["held"];
}

/** What a check of one file came to, as plain data: it may come from another thread. */
export interface Examined {
  readonly source: Source;
  /** The file and the kits it uses. */
  readonly sources: readonly Source[];
  readonly findings: readonly Diagnostic[];
  /** What the report says to the checks; null where no light was worked out. */
  readonly report: Verdict | null;
  /** What the reports of its variants say. */
  readonly variants: readonly VariantVerdict[];
  /** Where things stand that a warning may be about: in the recipe, and the variants by their titles. */
  readonly places: readonly NamedPlace[];
  readonly variantPlaces: readonly NamedPlace[];
  readonly kind: "recipe" | "kit" | "session" | null;
}

/** One file, or the finding that says why it cannot be had. */
export type Examination =
  | { readonly examined: Examined; readonly problem?: never }
  | { readonly examined?: never; readonly problem: Diagnostic };

/** Checks one text, and works out its light where a stage for it is given. */
export function examineText(
  source: Source,
  stage: Language,
  views: Light | null,
  kits: CompileOptions,
): Examined {
  const compiled = stage.compile(source, kits);
  const { sources, recipe } = compiled;
  const kind = recipe?.kind ?? null;
  const nothing = { source, sources, report: null, variants: [], places: [], variantPlaces: [], kind };
  if (views === null || !compiled.sound || recipe === null || kind !== "recipe") {
    return { ...nothing, findings: compiled.diagnostics };
  }
  const setUps = views.judgeSetUps(recipe, { source });
  const diagnostics = findingsOf(setUps);
  const broken = diagnostics.some((finding) => finding.severity === "error");
  const findings = [...compiled.diagnostics, ...diagnostics];
  if (broken) return { ...nothing, findings };
  const verdicts = setUps.map(({ expectations, warnings }) => ({ expectations, warnings }));
  const variants = setUps.flatMap(({ variant, expectations, warnings }) =>
    variant === null ? [] : [{ ...variant, expectations, warnings }],
  );
  return {
    ...nothing,
    findings,
    report: verdicts[0] ?? null,
    variants,
    places: warningPlaces(compiled),
    variantPlaces: variantPlaces(compiled),
  };
}

/** The warnings of a variant that the recipe itself does not have. */
export function ownWarnings(examined: Examined, variant: VariantVerdict): Verdict["warnings"] {
  const known = new Set(examined.report?.warnings.map((row) => JSON.stringify(row)));
  return variant.warnings.filter((row) => !known.has(JSON.stringify(row)));
}

/** The holds of a variant that could not be held, or not quite. */
export const notHeld = ({ held }: VariantVerdict): VariantVerdict["held"] =>
  held.filter(({ reason }) => reason !== null);

/** The errors among the findings of a file and its kits. */
export const errorsIn = (examined: Examined): number =>
  examined.findings.filter((item) => item.severity === "error").length;
