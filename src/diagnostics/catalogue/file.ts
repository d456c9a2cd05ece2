import type { CatalogueRow } from "./row.js";

/** Findings of the file stage. */
export const fileFindings = {
} as const satisfies Record<string, CatalogueRow>;
