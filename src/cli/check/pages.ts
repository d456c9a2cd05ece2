import { catalogue } from "../../diagnostics/catalogue/index.js";
import type { CatalogueRow } from "../../diagnostics/catalogue/row.js";
import type { SarifRule } from "../../render/sarif.js";

/** What every code of a finding means, and what becomes of expectations. */
export function pagesOfFindings(): readonly SarifRule[] {
  const rows: Readonly<Record<string, CatalogueRow>> = catalogue;
  return [
    ...Object.entries(rows).map(([id, row]) => ({ id, text: row.page })),
    { id: "expectation.failed", text: "An `expect` of the recipe does not hold." },
    {
      id: "expectation.undecidable",
      text: "An `expect` of the recipe cannot be decided, which is not a pass.",
    },
    { id: "hold.missed", text: "A variant cannot hold what a `hold` asks for, or not quite." },
  ];
}
