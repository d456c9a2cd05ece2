import { printPath } from "../../format/print-value.js";
import { writeName } from "../../model/make/points.js";
import type { File, Path } from "../../syntax/ast.js";
import { blockRow, topKinds } from "../../vocabulary/index.js";
import { type Reporter, replace, report } from "../context.js";
import type { KitLook } from "../kits/look.js";
import { nearNames, suggestion } from "../suggest.js";
import { startNames } from "./find.js";

/** Reports a path of which not even the first name is something of the recipe. */
export function nowhere(file: File, path: Path, to: Reporter, kits: KitLook): void {
  const first = path.parts[0];
  if (first === undefined || kits.gap()) return; // it may be in the kit that could not be read
  const isKind = blockRow(first.text) !== null && (topKinds as readonly string[]).includes(first.text);
  const named = isKind ? namedOf(file, first.text) : [];
  const known = startNames(file, kits);
  const near = isKind ? named : nearNames(first.text, known);
  const nothing =
    isKind && named.length === 0
      ? `The recipe has no \`${first.text}\`.`
      : suggestion(near.map(writeName), known.map(writeName), "The recipe has no blocks yet.");
  report(
    to,
    "path.unknown",
    first.span,
    { path: printPath(path), name: first.text, known: nothing },
    { fixes: near.map((name) => replace(to, `write \`${writeName(name)}\``, first.span, writeName(name))) },
  );
}

/** The names of the blocks of a kind. */
const namedOf = (file: File, kind: string): readonly string[] =>
  file.items.flatMap((item) =>
    item.kind === "block" && item.words[0]?.text === kind && item.words[1] !== undefined
      ? [item.words[1].text]
      : [],
  );
