import { toJSONSchema } from "zod";
import { recipeSchema } from "../../src/model/schema.js";
import { comparisonSchema } from "../../src/report/schema/comparison.js";
import { reportSchema } from "../../src/report/schema/report.js";
import { sessionSchema } from "../../src/report/schema/session.js";
import { tableSchema } from "../../src/report/schema/table.js";

/** The report's schema as JSON Schema 2020-12. */
export function reportSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(reportSchema), null, 2)}\n`;
}

/** The checked recipe's schema as JSON Schema 2020-12. */
export function recipeSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(recipeSchema), null, 2)}\n`;
}

/** The schema of comparisons as JSON Schema 2020-12. */
export function comparisonSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(comparisonSchema), null, 2)}\n`;
}

/** The schema of lesson tables as JSON Schema 2020-12. */
export function tableSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(tableSchema), null, 2)}\n`;
}

/** The schema of sessions as JSON Schema 2020-12. */
export function sessionSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(sessionSchema), null, 2)}\n`;
}
