/** Stands in until the formatter is there. */
import type { Source } from "../../core/source.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";

export function formatText(
  _source: Source,
  _options: unknown,
): { text: string | null; diagnostics: readonly Diagnostic[] } {
  throw new Error("no formatter yet");
}
