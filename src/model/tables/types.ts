import type { Place } from "../../core/span.js";
import type { HoldModel } from "../types.js";
import type { Expr } from "../values.js";

/** What a sweep changes. */
export type SweepTarget =
  /** A property of a lamp or of the camera: a row takes the recipe with another value there. */
  | {
      readonly kind: "property";
      readonly block: "light" | "camera";
      /** The light's name; null for the camera. */
      readonly name: string | null;
      readonly property: string;
    }
  /** Any other property, a `let`, or the definition a block is like: a row is checked as if it had been written. */
  | { readonly kind: "text" }
  | { readonly kind: "variant" };

/** One value of a list that is swept. */
export interface ListedValue {
  /** As a recipe says it. */
  readonly written: string;
  /**
   * The value of the property as the checked model has it; for variants the title, null for the recipe itself; null
   * where rows are checked as text.
   */
  readonly value: unknown;
  /** Its number in the unit of the list; null where the values are not all numbers of one kind. */
  readonly number: number | null;
}

/** How a stepped value is put together. */
export const stepForms = [
  "plain",
  "tape",
  "bearing",
  "direction",
  "stops-below",
  "energy",
  "dial",
  "output",
  "surface",
  "shutter",
] as const;

/** One of these ways. */
export type StepForm = (typeof stepForms)[number];

/** Equal steps, in the unit in which they are written; in stops where `scale` says so. */
export interface Steps {
  readonly form: StepForm;
  readonly scale: "linear" | "stops";
  readonly from: number;
  readonly to: number;
  /** The difference of neighbours, with its sign; in stops where the scale is. */
  readonly step: number;
  readonly count: number;
  /** The unit of `from` and `to`: one of the language's, `f`, `ISO`, or nothing for a plain number. */
  readonly unit: string;
}

/** One `sweep`. */
export interface SweepModel {
  /** The path as a recipe says it; also the title of its column. */
  readonly path: string;
  readonly target: SweepTarget;
  readonly range:
    | { readonly kind: "list"; readonly unit: string | null; readonly values: readonly ListedValue[] }
    | { readonly kind: "steps"; readonly steps: Steps };
  readonly origin?: Place;
}

/** One column of a table. */
export interface ColumnModel {
  readonly title: string;
  readonly value: Expr;
  /** The unit it is shown in, as the language spells it; null for the usual form of its type. */
  readonly unit: string | null;
}

/** A column as one row has it: what is shown, or why it has no meaning there. */
export type RowColumn = ColumnModel | { readonly problem: string };

/** One `table`. */
export interface TableModel {
  readonly title: string;
  /** The whole statement as a recipe says it. */
  readonly written: string;
  readonly note: string | null;
  readonly sweeps: readonly SweepModel[];
  readonly columns: readonly ColumnModel[];
  readonly holds: readonly HoldModel[];
  /** Titles of the columns that a worksheet leaves blank. */
  readonly worksheet: readonly string[];
  readonly origin?: Place;
}
