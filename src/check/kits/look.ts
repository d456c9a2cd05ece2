import type { File } from "../../syntax/ast.js";
import type { Context, DefineEntry } from "../context.js";
import { usualLimits } from "../tables/limits.js";
import { noFiles } from "./files.js";
import type { Kits } from "./kits.js";
import { bringIn } from "./use.js";

/** Looks into the kits of a file without saying anything about them; they are opened when first asked for. */
export interface KitLook {
  /** The definition that a `use` brings in under a name; null where there is none. */
  find(name: string): DefineEntry | null;
  /** Whether a `use` could not bring in all that it names, which is said where it stands. */
  gap(): boolean;
}

/** What the kits of a file define, by the names that the file uses. */
export function kitLook(file: File, name: string, kits: Kits): KitLook {
  let opened: Context | null = null;
  const open = (): Context => {
    if (opened !== null) return opened;
    const ctx = silent(name);
    const quiet: Kits = { open: kits.peek, peek: kits.peek, recipe: () => null, files: noFiles };
    for (const item of file.items) if (item.kind === "use") bringIn(ctx, item, quiet);
    opened = ctx;
    return ctx;
  };
  return {
    find: (word) => lookOf(open()).find(word),
    gap: () => lookOf(open()).gap(),
  };
}

/** The same of a file whose kits have been brought in. */
export const lookOf = (ctx: Context): KitLook => ({
  find: (word) => ctx.definitions.get(word) ?? null,
  gap: () => ctx.missing.size > 0,
});

/** A context that says nothing and knows nothing but what is brought into it. */
const silent = (file: string): Context => ({
  file,
  sink: () => undefined,
  lets: new Map(),
  letValue: () => "none",
  definitions: new Map(),
  declared: new Map(),
  made: [],
  subjects: [],
  circles: new Set(),
  missing: new Set(),
  limits: usualLimits,
  files: noFiles,
});
