import type { Place } from "../core/span.js";
import { sentence } from "./create.js";
import type { Diagnostic } from "./diagnostic.js";
import { locate, type TextOf } from "./print-place.js";
import { asSentence } from "./print-sentence.js";

/** A place in JSON: lines and columns from 1, columns in UTF-16 units, the end exclusive; null without a text. */
export interface JsonPlace {
  readonly file: string;
  readonly line: number | null;
  readonly column: number | null;
  readonly end_line: number | null;
  readonly end_column: number | null;
}

/** One finding in JSON, with everything that the text form says. */
export interface JsonDiagnostic extends JsonPlace {
  readonly code: string;
  readonly severity: string;
  readonly message: string;
  readonly label: string;
  readonly help: string;
  readonly related: readonly (JsonPlace & { readonly text: string })[];
  readonly fixes: readonly {
    readonly title: string;
    readonly certain: boolean;
    readonly edits: readonly (JsonPlace & { readonly text: string })[];
  }[];
}

/** A place as JSON has it. */
export function jsonPlace(place: Place, textOf: TextOf): JsonPlace {
  const { file, from, to } = locate(place, textOf);
  return {
    file,
    line: from?.line ?? null,
    column: from?.column ?? null,
    end_line: to?.line ?? null,
    end_column: to?.column ?? null,
  };
}

/** One finding as plain data for JSON. */
export function diagnosticJson(diagnostic: Diagnostic, textOf: TextOf): JsonDiagnostic {
  return {
    code: diagnostic.code,
    severity: diagnostic.severity,
    message: asSentence(sentence(diagnostic)),
    ...jsonPlace(diagnostic.place, textOf),
    label: diagnostic.label,
    help: asSentence(diagnostic.help),
    related: diagnostic.related.map((item) => ({ ...jsonPlace(item.place, textOf), text: item.text })),
    fixes: diagnostic.fixes.map((fix) => ({
      title: fix.title,
      certain: fix.certain,
      edits: fix.edits.map((edit) => ({ ...jsonPlace(edit.place, textOf), text: edit.text })),
    })),
  };
}
