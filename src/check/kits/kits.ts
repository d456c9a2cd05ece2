import { MAX_KIT_BYTES, MAX_KIT_DEPTH, MAX_KITS } from "../../core/limits.js";
import type { Source } from "../../core/source.js";
import { utf8Size } from "../../core/utf8-size.js";
import type { Diagnostic, Sink } from "../../diagnostics/diagnostic.js";
import type { TextLiteral } from "../../syntax/ast.js";
import { type Context, here, report } from "../context.js";
import type { Files, ReadPhoto } from "./files.js";
import { isKitPath, pathTrouble } from "./path.js";
import type { ReadKit } from "./read.js";

/** A file that was read to be used by another. `ctx` is null where it is no kit. */
export interface Kit {
  readonly ctx: Context | null;
  readonly findings: readonly Diagnostic[];
}

/** Opens the kits that one file names. */
export interface Kits {
  /** The definitions of a kit; null after a finding. */
  open(ctx: Context, path: TextLiteral): Context | null;
  /** The same, before the kit is really used: its own errors are not told yet. */
  peek(ctx: Context, path: TextLiteral): Context | null;
  /** The text of the recipe that a session belongs to, and the way to its kits; null after a finding. */
  recipe(ctx: Context, path: TextLiteral): { readonly source: Source; readonly kits: Kits } | null;
  /** How other files are read. */
  readonly files: Files;
}

/** Reads and checks one kit, whose own kits are opened by what is given. */
export type CheckKit = (source: Source, kits: Kits, sink: Sink) => Context | null;

/** All kits that one check reads. */
export interface Shelf {
  /** The way to the kits of a file, given the names of the files that lead to it, its own last. */
  from(chain: readonly string[]): Kits;
  /** The texts that were read, in the order of reading. */
  readonly sources: readonly Source[];
}

/** A shelf that reads through a given reader, each kit once; without a reader every `use` is refused. */
export function shelf(read: ReadKit | null, check: CheckKit, photo: ReadPhoto | null = null): Shelf {
  const known = new Map<string, Kit>();
  const told = new Set<string>();
  const sources: Source[] = [];
  let bytes = 0;

  const limit = (ctx: Context, path: TextLiteral, what: string): null => {
    report(ctx, "use.limit", path.span, { path: path.value, what });
    return null;
  };

  const fetch = (
    ctx: Context,
    path: TextLiteral,
    alone: "use.alone" | "session.alone" = "use.alone",
  ): Source | null => {
    if (!isKitPath(path.value)) {
      report(ctx, "file.path", path.span, { path: path.value, what: pathTrouble(path.value) });
      return null;
    }
    if (read === null) {
      report(ctx, alone, path.span, { path: path.value });
      return null;
    }
    const text = read(path.value, ctx.file);
    if (text.problem === undefined) return text.source;
    ctx.sink({ ...text.problem, place: here(ctx, path.span) });
    return null;
  };

  /** Counts a text among those that are read; false after a finding. */
  const admit = (ctx: Context, path: TextLiteral, source: Source): boolean => {
    if (sources.length >= MAX_KITS) {
      limit(ctx, path, `${MAX_KITS} kits`);
      return false;
    }
    bytes += utf8Size(source.text);
    if (bytes > MAX_KIT_BYTES) {
      limit(ctx, path, `${MAX_KIT_BYTES} bytes of kits`);
      return false;
    }
    sources.push(source);
    return true;
  };

  const take = (ctx: Context, path: TextLiteral, source: Source, chain: readonly string[]): Kit | null => {
    if (chain.length > MAX_KIT_DEPTH)
      return limit(ctx, path, `${MAX_KIT_DEPTH} kits that use one another in a row`);
    if (!admit(ctx, path, source)) return null;
    const findings: Diagnostic[] = [];
    const kit = check(source, from([...chain, source.name]), (finding) => findings.push(finding));
    return { ctx: kit, findings };
  };

  const openKit = (
    ctx: Context,
    path: TextLiteral,
    chain: readonly string[],
  ): { readonly kit: Kit; readonly name: string } | null => {
    const source = fetch(ctx, path);
    if (source === null) return null;
    const { name } = source;
    const at = chain.indexOf(name);
    if (at >= 0) {
      const way = [...chain.slice(at), name].join(", ");
      report(ctx, "use.circle", path.span, { path: path.value, way });
      return null;
    }
    const kit = known.get(name) ?? take(ctx, path, source, chain);
    if (kit === null) return null;
    known.set(name, kit);
    return { kit, name };
  };

  const from = (chain: readonly string[]): Kits => ({
    open(ctx, path) {
      const opened = openKit(ctx, path, chain);
      if (opened === null) return null;
      const { kit, name } = opened;
      if (kit.ctx === null) {
        report(ctx, "use.no-kit", path.span, { path: path.value });
        return null;
      }
      if (told.has(name)) return kit.ctx;
      told.add(name);
      // What is only a note concerns the kit alone, and is said where the kit itself is checked.
      const errors = kit.findings.filter(({ severity }) => severity === "error");
      for (const error of errors) ctx.sink(usedAt(error, name, ctx, path));
      return kit.ctx;
    },
    recipe(ctx, path) {
      const source = fetch(ctx, path, "session.alone");
      if (source === null || !admit(ctx, path, source)) return null;
      return { source, kits: from([...chain, source.name]) };
    },
    files: { text: read, photo },
    peek: (ctx, path) => openKit(ctx, path, chain)?.kit.ctx ?? null,
  });
  return { from, sources };
}

/** An error in a kit, with the place that uses the kit. */
function usedAt(error: Diagnostic, kit: string, ctx: Context, path: TextLiteral): Diagnostic {
  if (error.place.file !== kit) return error;
  return { ...error, related: [...error.related, { place: here(ctx, path.span), text: "used here" }] };
}
