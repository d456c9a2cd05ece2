import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { allGrammarFiles } from "./grammar-files.js";

/** Makes every made file of `grammar/` anew: `npx tsx tests/generate/all.ts`. Read the change before you commit it. */
const folder = new URL("../../grammar/", import.meta.url).pathname;
const files = allGrammarFiles();
let written = 0;
for (const [path, text] of files) {
  if (current(folder + path) === text) continue;
  writeFileSync(folder + path, text);
  written++;
}
// What was made for a text that is gone goes too.
for (const half of ["accept", "reject"]) {
  for (const name of readdirSync(`${folder}corpus/${half}`)) {
    if (!name.endsWith(".light") && !files.has(`corpus/${half}/${name}`))
      rmSync(`${folder}corpus/${half}/${name}`);
  }
}
process.stdout.write(`${written} of ${files.size} files of grammar/ changed\n`);

function current(path: string): string | null {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return null;
  }
}
