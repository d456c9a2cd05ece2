import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { decode } from "fast-png";
import { afterAll, expect, test } from "vitest";
import { halfshade } from "./fake-machine.js";
import { sound } from "./recipes.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-preview-"));
afterAll(() => rmSync(folder, { recursive: true }));
const recipe = join(folder, "a.light");
writeFileSync(recipe, sound);

test("a preview beside the sun: two pictures in one file, and what was done on the console", async () => {
  const alone = join(folder, "alone.png");
  const pair = join(folder, "pair.png");
  expect(await halfshade(["preview", recipe, "--pixels", "40", "-o", alone])).toMatchObject({
    exit: 0,
    out: "",
  });
  const found = await halfshade(["preview", recipe, "--pixels", "40", "--beside", "sun", "-o", pair]);
  expect(found).toMatchObject({ exit: 0, err: "" });
  expect(found.out).toContain("clear sun of 0.53 deg");
  const [one, two] = [alone, pair].map((file) => decode(readFileSync(file)));
  if (one === undefined || two === undefined) throw new Error("no picture");
  expect(two.width).toBe(2 * one.width + 4);
  expect(two.height).toBeGreaterThan(one.height);
  for (let row = 0; row < one.height; row++)
    expect(two.data.slice(row * two.width, row * two.width + one.width)).toEqual(
      one.data.slice(row * one.width, (row + 1) * one.width),
    );
}, 60_000);

test("what cannot be put beside it is said, and nothing is written", async () => {
  const target = join(folder, "none.png");
  const wish = await halfshade(["preview", recipe, "--pixels", "40", "--beside", "intent", "-o", target]);
  expect(wish).toMatchObject({ exit: 2, out: "" });
  expect(wish.err).toContain("pass_for");
  const moon = await halfshade(["preview", recipe, "--beside", "moon", "-o", target]);
  expect(moon.exit).toBe(2);
  expect(moon.err).toContain("overcast");
  expect(existsSync(target)).toBe(false);
}, 60_000);

test("sheet and figure as PDF: into a file, the same bytes twice, and never to a terminal", async () => {
  for (const command of ["sheet", "draw"]) {
    const [one, two] = ["one", "two"].map((name) => join(folder, `${command}-${name}.pdf`));
    if (one === undefined || two === undefined) throw new Error("no names");
    expect(await halfshade([command, recipe, "-o", one])).toMatchObject({ exit: 0, out: "", err: "" });
    await halfshade([command, recipe, "--format", "pdf", "-o", two]);
    expect(readFileSync(one).subarray(0, 5).toString()).toBe("%PDF-");
    expect(readFileSync(one).equals(readFileSync(two))).toBe(true);
    const bare = await halfshade([command, recipe, "--format", "pdf"]);
    expect(bare).toMatchObject({ exit: 2, out: "" });
    expect(bare.err).toContain(".pdf");
  }
}, 60_000);
