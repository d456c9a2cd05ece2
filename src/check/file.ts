import type { Sink } from "../diagnostics/diagnostic.js";
import type { File } from "../syntax/ast.js";
import type { Kits } from "./kits/kits.js";
import { type Checked, checkSetUp } from "./recipe.js";
import type { TableLimits } from "./tables/limits.js";
import type { RowText } from "./tables/row.js";
import { tryRows } from "./tables/rows.js";
import { checkVariants } from "./variants/check.js";

/**
 * Checks a file: its set-up, then every variant as the whole set-up that it is, then the rows of tables that are
 * checked as text.
 * @param kits - The way to the kits that the file names.
 * @param whole - False where the parser reported an error: what seems to be missing may stand in what it left out.
 * Variants are then left out, since they may change what could not be read.
 */
export function checkFile(
  file: File,
  name: string,
  sink: Sink,
  kits: Kits,
  whole = true,
  limits?: TableLimits,
): Checked {
  const said = new Set<string>();
  const base = checkSetUp(file, name, sink, kits, whole, said, limits);
  const { recipe, ctx } = base;
  if (recipe === null || !whole) return base;
  const { variants, sound } = checkVariants({ file, kits, said, recipe, ctx }, sink);
  const at: RowText = { file, name, kits };
  const fit =
    !base.sound || recipe.tables.map((table) => tryRows(at, table, { file: name, sink })).every(Boolean);
  return { recipe: { ...recipe, variants }, sound: base.sound && sound && fit, ctx };
}
