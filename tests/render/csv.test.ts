import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvCell, renderCsv } from "../../src/render/csv.js";
import { renderReportCsv } from "../../src/render/report-csv.js";
import { sample } from "./sample-report.js";

/** Reads CSV as RFC 4180 says; written for this test, apart from the writer. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (let at = 0; at < text.length; ) {
    let cell = "";
    if (text[at] === '"') {
      for (at++; ; at++) {
        if (text[at] !== '"') cell += text[at];
        else if (text[at + 1] === '"') cell += text[at++];
        else break;
      }
      at++;
    } else {
      while (at < text.length && text[at] !== "," && text[at] !== "\r") cell += text[at++];
    }
    row.push(cell);
    if (text[at] === ",") at++;
    else {
      rows.push(row);
      row = [];
      at += 2;
    }
  }
  return rows;
}

const nasty = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.string({
    unit: fc.constantFrom("=", "+", "-", "@", "\t", "\r", "\n", '"', ",", "'", " ", "\ufeff", "＝", "a", "1"),
  }),
);

describe("CSV", () => {
  test("texts come back as they were, but for an apostrophe before what would be a formula", () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(nasty, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
        (rows) => {
          const back = readCsv(renderCsv(rows));
          const clean = rows.map((row) => row.map((cell) => cell.replaceAll("\0", "")));
          expect(back.map((row) => row.map((cell) => cell.replace(/^'/, "")))).toEqual(
            clean.map((row) => row.map((cell) => cell.replace(/^'/, ""))),
          );
        },
      ),
      { numRuns: 500 },
    );
  });

  test("no cell starts a formula", () => {
    fc.assert(
      fc.property(nasty, (text) => {
        const [cell] = readCsv(`${csvCell(text)}\r\n`)[0] ?? [""];
        expect((cell ?? "").replace(/^[\s\ufeff]+/, "")).not.toMatch(/^[=+\-@＝＋－＠]/);
      }),
      { numRuns: 500 },
    );
  });

  test("numbers are numbers: negative ones too, with a point, none that is not finite", () => {
    expect(csvCell(-0.333)).toBe("-0.333");
    expect(csvCell(1 / 3)).toBe("0.333333333333");
    expect(csvCell(Number.NaN)).toBe("");
    expect(csvCell(null)).toBe("");
  });
});

describe("the report as CSV", () => {
  const rows = readCsv(renderReportCsv(sample));

  test("has one table with a line of titles and six cells a row", () => {
    expect(rows[0]).toEqual(["part", "name", "quantity", "value", "unit", "note"]);
    for (const row of rows) expect(row).toHaveLength(6);
  });

  test("holds the numbers of lights, stations, results and expectations", () => {
    const value = (part: string, what: string) => rows.find((row) => row[0] === part && row[2] === what)?.[3];
    expect(value("light", "angular_size")).toBe("19.55");
    expect(value("light", "bearing")).toBe("-40.04");
    expect(value("station", "exposure")).toBe("113.25");
    expect(value("result", "reserve")).toBe("2");
    expect(value("expectation", "failed")).toBe("6.73");
    expect(value("warning", "near-field")).toBe("key is near");
  });

  test("a name that is a formula is none any more", () => {
    expect(renderReportCsv(sample)).toContain(`"'=cmd|`);
  });
});
