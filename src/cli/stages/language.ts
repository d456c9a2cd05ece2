/**
 * All that has to do with the text of a recipe: reading files, checking, formatting, findings. The build makes a file
 * of its own of it, which is loaded when a command works on a text; nothing here computes light.
 */
export { compile } from "../../compile.js";
export { catalogue } from "../../diagnostics/catalogue/index.js";
export { inOrder, printDiagnostic, printDiagnostics } from "../../diagnostics/print.js";
export { diagnosticJson, jsonPlace } from "../../diagnostics/print-json.js";
export { formatText } from "../../format/format.js";
export { withoutOrigins } from "../../model/plain.js";
export { filesIn, filesOf, folderOf } from "../../node/book.js";
export { kitReader } from "../../node/kit-reader.js";
export { photoReader } from "../../node/photo-reader.js";
export { projectRoot } from "../../node/root.js";
export { writeSafely } from "../../node/safe-write.js";
export { readStream, STANDARD_INPUT } from "../../node/standard-input.js";
export { readTextFile } from "../../node/text-file.js";
export { renderAnnotations } from "../../render/annotations.js";
export { sarifLog } from "../../render/sarif.js";
export { parseFile } from "../../syntax/parse.js";
export { lex } from "../../text/lex.js";
export { dimensionWords } from "../../units/dimension.js";
export { canonicalUnit, unitTable } from "../../units/spellings.js";
export { blocks } from "../../vocabulary/index.js";
export { results } from "../../vocabulary/results.js";
export { surfaces } from "../../vocabulary/surfaces.js";
export { valueTypes } from "../../vocabulary/value-types.js";
export { pagesOfFindings } from "../check/pages.js";
