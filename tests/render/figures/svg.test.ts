import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import { fontFile } from "../../../src/node/letters.js";
import { pngOf } from "../../../src/node/png.js";
import { renderSvg } from "../../../src/render/figures/svg.js";
import { buildReport } from "../../../src/report/build.js";
import { drawFigure, figureTable } from "../../../src/report/figures/figures.js";
import { buildScene } from "../../../src/scene/build.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { exampleTexts } from "../../helpers/example-texts.js";
import { withOurKits } from "../../helpers/kits.js";

/** Everything a figure may hold: elements with their attributes. */
const allowed: ReadonlyMap<string, readonly string[]> = new Map([
  ["svg", ["xmlns", "width", "height", "viewBox", "role", "font-family"]],
  ["title", []],
  ["desc", []],
  ["path", ["d", "fill", "stroke", "stroke-width", "stroke-linejoin", "stroke-dasharray"]],
  [
    "text",
    [
      "x",
      "y",
      "font-size",
      "text-anchor",
      "fill",
      "stroke",
      "stroke-width",
      "stroke-linejoin",
      "paint-order",
      "transform",
    ],
  ],
]);

/** Reads an SVG by a strict XML parser; the texts in it. */
function read(svg: string): { readonly texts: string[]; readonly title: string } {
  const parser = new SaxesParser();
  const texts: string[] = [];
  let title = "";
  const open: string[] = [];
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const known = allowed.get(name);
    expect(known, name).toBeDefined();
    for (const [key, value] of Object.entries(attributes)) {
      expect(known, `${name} ${key}`).toContain(key);
      expect(String(value)).not.toMatch(/NaN|Infinity|undefined|url\(|javascript/);
    }
    open.push(name);
  });
  parser.on("text", (text) => {
    if (open.at(-1) === "text") texts.push(text);
    if (open.at(-1) === "title") title += text;
  });
  parser.on("closetag", () => {
    open.pop();
  });
  parser.write(svg).close();
  return { texts, title };
}

const figured = (name: string, text: string) => {
  const { recipe } = compile({ name, text }, withOurKits);
  if (recipe === null || recipe.kind !== "recipe") return null;
  const scene = buildScene(recipe, () => undefined);
  const light = sceneLight(scene);
  const plan = { recipe, scene, light };
  return { plan, report: buildReport(recipe, scene, light) };
};

const hostile = `halfshade 1
recipe "</title><script>alert(1)</script> & \\u{202e} x"
subject { height: 1.7 m }
light key { shape: disc(20 cm), calibration: metered(f/8, at: 2 m, ISO 100), power: 1/2, distance: 2 m, bearing: left(30 deg), height: 2 m }
`;

describe("a figure as SVG", () => {
  test.each(exampleTexts.filter(({ name }) => !/lessons|kit|first-evening/.test(name)))(
    "every figure of $name is plain XML of the few things allowed",
    ({ name, text }) => {
      const whole = figured(name, text);
      if (whole === null) return;
      for (const { name: figure } of figureTable) {
        const drawing = drawFigure(figure, whole);
        if (typeof drawing === "string") continue;
        for (const theme of ["light", "dark"] as const) {
          const svg = renderSvg(drawing, { width: 960, theme });
          const { title, texts } = read(svg);
          expect(title).toBe(drawing.title);
          // Long notes are broken into lines.
          expect(texts.join(" ")).toContain(drawing.notes[0]);
        }
        expect(renderSvg(drawing, { width: 960, theme: "light" })).toBe(
          renderSvg(drawing, { width: 960, theme: "light" }),
        );
      }
    },
  );

  test("a hostile title stays a text", () => {
    const whole = figured("x.light", hostile);
    const drawing = whole === null ? "" : drawFigure("plan", whole);
    if (typeof drawing === "string") throw new Error("no plan");
    const { title } = read(renderSvg(drawing, { width: 400, theme: "light" }));
    expect(title).toContain("</title><script>");
  });

  test("as PNG it is as wide as asked, and letters are drawn", () => {
    const whole = figured("x.light", hostile);
    const drawing = whole === null ? "" : drawFigure("plan", whole);
    if (typeof drawing === "string") throw new Error("no plan");
    expect(fontFile()).not.toBeNull();
    const png = pngOf(renderSvg(drawing, { width: 960, theme: "light" }), 640);
    if ("problem" in png) throw new Error(png.problem);
    const view = new DataView(png.bytes.buffer, png.bytes.byteOffset);
    expect([...png.bytes.subarray(1, 4)]).toEqual([0x50, 0x4e, 0x47]);
    expect(view.getUint32(16)).toBe(640);
    const bare = { ...drawing, marks: drawing.marks.filter(({ kind }) => kind !== "label") };
    const without = pngOf(renderSvg(bare, { width: 960, theme: "light" }), 640);
    expect("bytes" in without && without.bytes.length).not.toBe(png.bytes.length);
  });
});
