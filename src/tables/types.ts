/** One column of a table. */
export interface TableColumn {
  readonly title: string;
  /** The unit of the column's numbers: one of the language's, `f`, `ISO`, `1`, or `text` where it has no numbers. */
  readonly unit: string;
  /** Whether the unit was asked for, so that cells show the number alone. */
  readonly asked: boolean;
  /** Whether it shows what is varied. */
  readonly swept: boolean;
  /** Whether a worksheet leaves it blank. */
  readonly blank: boolean;
}

/** One cell. */
export interface TableCell {
  /** The number in the unit of the column; null without one. */
  readonly value: number | null;
  /** As it is read out, unit included; null where there is nothing to say. */
  readonly text: string | null;
  /** Why there is no value. */
  readonly reason: string | null;
}

/** One row: the cells of what is varied first, then those of the results. */
export type TableRow = readonly TableCell[];

/** A table with what is known before any row is worked out. */
export interface TableHead {
  readonly title: string;
  /** Of the recipe. */
  readonly recipe: string;
  readonly note: string | null;
  readonly columns: readonly TableColumn[];
  readonly rows: number;
}

/** A table whose rows are worked out as they are asked for, in order, each once. */
export interface Table extends TableHead {
  /** Works the rows out one by one. */
  readonly work: () => Generator<TableRow, void>;
}
