import { toJSONSchema } from "zod";
import { recipeSchema } from "../../src/model/schema.js";
import { reportSchema } from "../../src/report/schema/report.js";

/** The report's schema as JSON Schema 2020-12. */
export function reportSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(reportSchema), null, 2)}\n`;
}

/** The checked recipe's schema as JSON Schema 2020-12. */
export function recipeSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(recipeSchema), null, 2)}\n`;
}
