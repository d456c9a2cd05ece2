import { corpusTexts } from "../corpus/folder.js";
import { findingsJson, findingsOf, modelOf, tokensOf, treeOf } from "../corpus/layers.js";

/** What belongs beside each text of the corpus: paths below the corpus and their contents. */
export function corpusExpectations(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const text of corpusTexts("accept")) {
    files.set(`accept/${text.name}.tokens`, tokensOf(text));
    files.set(`accept/${text.name}.ast.json`, treeOf(text));
    files.set(`accept/${text.name}.model.json`, modelOf(text));
  }
  for (const text of corpusTexts("reject")) {
    files.set(`reject/${text.name}.diagnostics.json`, findingsJson(text, findingsOf(text)));
  }
  return files;
}
