import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { pdfMaker } from "../../src/node/pdf.js";
import { renderSheet } from "../../src/render/sheet-html.js";
import { sheetPages, sheetSize } from "../../src/render/sheet-pages.js";
import { buildReport } from "../../src/report/build.js";
import { lightsOf } from "../../src/report/plan.js";
import { daySheet } from "../../src/report/sheet/sheet.js";
import { buildScene } from "../../src/scene/build.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { exampleTexts } from "../helpers/example-texts.js";
import { withOurKits } from "../helpers/kits.js";

const maker = pdfMaker();
if ("problem" in maker) throw new Error(maker.problem);

const recipes = exampleTexts
  .filter(({ name }) => !name.includes("/lessons/"))
  .flatMap(({ name, text }) => {
    const { recipe } = compile({ name, text }, withOurKits);
    return recipe?.kind === "recipe" ? [[name, recipe] as const] : [];
  });

const count = (html: string, what: RegExp): number => html.match(what)?.length ?? 0;

describe.each(recipes)("the sheet of %s", (_, recipe) => {
  const scene = buildScene(recipe, () => undefined);
  const light = sceneLight(scene, "look");
  const plan = { recipe, scene, light };
  const sheet = daySheet(plan, buildReport(recipe, scene, light));
  const html = renderSheet(sheet, "a4");

  test("fits on one page of either paper, in letters that can be read", () => {
    for (const paper of ["a4", "letter"] as const) {
      expect(sheetPages(sheet, paper, maker)).toHaveLength(1);
      expect(7.8 * sheetSize(sheet, paper).letters).toBeGreaterThan(7);
      const { letters } = sheetSize(sheet, paper);
      expect(renderSheet(sheet, paper)).toContain(`font: ${(7.8 * letters).toFixed(2)}pt`);
    }
  });

  test("has all that the day takes", () => {
    // A stand for each head, with a bag, and a counterweight for each boom.
    const stands = lightsOf(scene);
    const { kit } = sheet;
    for (const { name, stand } of stands) {
      const line = kit.find((row) => row.startsWith(`stand for ${name}:`)) ?? "";
      expect(line).toMatch(/\bbag\b/);
      if (stand !== null && stand.boom !== null) expect(line).toContain("counterweight of");
      expect(html).toContain(line.split(":")[1]);
    }
    // A lamp's five lengths and three for each piece of the set stand in feet and inches too, the camera's in brackets.
    for (const lamp of sheet.lamps)
      for (const length of [lamp.fromMark, lamp.fromLens, lamp.height, lamp.slant])
        if (length !== null) {
          expect(length.feet).toMatch(/^\d+ (ft|in)|^\d+\/\d+ in/);
          expect(html).toContain(`${length.metric}<small>${length.feet}</small>`);
        }
    // Each reading has a field for what is read, one for the difference, and a box to tick.
    expect(count(html, /class="blank"/g)).toBe(2 * sheet.readings.length);
    expect(count(html, /<span class="tick">/g)).toBe(sheet.readings.length + kit.length);
    if (sheet.readings.length > 0)
      for (const title of ["Actual", "Off by"]) expect(html).toContain(`>${title}</th>`);
    else expect(html).toContain("gets any light");
    expect(sheet.cautions.length).toBeGreaterThanOrEqual(2);
    expect(html).toContain("Take care");
    expect(html).toContain("licensed person");
    // What tape matters most is told by what it does to the light on a face.
    const hasFace = scene.stations.some(({ name }) => name === "face" || name.endsWith(".face"));
    expect(sheet.mattersMost !== null).toBe(hasFace);
    if (hasFace) expect(html).toContain("The tape that matters most:");
  });
});
