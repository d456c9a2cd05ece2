import { printPath } from "../../format/print-value.js";
import type { Entry, File, Path } from "../../syntax/ast.js";
import { blockRow } from "../../vocabulary/index.js";
import { type Reporter, report } from "../context.js";
import type { KitLook } from "../kits/look.js";
import { unknownProperty } from "../properties.js";
import { blockAt, editBlock } from "./edit.js";
import { definitionsOf, follow, letIndex } from "./find.js";
import { nowhere } from "./nowhere.js";

/** The file without the block, or the property, that a path names. What cannot be taken out is reported and stays. */
export function removeAt(file: File, path: Path, to: Reporter, kits: KitLook): File {
  if (letIndex(file, path) >= 0) {
    report(to, "path.let", path.span, { name: printPath(path) });
    return file;
  }
  const { trail, missing, rest } = follow(file, path, kits);
  const last = missing[missing.length - 1] ?? (trail === null ? null : blockAt(file, trail));
  if (last === null) {
    nowhere(file, path, to, kits);
    return file;
  }
  const [word, ...more] = rest;
  const refuse = (taken: boolean): File => {
    report(to, taken ? "path.inherited" : "path.absent", path.span, { path: printPath(path) });
    return file;
  };
  if (word === undefined) {
    if (trail === null || missing.length > 0) return refuse(last.over === true || last.entries.length > 0);
    return editBlock(file, trail, () => null);
  }
  const row = blockRow(last.words[0]?.text ?? "");
  if (row === null) return file;
  if (more.length > 0) {
    report(to, "path.long", path.span, { path: printPath(path), name: word.text });
    return file;
  }
  const isIt = (entry: Entry): boolean =>
    entry.kind === "property" && entry.path.parts.length === 1 && entry.path.parts[0]?.text === word.text;
  const own = last.entries.find(isIt);
  if (own !== undefined && trail !== null && missing.length === 0) {
    return editBlock(file, trail, (block) => ({
      ...block,
      entries: block.entries.filter((entry) => !isIt(entry)),
    }));
  }
  if (row.properties.some((one) => one.name === word.text)) {
    return refuse(
      own !== undefined ||
        last.over === true ||
        definitionsOf(file, last, kits).some((from) => from.block.entries.some(isIt)),
    );
  }
  const written = { start: path.span.start, end: path.span.end };
  unknownProperty(
    to,
    row,
    {
      kind: "property",
      span: written,
      path: { kind: "path", span: word.span, parts: [word] },
      companion: null,
      value: { kind: "damaged", span: written },
    },
    word.text,
  );
  return file;
}
