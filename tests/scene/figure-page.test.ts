import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { figure } from "../../src/scene/figure-numbers.js";

const page = readFileSync(new URL("../../docs/guide/figure.md", import.meta.url), "utf8");
const rows = page
  .split("\n")
  .filter((line) => line.startsWith("| "))
  .map((line) =>
    line
      .slice(1, -1)
      .split("|")
      .map((cell) => cell.trim()),
  );

test("the page of the figure publishes the numbers that are used", () => {
  const { head, neck, trunk, leg, arm } = figure;
  const expected: readonly (readonly [string, string, number])[] = [
    ["head", "semi-axis across", head.across],
    ["head", "semi-axis ahead", head.ahead],
    ["head", "semi-axis up", head.up],
    ["head", "height of the centre", head.height],
    ["neck", "radius", neck.radius],
    ["neck", "from", neck.from],
    ["neck", "to", neck.to],
    ["trunk", "semi-axis across", trunk.across],
    ["trunk", "semi-axis ahead", trunk.ahead],
    ["trunk", "semi-axis up", trunk.up],
    ["trunk", "height of the centre", trunk.height],
    ["leg", "radius", leg.radius],
    ["leg", "to either side", leg.side],
    ["leg", "height of the hip", leg.hip],
    ["leg", "height of the knee", leg.knee],
    ["leg", "height of the ankle", leg.ankle],
    ["arm", "radius", arm.radius],
    ["arm", "to either side", arm.side],
    ["arm", "height of the shoulder", arm.shoulder],
    ["arm", "length to the fingertips", arm.length],
  ];
  const parts = rows.filter((cells) => cells.length === 4 && cells[0] !== "part");
  expect(parts.map(([part, , what, value]) => [part, what, Number(value)])).toEqual(expected);
});

test("and the heights of the stations", () => {
  const heights = new Map(
    rows.filter((cells) => cells.length === 3).map(([name, height]) => [name, Number(height)]),
  );
  for (const [name, height] of Object.entries(figure.stations)) expect(heights.get(name), name).toBe(height);
});
