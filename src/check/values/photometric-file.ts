import { type Photometry, readLm63 } from "../../photometry/index.js";
import type { TextLiteral } from "../../syntax/ast.js";
import { type Context, here, report } from "../context.js";
import { isFilePath, pathTrouble } from "../kits/path.js";

/** The table of an LM-63 file that lies beside the recipe, through the reader of kits; null after a finding. */
export function readPhotometricFile(ctx: Context, file: TextLiteral): Photometry | null {
  const path = file.value;
  if (!isFilePath(path, [".ies"])) {
    report(ctx, "file.path", file.span, { path, what: pathTrouble(path, [".ies"]) });
    return null;
  }
  if (ctx.files.text === null) {
    report(ctx, "use.alone", file.span, { path });
    return null;
  }
  const { source, problem } = ctx.files.text(path, ctx.file);
  if (problem !== undefined) {
    ctx.sink({ ...problem, place: here(ctx, file.span) });
    return null;
  }
  const read = readLm63(source.text);
  if (read.photometry === null) {
    report(ctx, "beam.file", file.span, { path, line: read.line, problem: read.problem });
    return null;
  }
  for (const note of read.notes) report(ctx, "beam.note", file.span, { path, note });
  return read.photometry;
}
