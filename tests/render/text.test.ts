import { describe, expect, test } from "vitest";
import { cells } from "../../src/diagnostics/print-width.js";
import { renderText } from "../../src/render/text.js";
import { sample } from "./sample-report.js";

const whole = renderText(sample);
const flat = (text: string) => text.replace(/\s+/g, " ");

describe("the report as text", () => {
  test("in brief keeps what decides, word by word, and names every section that it leaves out", () => {
    const brief = renderText(sample, { brief: true });
    const sectionsOf = (text: string): string[] => text.split(/\n\n(?=\S)/);
    const kept = sectionsOf(brief);
    const left = kept.pop() as string;
    const all = sectionsOf(whole);
    expect(all.filter((section) => kept.includes(section.trimEnd()) || kept.includes(section))).toHaveLength(
      kept.length,
    );
    for (const word of ["Readings", "Expectations", "Warnings", "Wishes", "Silenced", "Held"])
      expect(
        kept.some((section) => section.startsWith(word)),
        word,
      ).toBe(true);
    expect(flat(brief)).toContain(flat(sample.headline));
    for (const section of all.slice(1)) {
      const heading = (section.split("\n")[0] as string).split(":")[0] as string;
      const isKept = kept.some((one) => one.startsWith(heading));
      expect(isKept || flat(left).includes(heading), heading).toBe(true);
    }
    expect(flat(left)).toMatch(/^Left out for being brief: Set-up, Camera, /);
  });

  test("starts with the title and the headline, and ends with what is not claimed", () => {
    const lines = whole.split("\n");
    expect(lines[0]).toBe(`${sample.title}: ${sample.variant?.title}`);
    expect(lines[3]).toContain("Soft light from camera-left");
    expect(lines.at(-2)).toBe("  - What gloss mirrors is not computed.");
    const order = [
      "Set-up",
      "Camera",
      "Picture",
      "Lights",
      "Readings",
      "Shadows",
      "Results",
      "Expectations",
      "Warnings",
      "Assumed",
      "Not claimed",
    ];
    const places = order.map((heading) => lines.findIndex((line) => line.startsWith(heading)));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
  });

  test("says of a light where it is, how large it is seen, its edges, shadow, power and colour", () => {
    for (const words of [
      "2.40 m from the face, 40.0 deg to camera-left and 14.8 deg up from there, 2.20 m above the floor",
      "42.6 deg up",
      "19.6 deg (14.3 by 21.2 deg), 37 times the sun",
      "3 cm behind an edge at the aim: 9.4 mm wide, 7.4 mm of it from 10 to 90 %",
      "8.14 m long on the floor, back and 38.5 deg to camera-right",
      "1/4, 2.0 stop below full, 100 Ws of 400 Ws",
      "2110 lm s, +-0.3 stop: one meter reading",
      "5600 K",
      "0.8 stop less on the shin",
    ]) {
      expect(flat(whole)).toContain(words);
    }
  });

  test("says what is bare and what closes it, the framing, the lines, and what is sharp", () => {
    for (const words of [
      "85 % of the picture is set or subject; bare is 15 %: 10 % on the left, up to 480 px in; 5 % within the set.",
      "There the picture shows the back wall (15 %) and nothing of the room (less than 0.1 %).",
      "Each of these alone closes it: a lens of 96 mm; back 2.40 m wide.",
      "Framing: three-quarter, the subject takes 83 % of the picture's height, 21 cm of it are free above the head.",
      "Hands stay in the picture and before back | <b> up to 1.90 m above the floor.",
      "In the picture: the stand of key, 80 to 84 % from the left, 10 to 100 % from the top.",
      "left edge back | <b> 12 %, 0 % 12 %, 90 % 480, 0 480, 5400",
      "Sharp from 2.72 m to 3.13 m for a blur of 0.029 mm, from 2.82 m without end for a blur of 0.012 mm (two pixels)",
      "Diffraction draws a point as a disc of 0.0079 mm (1.3 px).",
      "jug, 3.40 m away, blurs to 0.062 mm (10.3 px).",
      "key lasts 1/300 s (t0.1), 1/1000 s (t0.5); the frame is open for 1/238 s, which loses 0.08 stop of it.",
      "key fills up in 0.60 s at this power; the next frame of the burst is 1.0 stop under.",
      "In 1/300 s potter moves 1.7 mm at 0.5 m/s: 0.050 mm on the sensor (8.3 px).",
    ]) {
      expect(flat(whole)).toContain(words);
    }
  });

  test("says of a light that gives the shin more so, not less by a negative number", () => {
    const lights = sample.lights.map((row) => ({ ...row, head_to_shin: -1.84 }));
    const text = flat(renderText({ ...sample, lights }));
    expect(text).toContain("Face to shin 1.8 stop more on the shin");
    expect(text).not.toContain("-1.8 stop");
  });

  test("says readings with their meter and against the set aperture, and why one is missing", () => {
    expect(flat(whole)).toContain("face towards key (disc) f/5.6 +0.5 +0.5 0.0 - 113");
    expect(whole).toMatch(
      /shaded_cheek {2}45 deg to the side +- +- +- +31 +0\n +of the nose line\n +\(disc\)\n/,
    );
    expect(flat(whole)).toContain("shaded_cheek 45 deg to the side of the nose line: gets no light");
  });

  test("says what the surfaces give to a shaded reading, and depth and edge of a shadow as two numbers", () => {
    expect(flat(whole)).toContain(
      "Bounced to shaded_cheek by floor 0.4 stop, wall left 0.1 stop; with floor black it would lose 0.4 stop.",
    );
    expect(flat(whole)).toContain(
      "On Of In light In shadow Depth Edge back key -0.4 -2.6 2.2 stop +-0.1 241 mm",
    );
  });

  test("says verdicts in words, with what was found, the shares and the line", () => {
    expect(flat(whole)).toContain("Expectations: 1 passed, 1 failed, 1 not decidable");
    expect(flat(whole)).toContain(
      "failed face.disc(towards: key) is f/8 within 1/3 stop found: f/5.6 +0.5 key: 100 % 0.5 stop under. said in line 32",
    );
    expect(flat(whole)).toContain("not decidable lit_to_shadow(face) <= 3:1 The shade gets no light.");
    expect(flat(whole)).toContain("wanted because: spare power for a slower day");
  });

  test("says warnings with severity, cause, remedy and caution", () => {
    expect(flat(whole)).toContain(
      "Stop: key (lamp-near-ceiling) The head of key is 8 cm under the ceiling. What to do: lower it by 17 cm Caution: The maker's manual comes first.",
    );
    expect(renderText({ ...sample, warnings: [] })).toContain("Warnings: none\n");
  });

  test("says room light beside the readings", () => {
    const stations = sample.stations.map((station) => ({ ...station, ambient: 0.9375 }));
    const words = "Room light over the shutter time: 0.938 lx s, beside the readings and in none of them.";
    expect(flat(renderText({ ...sample, stations }))).toContain(words);
    expect(whole).not.toContain("Room light");
    const adding = stations.map((station, i) => ({ ...station, ambient_adds: i === 0 ? 0.012 : 0.31 }));
    expect(flat(renderText({ ...sample, stations: adding }))).toContain(
      "in none of them; counted, it would add 0.01 to 0.31 stop to them.",
    );
    const [first, ...rest] = stations;
    const some = [first, ...rest.map((station) => ({ ...station, ambient: 0 }))].filter(
      (item) => item !== undefined,
    );
    expect(flat(renderText({ ...sample, stations: some }))).toContain(
      "0.938 lx s (face towards key), beside",
    );
  });

  test("says of a power setting only what it does not say itself", () => {
    const power = (setting: string) => {
      const [key] = sample.lights;
      const lights = key === undefined ? [] : [{ ...key, power: { ...key.power, setting } }];
      return /Power +(.*)/.exec(renderText({ ...sample, lights }))?.[1];
    };
    expect(power("1/4")).toBe("1/4, 2.0 stop below full, 100 Ws of 400 Ws");
    expect(power("full - 2 stop")).toBe("full - 2 stop, 100 Ws of 400 Ws");
    expect(power("100 Ws")).toBe("100 Ws, 2.0 stop below full, of 400 Ws");
  });

  test("lists what is silenced with its reason, and says where a line is no longer needed", () => {
    const lines = renderText(sample, { width: 100 }).split("\n");
    const at = lines.indexOf("Silenced");
    expect(lines.slice(at + 1, at + 6)).toEqual([
      "  low-sun, because: The *last* hour | is wanted.",
      "    Note: From the face this sun stands only 9 deg high.",
      "",
      "  fan, because: It shows a lamp.",
      "    It does not speak here, so the line can go.",
    ]);
  });

  test("stars what matters of what was assumed", () => {
    expect(whole).toContain("  * walls: 50 %\n  - hair: 8 %\n");
  });

  test.each([40, 52, 64, 80, 100])("keeps to %i cells, and drops no word on the way", (width) => {
    const text = renderText(sample, { width });
    for (const line of text.split("\n")) expect(cells(line)).toBeLessThanOrEqual(width);
    for (const word of ["19.6", "f/5.6", "2110 lm s", "lamp-near-ceiling", "0.5 stop under", "walls: 50 %"]) {
      expect(flat(text)).toContain(word);
    }
  });

  test("never parts a number from its unit", () => {
    for (let width = 40; width <= 90; width++) {
      expect(renderText(sample, { width })).not.toMatch(/\d\n *(?:deg|mm|cm|m|stop|K|Ws|lm s|lx s|%)\b/);
    }
  });

  test("has no colour unless it is asked for, and colour changes no word", () => {
    const painted = renderText(sample, {
      paint: (_tone, part) => `\u001b[1m${part}\u001b[22m`,
    });
    expect(painted).not.toBe(whole);
    expect(painted.replace(/\u001b\[\d+m/g, "")).toBe(whole);
    expect(whole).not.toContain("\u001b");
  });

  test("shows what names hide", () => {
    const name = "a\u001b[2J\u202e";
    const lights = sample.lights.slice(0, 1).map((light) => ({ ...light, name }));
    const text = renderText({ ...sample, title: "x\u0007\ny", lights });
    expect(text).toContain("a\\u{1b}[2J\\u{202e}");
    expect(text).toContain("x\\u{07}\\u{0a}y");
  });
});
