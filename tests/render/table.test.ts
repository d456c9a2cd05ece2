import { expect, test } from "vitest";
import { layTable } from "../../src/render/table.js";

const columns = [
  { title: "Where", align: "left" },
  { title: "Meter", align: "left" },
  { title: "Reads", align: "right" },
] as const;

test("the loose column is broken between words, and never a name in it", () => {
  const rows = [["face", "towards north_window_of_the_room (disc)", "f/8"]];
  expect(layTable(columns, rows, 60, 1)).toEqual([
    "Where  Meter                                    Reads",
    "face   towards north_window_of_the_room (disc)    f/8",
  ]);
  expect(layTable(columns, rows, 40, 1)).toEqual([
    "Where  Meter                       Reads",
    "face   towards                       f/8",
    "       north_window_of_the_room",
    "       (disc)",
  ]);
  // 24 cells of the name, 14 of the others and 4 between them.
  expect(layTable(columns, rows, 38, 1)).not.toBeNull();
  expect(layTable(columns, rows, 37, 1)).toBeNull();
});
