import { expect, test } from "vitest";
import { plain } from "../../src/diagnostics/print-paint.js";
import { renderSessionText } from "../../src/render/session.js";
import { day, metered, places, shed } from "../report/session/days.js";

/** A day on which the key gave a stop less than its dial says. */
const at = [...places, "face.disc(towards: fill, only: fill)"];
const report = day(shed, metered(shed.replace("full - 2 stop", "full - 3 stop"), at));
const whole = renderSessionText(report, { width: 100, paint: plain });
const brief = renderSessionText(report, { width: 100, paint: plain, brief: true });

test("a brief session keeps the headline, what is to be acted on, why, and what to do", () => {
  const kept = report.readings.filter(({ verdict }) => verdict === "act" || verdict === "note");
  const near = report.readings.filter((row) => !kept.includes(row));
  expect(kept.length).toBeGreaterThan(0);
  expect(near.length).toBeGreaterThan(0);
  for (const { what } of report.readings) expect(whole).toContain(`  ${what} `);
  for (const { what } of kept) expect(brief).toContain(`  ${what} `);
  for (const { what } of near) expect(brief).not.toContain(`  ${what} `);
  for (const title of ["Why", "What to do"]) {
    const section = (text: string): string => text.split(`\n${title}\n`)[1]?.split("\n\n")[0] ?? "";
    expect(section(brief)).not.toBe("");
    expect(section(brief)).toBe(section(whole));
  }
});

test("a brief session says what it leaves out", () => {
  expect(whole).toContain("What the lamps give");
  expect(whole).toContain("Not claimed");
  expect(whole).not.toContain("Left out");
  expect(brief).not.toContain("Not claimed");
  const near = report.readings.filter(({ verdict }) => verdict === "same" || verdict === "near").length;
  expect(brief.trimEnd().split("\n").at(-1)).toBe(
    `Left out for being brief: ${near} ${near === 1 ? "reading" : "readings"} near the plan, what the lamps give, what is not claimed.`,
  );
});

test("a brief session on which nothing is off has nothing to say but that", () => {
  const fine = day(shed, metered(shed, places));
  const text = renderSessionText(fine, { width: 100, paint: plain, brief: true });
  expect(text).toContain("Every reading is what was planned.");
  expect(text).not.toContain("Why");
});
