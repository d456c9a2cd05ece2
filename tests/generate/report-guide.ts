import { readFileSync, writeFileSync } from "node:fs";
import { withReport } from "../report/report-guide.js";

/** Makes the cuts of a report in docs/guide/report.md anew: `npx tsx tests/generate/report-guide.ts`. */
const page = new URL("../../docs/guide/report.md", import.meta.url);
writeFileSync(page, withReport(readFileSync(page, "utf8")));
