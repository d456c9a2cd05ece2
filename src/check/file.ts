import type { Sink } from "../diagnostics/diagnostic.js";
import type { File } from "../syntax/ast.js";
import type { Kits } from "./kits/kits.js";
import { type Checked, checkSetUp } from "./recipe.js";
import { checkVariants } from "./variants/check.js";

/**
 * Checks a file: its set-up, then every variant as the whole set-up that it is.
 * @param kits - The way to the kits that the file names.
 * @param whole - False where the parser reported an error: what seems to be missing may stand in what it left out.
 * Variants are then left out, since they may change what could not be read.
 */
export function checkFile(file: File, name: string, sink: Sink, kits: Kits, whole = true): Checked {
  const said = new Set<string>();
  const base = checkSetUp(file, name, sink, kits, whole, said);
  const { recipe, ctx } = base;
  if (recipe === null || !whole) return base;
  const { variants, sound } = checkVariants({ file, kits, said, recipe, ctx }, sink);
  return { recipe: { ...recipe, variants }, sound: base.sound && sound, ctx };
}
