/** A stretch of a file as programs count it: lines and columns from 1, columns in UTF-16 units, the end exclusive. */
export interface RemarkPlace {
  readonly file: string;
  /** Null where the remark is about the file as a whole. */
  readonly line: number | null;
  readonly column: number | null;
  readonly end_line: number | null;
  readonly end_column: number | null;
}

/** Something to say about a file, for programs that show it beside the text. */
export interface Remark {
  /** The code of a finding or warning, or what became of an expectation. */
  readonly code: string;
  readonly level: "error" | "warning" | "note";
  /** Whole sentences. */
  readonly message: string;
  readonly place: RemarkPlace;
  readonly related: readonly (RemarkPlace & { readonly text: string })[];
  readonly fixes: readonly {
    readonly title: string;
    readonly edits: readonly (RemarkPlace & { readonly text: string })[];
  }[];
}
