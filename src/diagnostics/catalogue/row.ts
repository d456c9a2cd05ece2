import type { Severity } from "../diagnostic.js";

/** One kind of finding. `{words}` in braces are filled from the finding's arguments. */
export interface CatalogueRow {
  readonly severity: Severity;
  /** A sentence that stands alone, without a full stop; names from the text in `backticks`. */
  readonly message: string;
  /** What to do, as a sentence; empty when the fixes say it. */
  readonly help: string;
  /** The longer explanation printed by `halfshade explain CODE`: why it is so, with an example of the right way. */
  readonly page: string;
}
