import type { Language } from "../stages/load.js";
import { textsOf } from "../texts.js";
import { type Examined, errorsIn } from "./examine.js";

/** One checked file as plain data for JSON. */
export function fileAsData(stage: Language, examined: Examined): unknown {
  const textOf = textsOf(examined.sources);
  const errors = errorsIn(examined);
  return {
    name: examined.source.name,
    kind: examined.kind,
    errors,
    notes: examined.findings.length - errors,
    diagnostics: stage.inOrder(examined.findings).map((finding) => stage.diagnosticJson(finding, textOf)),
    light: examined.report !== null,
    expectations: examined.report?.expectations ?? [],
    warnings: examined.report?.warnings ?? [],
    variants: examined.variants,
  };
}
