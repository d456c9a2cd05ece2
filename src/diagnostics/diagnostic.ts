import type { Place } from "../core/span.js";

/** `error`: the text does not mean anything here. `note`: it does, and there is something to know. */
export type Severity = "error" | "note";

/** Words put beside a stretch of text. */
export interface Label {
  readonly place: Place;
  readonly text: string;
}

/** One replacement of text; an empty `place` inserts. */
export interface Edit {
  readonly place: Place;
  readonly text: string;
}

/** A way out. `certain` fixes keep the meaning and may be applied unseen; the others are for a person to choose. */
export interface Fix {
  readonly title: string;
  readonly certain: boolean;
  readonly edits: readonly Edit[];
}

/** One finding about a text, the same shape from the lexer to the last check. The sentence is made by `print.ts`. */
export interface Diagnostic {
  readonly code: string;
  readonly severity: Severity;
  /** Where the reader should look first. */
  readonly place: Place;
  /** What fills the catalogue's sentence. */
  readonly args: Readonly<Record<string, string | number>>;
  /** Words for the marked place; empty when the sentence says it all. */
  readonly label: string;
  /** Other places that belong to the finding. */
  readonly related: readonly Label[];
  /** What to do, filled from the catalogue unless the finder knew better. */
  readonly help: string;
  readonly fixes: readonly Fix[];
}

/** Where a stage puts what it finds. */
export type Sink = (diagnostic: Diagnostic) => void;
