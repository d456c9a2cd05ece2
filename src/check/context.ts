import { type Place, placeIn, type Span } from "../core/span.js";
import type { ArgsOf, Code } from "../diagnostics/catalogue/index.js";
import { type Extra, finding } from "../diagnostics/create.js";
import type { Fix, Sink } from "../diagnostics/diagnostic.js";
import type { Block, Define, Let } from "../syntax/ast.js";
import type { Quantity } from "../units/quantity.js";

/** Something of the recipe that has a name. */
export interface Declared {
  readonly kind: "light" | "subject" | "piece" | "point" | "opening";
  readonly name: string;
  /** The subject a point belongs to. */
  readonly owner: string | null;
  readonly span: Span;
  readonly block: Block;
}

/** One `let` while checking: what it says, and what it came to once somebody asked. */
export interface LetEntry {
  readonly statement: Let;
  used: boolean;
  state: "waiting" | "busy" | "done";
  value: Quantity | null;
}

/** One `define` while checking. */
export interface DefineEntry {
  readonly statement: Define;
  readonly kind: string;
  readonly name: string;
  used: boolean;
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
  /** The value of a `let`, worked out when first asked for; "none" where there is no such `let`. */
  readonly letValue: (name: string) => Quantity | null | "none";
  /** Names of subjects in file order; the only, unnamed one is the empty text. */
  readonly subjects: string[];
  /** Definitions that are like themselves in the end, so that each circle is said once. */
  readonly circles: Set<string>;
  /** Names that `use` would bring in. */
  readonly imported: ReadonlySet<string>;
}

/** Reports a finding at a span of the file that is checked. */
export function report<C extends Code>(
  ctx: Reporter,
  code: C,
  span: Span,
  args: ArgsOf<C>,
  extra: Extra = {},
): void {
  ctx.sink(finding(code, placeIn(ctx.file, span), args, extra));
}

/** A place in the file that is checked. */
export function here(ctx: Reporter, span: Span): Place {
  return placeIn(ctx.file, span);
}

/** A fix that replaces a span. */
export function replace(ctx: Reporter, title: string, span: Span, text: string, certain = false): Fix {
  return { title, certain, edits: [{ place: here(ctx, span), text }] };
}
