import { describe, expect, test } from "vitest";
import type { PaperPage } from "../../src/core/paper.js";
import { pdfMaker } from "../../src/node/pdf.js";
import { renderSheet } from "../../src/render/sheet-html.js";
import { sheetPages } from "../../src/render/sheet-pages.js";
import { buildReport } from "../../src/report/build.js";
import { type DaySheet, daySheet } from "../../src/report/sheet/sheet.js";
import { m } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { dish, planOf, room } from "../helpers/plan.js";

const maker = pdfMaker();
if ("problem" in maker) throw new Error(maker.problem);

const plan = planOf({
  room,
  subjects: [block("subject", null, { height: m(1.7) })],
  lights: [dish({ kind: "flash" }), dish({ height: m(1.2) }, "low_and_far_away_lamp")],
});
const sheet = daySheet(plan, buildReport(plan.recipe, plan.scene, plan.light));

/** The letters of all texts, sorted: what is lost or said twice changes them, where lines break does not. */
const letters = (text: string): string => [...text.replace(/\s+/g, "")].sort().join("");

const textOf = (pages: readonly PaperPage[]): string =>
  pages.flatMap(({ items }) => items.map((item) => (item.kind === "text" ? item.text : ""))).join(" ");

const htmlText = (html: string): string =>
  html
    .replace(/<style>.*?<\/style>|<title>.*?<\/title>|<desc>.*?<\/desc>/gs, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/&#x27;|&#39;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&amp;/g, "&");

/** A sheet with more of everything than a page holds. */
const long: DaySheet = {
  ...sheet,
  readings: Array.from({ length: 150 }, (_, i) => ({
    where: `place ${i}`,
    meter: "disc to key",
    reads: "f/8",
  })),
  kit: Array.from(
    { length: 120 },
    (_, i) => `thing ${i}, which is so long that it takes two lines of its column`,
  ),
  build: Array.from({ length: 100 }, (_, i) => `piece ${i}`),
};

describe("the sheet on pages of paper", () => {
  test.each(["a4", "letter"] as const)(
    "on %s it says letter by letter what the sheet as HTML says",
    (paper) => {
      const pages = sheetPages(sheet, paper, maker);
      expect(pages).toHaveLength(1);
      const bullets = (sheet.build.length + sheet.warnings.length + sheet.cautions.length) as number;
      expect(letters(`${htmlText(renderSheet(sheet, paper))}${"•".repeat(bullets)}`)).toBe(
        letters(textOf(pages)),
      );
    },
  );

  test("what does not fit goes on to further pages, and nothing is lost or drawn outside", () => {
    const pages = sheetPages(long, "a4", maker);
    expect(pages.length).toBeGreaterThan(2);
    const all = textOf(pages);
    for (const { where } of long.readings) expect(all).toContain(`${where} `);
    for (let i = 0; i < 120; i++) expect(all).toContain(`thing ${i},`);
    for (let i = 0; i < 100; i++) expect(all).toMatch(new RegExp(`piece ${i}\\b`));
    expect(all).toContain(`page 2 of ${pages.length}`);
    for (const { width, height, items } of pages)
      for (const item of items) {
        if (item.kind !== "text") continue;
        const [x, y] = item.at;
        expect(x).toBeGreaterThan(0);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(height);
        if (item.anchor === "start" && item.turn === 0)
          expect(x + maker.widthOf(item.text, item.size), item.text).toBeLessThan(width);
      }
    // The head of the table of readings stands on each page that it runs to.
    const pagesOfReadings = pages.filter(({ items }) =>
      items.some((item) => item.kind === "text" && item.text.startsWith("place ")),
    );
    for (const page of pagesOfReadings) expect(textOf([page])).toContain("Actual");
  });

  test("figures are to the scale that stands below them", () => {
    const [page] = sheetPages(sheet, "a4", maker);
    const scale = Number(/From above, 1:(\d+)/.exec(textOf([page as PaperPage]))?.[1]);
    // The tape along the back wall is as long as the room is wide: 72 points to 25.4 mm.
    const wide = ((plan.scene.room?.width ?? 0) * 72) / 0.0254 / scale;
    const lengths = (page as PaperPage).items.flatMap((item) =>
      item.kind === "path" && !item.closed && item.rings.length === 3
        ? item.rings.slice(0, 1).map((ring) => {
            const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = ring;
            return Math.hypot(bx - ax, by - ay);
          })
        : [],
    );
    expect(Math.min(...lengths.map((length) => Math.abs(length - wide)))).toBeLessThan(0.01);
  });

  test("signs without letters are owned up to", () => {
    const odd = sheetPages({ ...sheet, title: "\u9418" }, "a4", maker);
    expect(textOf(odd)).toContain("printed as boxes");
    expect(textOf(sheetPages(sheet, "a4", maker))).not.toContain("printed as boxes");
  });
});

describe("pages as PDF", () => {
  test("the same pages give the same bytes, without a date, with our letters inside", async () => {
    const pages = sheetPages(sheet, "a4", maker);
    const one = Buffer.from(await maker.write(pages, sheet.title));
    const two = Buffer.from(await maker.write(sheetPages(sheet, "a4", maker), sheet.title));
    expect(one.equals(two)).toBe(true);
    const plain = one.toString("latin1");
    expect(plain.slice(0, 5)).toBe("%PDF-");
    expect(plain).not.toContain("CreationDate");
    expect(plain).toContain("/FontFile2");
    expect(plain).toContain("/ToUnicode");
    expect(plain.match(/\/Type \/Page\b/g)).toHaveLength(1);
    // Level and upright as the paper is: 595.28 x 841.89 points.
    expect(plain).toContain("/MediaBox [0 0 595.28 841.89]");
  });
});
