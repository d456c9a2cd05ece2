import { corpusExpectations } from "./corpus.js";
import { ebnf } from "./ebnf.js";
import {
  comparisonSchemaJson,
  recipeSchemaJson,
  reportSchemaJson,
  sessionSchemaJson,
  tableSchemaJson,
} from "./schemas.js";
import { tokensJson } from "./tokens.js";
import { vocabularyJson } from "./vocabulary.js";

/** Everything in `grammar/` that is made from the program: paths below it, and how each is made. */
export const grammarFiles: ReadonlyMap<string, () => string> = new Map([
  ["halfshade.ebnf", ebnf],
  ["tokens.json", tokensJson],
  ["vocabulary.json", vocabularyJson],
  ["recipe.schema.json", recipeSchemaJson],
  ["report.schema.json", reportSchemaJson],
  ["comparison.schema.json", comparisonSchemaJson],
  ["session.schema.json", sessionSchemaJson],
  ["table.schema.json", tableSchemaJson],
]);

/** All made files of `grammar/`, those beside the corpus among them. */
export function allGrammarFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const [path, make] of grammarFiles) files.set(path, make());
  for (const [path, text] of corpusExpectations()) files.set(`corpus/${path}`, text);
  return files;
}
