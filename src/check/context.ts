import { type Place, placeIn, type Span } from "../core/span.js";
import type { ArgsOf, Code } from "../diagnostics/catalogue/index.js";
import { type Extra, finding } from "../diagnostics/create.js";
import type { Fix, Sink } from "../diagnostics/diagnostic.js";
import type { Block, Define, Entry, Let } from "../syntax/ast.js";
import type { Quantity } from "../units/quantity.js";
import type { CheckedBlock } from "./block.js";
import type { Files } from "./kits/files.js";
import type { TableLimits } from "./tables/limits.js";

/** Something of the recipe that has a name. */
export interface Declared {
  readonly kind: "light" | "subject" | "piece" | "point" | "opening";
  readonly name: string;
  /** The subject a point belongs to. */
  readonly owner: string | null;
  readonly place: Place;
  readonly block: Block;
}

/** One `let` while checking: what it says, and what it came to once somebody asked. */
export interface LetEntry {
  readonly statement: Let;
  used: boolean;
  state: "waiting" | "busy" | "done";
  value: Quantity | null;
}

/** One definition while checking: one of the file itself, or one that a `use` brings in. */
export interface DefineEntry {
  readonly statement: Define;
  readonly kind: string;
  readonly name: string;
  /** Where this file names it: in the definition, or in the `use`. */
  readonly place: Place;
  /** The kit that it comes from; null for one of the file itself. */
  readonly home: Context | null;
  used: boolean;
}

/** An entry of a block, with the file whose names its words mean: the one that is checked, or a kit. */
export interface Owned<E extends Entry = Entry> {
  readonly entry: E;
  readonly ctx: Context;
  /** What the recipe changes in a part that it has from a kit, by its own names. */
  readonly over?: readonly Owned[];
}

/** The file that is worked on, and where findings about it go. */
export interface Reporter {
  readonly file: string;
  readonly sink: Sink;
}

/** What all checks of one file share: where findings go, and what its names mean. */
export interface Context extends Reporter {
  readonly lets: Map<string, LetEntry>;
  readonly definitions: Map<string, DefineEntry>;
  readonly declared: Map<string, Declared>;
  /** The blocks that stand by themselves, once they are checked. */
  readonly made: CheckedBlock[];
  /** The value of a `let`, worked out when first asked for; "none" where there is no such `let`. */
  readonly letValue: (name: string) => Quantity | null | "none";
  /** Names of subjects in file order; the only, unnamed one is the empty text. */
  readonly subjects: string[];
  /** Definitions that are like themselves in the end, so that each circle is said once. */
  readonly circles: Set<Define>;
  /** Names that a `use` could not bring in, which has been said. */
  readonly missing: Set<string>;
  /** Of a kit with mistakes of letters or signs: what could not be read of it. */
  readonly unread?: Unread;
  /** How large tables may be. */
  readonly limits: TableLimits;
  /** How files that the recipe names are read. */
  readonly files: Files;
}

/** What of a text could not be read, so that what seems wrong with it would mostly follow from that. */
export interface Unread {
  /** Whether the line at an offset holds such a mistake. */
  readonly at: (offset: number) => boolean;
  /** Whether a name may be defined in it. */
  readonly name: (name: string) => boolean;
}

/** The context in which a definition is read when it is used: its own names, and the places of the recipe. */
export function contextOf(ctx: Context, entry: DefineEntry): Context {
  const { home, place } = entry;
  if (home === null) return ctx;
  const sink: Sink = (diagnostic) => {
    const there = diagnostic.place.file === home.file;
    if (there && home.unread?.at(diagnostic.place.start) === true) return;
    const related = [...diagnostic.related, { place, text: "used here" }];
    ctx.sink(there ? { ...diagnostic, related } : diagnostic);
  };
  return { ...home, sink, declared: ctx.declared, subjects: ctx.subjects };
}

/** Entries of a block as this file reads them. */
export function ownedBy(ctx: Context, entries: readonly Entry[]): readonly Owned[] {
  return entries.map((entry) => ({ entry, ctx }));
}

/** Reports a finding at a span of the file that is checked, or at a place of any file. */
export function report<C extends Code>(
  ctx: Reporter,
  code: C,
  span: Span | Place,
  args: ArgsOf<C>,
  extra: Extra = {},
): void {
  ctx.sink(finding(code, here(ctx, span), args, extra));
}

/** A place in the file that is checked; a place that names its file stays as it is. */
export function here(ctx: Reporter, span: Span | Place): Place {
  return "file" in span ? span : placeIn(ctx.file, span);
}

/** A fix that replaces a span. */
export function replace(
  ctx: Reporter,
  title: string,
  span: Span | Place,
  text: string,
  certain = false,
): Fix {
  return { title, certain, edits: [{ place: here(ctx, span), text }] };
}
