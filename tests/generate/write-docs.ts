import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { warningsGuide } from "../../src/report/rules/explain.js";
import { type Fence, fencesOf } from "../docs/fences.js";
import { allPages, type Page, ROOT } from "../docs/pages.js";
import { calcExample } from "../docs/run-calc.js";
import { printed } from "../docs/samples.js";
import { runExamples } from "../docs/shell.js";
import { errorsPage } from "./errors.js";
import { examplesPage } from "./examples-page.js";
import { galleryFiles } from "./gallery.js";
import { makePart } from "./page-parts.js";
import { remake } from "./regions.js";

/** Makes the made parts of every page anew, and the answers of its examples. Read the change before you commit it. */
async function refreshed(page: Page): Promise<string> {
  const text = remake(page.text, makePart);
  const fences = fencesOf(text);
  const files = new Map(
    fences.flatMap((fence) => {
      const name = fence.marks.get("file");
      return name === undefined ? [] : [[name, fence.text] as const];
    }),
  );
  const consoles = fences.filter((fence) => fence.language === "console");
  const outputs =
    consoles.length === 0
      ? []
      : await runExamples(
          consoles.map((fence) => fence.text),
          files,
        );
  const answers = new Map<Fence, string>(consoles.map((fence, index) => [fence, outputs[index] ?? ""]));
  for (const [index, fence] of fences.entries()) {
    if (fence.language === "calc") answers.set(fence, calcExample(fence.text, files));
    const next = fences[index + 1];
    if (fence.language === "ts" && next?.marks.has("prints") === true) {
      answers.set(next, await printed({ name: page.path, text: fence.text }));
    }
  }
  return [...answers.keys()]
    .sort((a, b) => b.start - a.start)
    .reduce((body, fence) => body.slice(0, fence.start) + answers.get(fence) + body.slice(fence.end), text);
}

writeFileSync(join(ROOT, "docs/errors.md"), errorsPage());
rmSync(join(ROOT, "docs/gallery"), { recursive: true, force: true });
mkdirSync(join(ROOT, "docs/gallery"));
for (const { path, text } of galleryFiles()) writeFileSync(join(ROOT, path), text);
writeFileSync(join(ROOT, "docs/guide/warnings.md"), warningsGuide());
for (const page of allPages()) {
  const text = await refreshed(page);
  if (text === page.text) continue;
  writeFileSync(join(ROOT, page.path), text);
  process.stdout.write(`${page.path}: written\n`);
}
writeFileSync(join(ROOT, "docs/examples.md"), examplesPage());
