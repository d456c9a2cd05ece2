import { describe, expect, test } from "vitest";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { run } from "../../src/pipeline.js";

/** What a new user writes by guess, and what is offered in its place. Common slips, no source. */
const frame = (light: string, more = ""): string => `halfshade 1
recipe "Hints"
subject {}
light key { shape: disc(40 cm), calibration: metered(f/8, at: 2 m, ISO 100), distance: 2 m, height: 2 m, ${light} }
${more}`;

function found(text: string): readonly Diagnostic[] {
  return run({ name: "hints.light", text }).diagnostics.filter((row) => row.severity === "error");
}

/** The text with the first offer of the only error taken; it must then be right. */
function mended(text: string): string {
  const [only, more] = found(text);
  expect(more).toBeUndefined();
  const edit = only?.fixes[0]?.edits[0];
  if (edit === undefined) throw new Error("nothing is offered");
  const after = text.slice(0, edit.place.start) + edit.text + text.slice(edit.place.end);
  expect(found(after)).toEqual([]);
  return edit.text;
}

describe("a direction without its brackets", () => {
  test("as a bearing, before or behind its number, with and without a unit", () => {
    expect(mended(frame("bearing: left 60"))).toBe("left(60 deg)");
    expect(mended(frame("bearing: right 60 deg"))).toBe("right(60 deg)");
    expect(mended(frame("bearing: 60 left"))).toBe("left(60 deg)");
    expect(mended(frame("bearing: 60 deg right"))).toBe("right(60 deg)");
  });

  test("as a place", () => {
    const leaf = (at: string): string =>
      frame("bearing: left(30 deg)", `set { flat leaf { size: 1 x 2 m, at: ${at} } }`);
    expect(mended(leaf("right 80 cm"))).toBe("offset(right: 80 cm)");
    expect(mended(leaf("behind 1.5 m"))).toBe("offset(behind: 1.5 m)");
  });

  test("a word alone is a bearing counted from the camera's side", () => {
    expect(mended(frame("bearing: behind"))).toBe("left(180 deg)");
    expect(mended(frame("bearing: front"))).toBe("0 deg");
    expect(mended(frame("bearing: right"))).toBe("right(90 deg)");
  });
});

test("a shape that there is not lists all four", () => {
  const [only] = found(frame("bearing: left(30 deg)").replace("disc(40 cm)", "octagon(90 cm)"));
  expect(only?.help).toMatch(/disc.*rectangle.*sphere.*capsule/);
  expect(mended(frame("bearing: left(30 deg)").replace("disc(40 cm)", "octagon(90 cm)"))).toBe("disc");
});

test("a meter reading without its brackets", () => {
  const text = frame("bearing: left(30 deg)").replace("metered(f/8, at: 2 m, ISO 100)", "f/8 at 2 m");
  expect(mended(text)).toBe("metered(f/8, at: 2 m, ISO 100)");
});

test("a claim that goes on in the next line", () => {
  const claims = "expect key.height is 2 m within 1 %\nand key.distance is 2 m within 1 %\n";
  expect(mended(frame("bearing: left(30 deg)", claims))).toBe("expect");
});

describe("the reflectance of a wall", () => {
  const room = (said: string): string =>
    frame("bearing: left(30 deg)", `room { size: 5 x 6 x 3 m, walls { reflectance: ${said} } }`);

  test("may be a surface by name, and is then its share", () => {
    expect(found(room("brick"))).toEqual([]);
    const walls = run({ name: "hints.light", text: room("brick") }).recipe?.room?.parts ?? [];
    expect(walls).toContainEqual(
      expect.objectContaining({
        block: "walls",
        reflectance: expect.objectContaining({ value: 0.2, unit: "1" }),
      }),
    );
  });

  test("by a name that there is not lists the surfaces", () => {
    const [only] = found(room("plaster"));
    expect(only?.code).toBe("surface.unknown");
    expect(JSON.stringify(only)).toMatch(/white_paint.*brick/);
  });
});
