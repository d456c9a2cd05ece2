import { compile } from "../../src/compile.js";
import { lineStarts, positionAt } from "../../src/core/source.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { diagnosticJson } from "../../src/diagnostics/print-json.js";
import { withoutOrigins } from "../../src/model/plain.js";
import { lex } from "../../src/text/lex.js";
import { findingsUpToScene } from "../helpers/coarse-run.js";
import { kitText, withOurKits } from "../helpers/kits.js";
import { compactJson } from "./compact.js";
import type { CorpusText } from "./folder.js";

const nothing = (): void => {};

/** The tokens and comments of a text, one a line: where it starts, its kind, and the letters if it is not a line end. */
export function tokensOf({ name, text }: CorpusText): string {
  const { tokens, comments } = lex({ name: `${name}.light`, text }, nothing);
  const starts = lineStarts(text);
  const rows = [
    ...tokens.map((token) => ({ at: token.startOffset, kind: token.tokenType.name, image: token.image })),
    ...comments.map((comment) => ({ at: comment.startOffset, kind: "Comment", image: comment.image })),
  ].sort((a, b) => a.at - b.at);
  return rows
    .map(({ at, kind, image }) => {
      const { line, column } = positionAt(starts, at);
      const letters = kind === "NewLine" ? "" : ` ${image.includes("\n") ? JSON.stringify(image) : image}`;
      return `${line}:${column} ${kind}${letters}\n`;
    })
    .join("");
}

/** The tree with each span as one short text. */
function withShortSpans(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withShortSpans);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) =>
      key === "span" ? ["at", `${inner.start}-${inner.end}`] : [key, withShortSpans(inner)],
    ),
  );
}

/** The syntax tree of a text as JSON. */
export function treeOf({ name, text }: CorpusText): string {
  return compactJson(withShortSpans(compile({ name: `${name}.light`, text }, withOurKits).file));
}

/** The checked model of a text as JSON. */
export function modelOf({ name, text }: CorpusText): string {
  const { recipe } = compile({ name: `${name}.light`, text }, withOurKits);
  return compactJson(recipe === null ? null : withoutOrigins(recipe));
}

/** Everything that is found in a text, the scene's findings with the others. */
export function findingsOf({ name, text }: CorpusText): readonly Diagnostic[] {
  return findingsUpToScene({ name: `${name}.light`, text }, withOurKits);
}

/** Findings as the JSON of the command. */
export function findingsJson({ name, text }: CorpusText, found: readonly Diagnostic[]): string {
  return compactJson(
    found.map((diagnostic) =>
      diagnosticJson(diagnostic, (file) => (file === `${name}.light` ? text : kitText(file))),
    ),
  );
}
