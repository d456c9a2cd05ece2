import { placeIn } from "../core/span.js";
import { finding } from "../diagnostics/create.js";
import type { Sink } from "../diagnostics/diagnostic.js";
import type { Token } from "../text/token.js";
import type { Block, File, Name } from "./ast.js";
import { spanOf } from "./build.js";

/**
 * `f8` and `iso200` are names like any other, and a light may be called so. Where nothing in the file is, they were
 * meant as an f-number and an ISO value, and that is reported.
 */
export function reportSuspects(file: string, tree: File, suspects: readonly Token[], sink: Sink): void {
  if (suspects.length === 0) return;
  const names = namesOf(tree);
  for (const token of suspects) {
    if (names.has(token.image)) continue;
    const span = spanOf(token);
    const isIso = token.image.length > 3 && token.image.toLowerCase().startsWith("iso");
    const text = isIso ? `ISO ${token.image.slice(3)}` : `f/${token.image.slice(1)}`;
    const place = placeIn(file, span);
    const fixes = [{ title: `write \`${text}\``, certain: false, edits: [{ place, text }] }];
    sink(finding(isIso ? "iso.form" : "f-number.slash", place, {}, { fixes }));
  }
}

/** Every name that the file gives or brings in. */
function namesOf(tree: File): ReadonlySet<string> {
  const names = new Set<string>();
  const add = (name: Name): unknown => names.add(name.text);
  const addBlock = (block: Block): void => {
    block.words.forEach(add);
    for (const entry of block.entries) if (entry.kind === "block") addBlock(entry);
  };
  for (const item of tree.items) {
    if (item.kind === "let") add(item.name);
    else if (item.kind === "use") item.names.forEach(add);
    else if (item.kind === "define") addBlock(item.block);
    else if (item.kind === "block") addBlock(item);
    else if (item.kind === "variant") {
      for (const line of item.lines) if (line.kind === "block") addBlock(line);
    }
  }
  return names;
}
