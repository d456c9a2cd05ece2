/**
 * All that has to do with the text of a recipe: reading files, checking, formatting, findings. The build makes a file
 * of its own of it, which is loaded when a command works on a text; nothing here computes light.
 */
export { nearNames } from "../../check/suggest.js";
export { compile } from "../../compile.js";
export { catalogue } from "../../diagnostics/catalogue/index.js";
export { finding } from "../../diagnostics/create.js";
export { inOrder, printDiagnostic, printDiagnostics } from "../../diagnostics/print.js";
export { diagnosticJson } from "../../diagnostics/print-json.js";
export { withoutOrigins } from "../../model/plain.js";
export { writeSafely } from "../../node/safe-write.js";
export { readStream, STANDARD_INPUT } from "../../node/standard-input.js";
export { readTextFile } from "../../node/text-file.js";
export { parseFile } from "../../syntax/parse.js";
export { lex } from "../../text/lex.js";
export { canonicalUnit } from "../../units/spellings.js";
export { blocks, topKinds } from "../../vocabulary/index.js";
export { results } from "../../vocabulary/results.js";
export { valueTypes } from "../../vocabulary/value-types.js";
export { formatText } from "./formatter.js";
