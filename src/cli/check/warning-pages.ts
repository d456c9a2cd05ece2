import type { SarifRule } from "../../render/sarif.js";
import { explainWarning, warningCodes } from "../../report/rules/explain.js";

/** What every warning means. */
export const pagesOfWarnings = (): readonly SarifRule[] =>
  warningCodes.map((id) => ({ id, text: explainWarning(id) ?? id }));
