import { writeFileSync } from "node:fs";
import { warningsGuide } from "../../src/report/rules/explain.js";

/** Writes docs/guide/warnings.md from the rules: `npx tsx tests/generate/warnings-guide.ts`. */
writeFileSync(new URL("../../docs/guide/warnings.md", import.meta.url), warningsGuide());
