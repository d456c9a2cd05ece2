import { compile } from "../../src/compile.js";
import { corpusTexts } from "../corpus/folder.js";
import { coarseRun } from "../helpers/coarse-run.js";
import { withOurKits } from "../helpers/kits.js";

/**
 * Works out the whole corpus with nothing in the language's own objects that could be changed, in a process of its
 * own: names of the user's must never become keys of anything shared. Prints the number of texts.
 */
const texts = [...corpusTexts("accept"), ...corpusTexts("reject")];
coarseRun({ name: "warm.light", text: texts[0]?.text ?? "" });
for (const shared of [Object, Array, Map, Set, String, Number, Function, RegExp])
  Object.freeze(shared.prototype);
let count = 0;
for (const { name, text } of texts) {
  for (const changed of [
    text,
    text.replaceAll(/\b(key|lantern|back|shed|hand)\b/g, "`__proto__`"),
    text.replaceAll(/\b(key|lantern|back|shed|hand)\b/g, "constructor"),
  ]) {
    // The longer recipes go all the way; the short ones hold nothing that these do not.
    if (name.startsWith("recipe-")) coarseRun({ name: `${name}.light`, text: changed }, withOurKits);
    else compile({ name: `${name}.light`, text: changed }, withOurKits);
    count++;
  }
}
if (Object.keys(Object.prototype).length > 0) throw new Error("something was left in Object.prototype");
process.stdout.write(`${count}\n`);
