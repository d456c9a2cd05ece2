import type { BaseUnit } from "../units/dimension.js";
import type { ValueType } from "./value-types.js";

/** One row of the vocabulary: a property that a kind of block may have. */
export interface PropertyRow {
  readonly name: string;
  readonly type: ValueType;
  /** One line of help. */
  readonly help: string;
  /** A value as it may be written, in valid syntax. */
  readonly example: string;
  /** What holds when it is left out, in words or as a value. */
  readonly default: string;
  /** Least and greatest allowed value in the base unit, both allowed. */
  readonly range?: readonly [low: number, high: number];
  /** The words allowed where the type is `word`. */
  readonly words?: readonly string[];
  /** The point or direction from which it is measured. */
  readonly from?: string;
  /** True where a `+-` moves no result: only warnings, wishes and sentences are made of it. */
  readonly sure?: true;
  /** The base unit of a `scale` value. */
  readonly unit?: BaseUnit;
}

/** One kind of block. */
export interface BlockRow {
  readonly kind: string;
  /** One line of help. */
  readonly help: string;
  /** `none`: there is at most one and it has no name; `needed`: always named; `optional`. */
  readonly named: "none" | "needed" | "optional";
  /** Words allowed as the name, where only some are (`wall left`). */
  readonly names?: readonly string[];
  readonly properties: readonly PropertyRow[];
  /** True where any word may stand before a text (`silence`). */
  readonly anyText?: boolean;
  /** Kinds of block that may stand inside. */
  readonly parts: readonly string[];
}
