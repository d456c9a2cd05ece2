import type { Span } from "../core/span.js";

/**
 * The tree that the parser builds: what was written, with the place of everything, and no meaning yet.
 * Sums and products are flat lists, so that a long chain of terms stays a shallow tree.
 */

/** A word used as a name. `quoted` is true for a name in backticks, which is never a word of the language. */
export interface Name {
  readonly kind: "name";
  readonly span: Span;
  readonly text: string;
  readonly quoted: boolean;
}

/** Names joined by points: `key.distance`. Never empty. */
export interface Path {
  readonly kind: "path";
  readonly span: Span;
  readonly parts: readonly Name[];
}

// ---------------------------------------------------------------- values

/** A text in quotation marks, escapes resolved; `block` for one in three marks. */
export interface TextLiteral {
  readonly kind: "text";
  readonly span: Span;
  readonly value: string;
  readonly block: boolean;
}

/** `?`: a value that is to be found by a `solve`. */
export interface Unknown {
  readonly kind: "unknown";
  readonly span: Span;
}

/** `[a, b, c]` */
export interface ListValue {
  readonly kind: "list";
  readonly span: Span;
  readonly items: readonly Value[];
}

/** Two expressions joined by a word: `2 m from key`, `1 stop under face`, `10 is full`. */
export interface Relation {
  readonly kind: "relation";
  readonly span: Span;
  readonly word: "from" | "under" | "over" | "is";
  readonly left: Expression;
  readonly right: Expression;
}

/** What may stand after `name:` or in a list or call. */
export type Value = TextLiteral | Unknown | ListValue | Relation | Expression;

/** A number as written. `value` is a finite number; a fraction `7 1/2` is already summed. */
export interface Amount {
  readonly span: Span;
  readonly value: number;
  /** The number without its unit, as written: `7 1/2`. */
  readonly written: string;
  readonly unit: Unit | null;
}

/** The unit behind a number: one word, `lm s`, `lm/W`, `%`. */
export interface Unit {
  readonly span: Span;
  readonly text: string;
}

/**
 * Numbers that belong together: one (`2.4 m`), several joined by "by" (`60 x 90 cm`, joined is `by`),
 * or side by side (`5 ft 7 in`, joined is `beside`). Which of them make sense is for the checker.
 */
export interface Quantity {
  readonly kind: "quantity";
  readonly span: Span;
  readonly joined: "single" | "by" | "beside";
  readonly amounts: readonly Amount[];
}

/** `f/8` */
export interface FNumber {
  readonly kind: "f-number";
  readonly span: Span;
  readonly value: number;
  /** As written, its letter and slash included: `F/8`. */
  readonly written: string;
}

/** `ISO 200` */
export interface Iso {
  readonly kind: "iso";
  readonly span: Span;
  readonly value: number;
  readonly written: string;
}

/** `3:1` */
export interface Ratio {
  readonly kind: "ratio";
  readonly span: Span;
  readonly left: number;
  readonly right: number;
}

/** An argument of a call: `gap: 12 cm` or a value alone. */
export interface Argument {
  readonly span: Span;
  readonly name: Name | null;
  readonly value: Value;
}

/** A name, or a call: `throw`, `face.disc(towards: key)`. `args` is null where there are no brackets. */
export interface Reference {
  readonly kind: "reference";
  readonly span: Span;
  readonly path: Path;
  readonly args: readonly Argument[] | null;
}

/** `(a, b, c)`: with one member plain brackets, with two or three a point. */
export interface Group {
  readonly kind: "group";
  readonly span: Span;
  readonly members: readonly Expression[];
}

/** `- a` */
export interface Negation {
  readonly kind: "negation";
  readonly span: Span;
  readonly operand: Expression;
}

/** `a + b - c`, flat. The first term's sign is always `+`. */
export interface Sum {
  readonly kind: "sum";
  readonly span: Span;
  readonly terms: readonly {
    readonly sign: "+" | "-";
    readonly value: Expression;
  }[];
}

/** `a * b / c`, flat. The first factor's sign is always `*`. */
export interface Product {
  readonly kind: "product";
  readonly span: Span;
  readonly factors: readonly {
    readonly sign: "*" | "/";
    readonly value: Expression;
  }[];
}

/** `5 m +- 5 cm`: a value with its tolerance. */
export interface Toleranced {
  readonly kind: "toleranced";
  readonly span: Span;
  readonly value: Expression;
  readonly tolerance: Expression;
}

/** A hole left by a mistake that has been reported. Whatever holds it is damaged and is not checked further. */
export interface Damaged {
  readonly kind: "damaged";
  readonly span: Span;
}

/** Everything that has a value by itself. */
export type Expression =
  | Quantity
  | FNumber
  | Iso
  | Ratio
  | Reference
  | Group
  | Negation
  | Sum
  | Product
  | Toleranced
  | Damaged;

// ---------------------------------------------------------------- blocks

/** `key.distance: 3 m`, `calibration with octa: metered(...)`. */
export interface Property {
  readonly kind: "property";
  readonly span: Span;
  readonly path: Path;
  readonly companion: Name | null;
  readonly value: Value;
}

/** `light key like head with octa { ... }`. `words` holds every word before `like` or `{`: the kind, then the name. */
export interface Block {
  readonly kind: "block";
  readonly span: Span;
  readonly words: readonly Name[];
  readonly like: Path | null;
  readonly companions: readonly Path[];
  readonly entries: readonly Entry[];
  /**
   * True for a block that no text holds: what it says goes over the part of these words that its owner takes over from
   * a kit, which stays otherwise as the kit has it.
   */
  readonly over?: true;
  /** True when the parser had to repair something inside; such a block is checked as far as it goes. */
  readonly damaged: boolean;
}

/** What may stand in the body of a block. */
export type Entry = Property | Block;

// ---------------------------------------------------------------- statements

/** `halfshade 1` */
export interface Header {
  readonly kind: "header";
  readonly span: Span;
  readonly word: Name;
  readonly version: Amount;
}

/** `recipe "..."`, `kit "..."`, `session "..." of "./x.light"`, `session "..." of "./x.light" variant "..."`. */
export interface Title {
  readonly kind: "title";
  readonly span: Span;
  readonly word: Name;
  readonly text: TextLiteral;
  readonly of: TextLiteral | null;
  /** The variant of that recipe to which a session was built. */
  readonly variant?: TextLiteral;
}

/** `use a, b from "./kit.light"` */
export interface Use {
  readonly kind: "use";
  readonly span: Span;
  readonly names: readonly Name[];
  readonly from: TextLiteral;
}

/** `let throw = 5.4 m` */
export interface Let {
  readonly kind: "let";
  readonly span: Span;
  readonly name: Name;
  readonly value: Expression;
}

/** `define light head { ... }` */
export interface Define {
  readonly kind: "define";
  readonly span: Span;
  readonly block: Block;
}

/** A sign that compares. */
export type Comparison = "<" | "<=" | ">" | ">=";

/** What an `expect` or a `meet` says. */
export type Claim =
  | { readonly kind: "bare"; readonly span: Span; readonly value: Expression }
  | {
      readonly kind: "is";
      readonly span: Span;
      readonly value: Expression;
      readonly target: Expression;
      /** `A is 1 stop under B within ...`: the word and B. */
      readonly side: {
        readonly word: "under" | "over";
        readonly of: Expression;
      } | null;
      /** Null only after a reported mistake. */
      readonly within: Expression | null;
    }
  | {
      readonly kind: "between";
      readonly span: Span;
      readonly value: Expression;
      readonly low: Expression;
      readonly high: Expression;
    }
  | {
      readonly kind: "compare";
      readonly span: Span;
      readonly value: Expression;
      readonly sign: Comparison;
      readonly target: Expression;
    };

/** `expect surely a is b within c and d > e because "..."` */
export interface Expect {
  readonly kind: "expect";
  readonly span: Span;
  readonly surely: boolean;
  readonly claims: readonly Claim[];
  readonly because: TextLiteral | null;
}

/** `hold face.disc(towards: key) is f/8 by key.power` */
export interface Hold {
  readonly kind: "hold";
  readonly span: Span;
  readonly reading: Expression;
  /** Null: hold what it is now. */
  readonly target: Expression | null;
  readonly by: readonly Path[];
}

/** `sweep key.distance over [...]` or `from a to b step c` / `count n`. */
export interface Sweep {
  readonly kind: "sweep";
  readonly span: Span;
  readonly path: Path;
  readonly range:
    | { readonly kind: "over"; readonly values: Value }
    | {
        readonly kind: "steps";
        readonly from: Expression;
        readonly to: Expression;
        readonly step: Expression | null;
        readonly count: Amount | null;
      };
}

/** One column: `key.distance as cm "Tape"`. */
export interface Column {
  readonly span: Span;
  readonly value: Expression;
  readonly as: Unit | null;
  readonly title: TextLiteral | null;
}

/** `show column, column` */
export interface Show {
  readonly kind: "show";
  readonly span: Span;
  readonly columns: readonly Column[];
}

/** `table "..." { sweep ... show ... }` */
export interface Table {
  readonly kind: "table";
  readonly span: Span;
  readonly title: TextLiteral;
  readonly lines: readonly (Sweep | Show | Hold | Property)[];
}

/** `remove fill` */
export interface Remove {
  readonly kind: "remove";
  readonly span: Span;
  readonly path: Path;
}

/** `keep expectations` */
export interface Keep {
  readonly kind: "keep";
  readonly span: Span;
  readonly what: Name;
}

/** `variant "..." from "..." { ... }` */
export interface Variant {
  readonly kind: "variant";
  readonly span: Span;
  readonly title: TextLiteral;
  readonly from: TextLiteral | null;
  readonly lines: readonly (Remove | Keep | Expect | Hold | Entry)[];
}

/** `find key.distance between a and b near c` */
export interface Find {
  readonly kind: "find";
  readonly span: Span;
  readonly path: Path;
  readonly low: Expression;
  readonly high: Expression;
  readonly near: Expression | null;
}

/** `meet CLAIM` */
export interface Meet {
  readonly kind: "meet";
  readonly span: Span;
  readonly claim: Claim;
}

/** `prefer least key.power` */
export interface Prefer {
  readonly kind: "prefer";
  readonly span: Span;
  readonly direction: Name;
  readonly value: Expression;
}

/** `solve "..." { find ... meet ... prefer ... }` */
export interface Solve {
  readonly kind: "solve";
  readonly span: Span;
  readonly title: TextLiteral | null;
  readonly lines: readonly (Find | Meet | Prefer)[];
}

/** `measured { face.disc(towards: key) is f/8 , key.distance: 2.55 m }` */
export interface Measured {
  readonly kind: "measured";
  readonly span: Span;
  readonly lines: readonly (Reading | Entry)[];
}

/** `face.disc(towards: key) is f/8` of a measured block. */
export interface Reading {
  readonly kind: "reading";
  readonly span: Span;
  readonly reading: Expression;
  readonly value: Expression;
}

/** What may stand by itself in a file. */
export type Item = Use | Let | Define | Expect | Hold | Table | Variant | Solve | Measured | Block;

/** A whole file. */
export interface File {
  readonly kind: "file";
  readonly span: Span;
  readonly header: Header | null;
  readonly title: Title | null;
  readonly items: readonly Item[];
}
