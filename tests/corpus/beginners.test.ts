import { describe, expect, test } from "vitest";
import { sentence } from "../../src/diagnostics/create.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { asSentence } from "../../src/diagnostics/print-sentence.js";
import { run } from "../../src/pipeline.js";
import { findingsUpToScene } from "../helpers/coarse-run.js";
import { applyFix } from "./fixes.js";

/** A sound recipe in which each beginner's mistake is made by changing a line. */
const sound = `halfshade 1
recipe "Net mender at the loft door"

subject { height: 1.7 m }

set {
  flat wall { size: 2 x 2.4 m, at: offset(behind: 1 m) }
}

light key {
  role: key
  shape: disc(18 cm)
  full_power: 400 Ws
  calibration: metered(f/8, at: 2 m, ISO 100)
  dial: numbers(10 is full, 1 is 1 stop)
  power: full
  distance: 2.4 m
  bearing: left(35 deg)
  height: 2.2 m
}
light fill {
  role: fill
  shape: disc(90 cm)
  output: 300 lm s
  distance: 3 m
  bearing: right(30 deg)
  height: 1.7 m
}

camera {
  held: upright
  focal_length: 85 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 100
  distance: 3.2 m
  height: 1.5 m
}
`;

/** One mistake and what is answered: the one finding, and the titles of its fixes. */
interface Mistake {
  readonly what: string;
  readonly change: readonly (readonly [right: string, wrong: string])[];
  readonly add?: string;
  readonly code: string;
  readonly says: string;
  readonly help?: string;
  readonly fixes: readonly string[];
}

const mistakes: readonly Mistake[] = [
  {
    what: "a bare ISO number under the short word",
    change: [["sensitivity: ISO 100", "iso: 200"]],
    code: "property.unknown",
    says: "A `camera` has no `iso`.",
    help: "A `camera` says `sensitivity: ISO 200`.",
    fixes: ["write `sensitivity: ISO 200`"],
  },
  {
    what: "a lens by its bare number",
    change: [["focal_length: 85 mm", "lens: 85"]],
    code: "property.unknown",
    says: "A `camera` has no `lens`.",
    help: "A `camera` says `focal_length: 85 mm`.",
    fixes: ["write `focal_length: 85 mm`"],
  },
  {
    what: "white balance by its short word",
    change: [["held: upright", "held: upright\n  wb: 5600"]],
    code: "property.unknown",
    says: "A `camera` has no `wb`.",
    help: "A `camera` says `balance: 5600 K`.",
    fixes: ["write `balance: 5600 K`"],
  },
  {
    what: "a softbox by its bare size",
    change: [["shape: disc(18 cm)", "softbox: 60x90"]],
    code: "property.unknown",
    says: "A `light` has no `softbox`.",
    help: "A `light` says `shape: rectangle(60 x 90 cm)`.",
    fixes: ["write `shape: rectangle(60 x 90 cm)`"],
  },
  {
    what: "power in per cent",
    change: [["power: full", "power: 50 %"]],
    code: "power.percent",
    says: "`power: 50 %` can be read two ways: that share of the energy, or that share of the dial.",
    fixes: ["`full - 1 stop` (that share of the energy)", "`dial(5)` (that share of a dial from 0 to 10)"],
  },
  {
    what: "a floor tape given as the slant",
    change: [["distance: 2.4 m", "distance: 50 cm"]],
    code: "placement.too-near",
    says: "`key` cannot be at 2.2 m: its tape of 0.5 m starts at 1.586 m, 0.614 m away in height alone.",
    help: "If the tape ran along the floor, it is a `floor_distance`; a slant `distance` is more than 0.614 m here.",
    fixes: ["write `floor_distance`, if the tape ran along the floor"],
  },
  {
    what: "a key meant in front, placed behind",
    change: [
      ["distance: 2.4 m\n  bearing: left(35 deg)\n  height: 2.2 m", "position: (-1.2 m, 0.8 m, 2.9 m)"],
    ],
    code: "placement.behind",
    says: "`key` stands behind the subject.",
    help: "Y grows away from the camera's side, so in front of the subject it is negative. If that place is meant, leave it.",
    fixes: ["write `-0.8 m`"],
  },
  {
    what: "a bare ratio",
    change: [],
    add: "expect ratio is 3:1 within 0.3 stop\n",
    code: "result.ratio",
    says: "`ratio` has two meanings in the trade: lit to shadow, and key to fill.",
    help: "Say which is meant.",
    fixes: ["`lit_to_shadow(face)`", "`key_to_fill(key, fill)`"],
  },
  {
    what: "a whole light repeated in a variant",
    change: [],
    add: 'variant "Farther" {\n  light key {\n    role: key\n    shape: disc(18 cm)\n    distance: 4 m\n    height: 2.2 m\n  }\n  keep expectations\n}\n',
    code: "variant.repeats",
    says: "`light key` stands in the recipe already, and a variant changes one value at a time.",
    help: "Write `key.distance: 4 m`, with what is to change.",
    fixes: ["write `key.distance: 4 m`"],
  },
  {
    what: "a gel by a colour temperature",
    change: [["power: full", "power: full\n  gel: 3200 K"]],
    code: "gel.temperature",
    says: "A gel has no colour temperature: `3200 K` is what a light has.",
    fixes: ["`warm(134 mired)` (takes 5600 K to about 3200 K)"],
  },
  {
    what: "the plural of a kind",
    change: [["light fill", "lights fill"]],
    code: "block.unknown",
    says: "`lights` is not a kind of block.",
    help: "Perhaps `light`?",
    fixes: ["write `light`"],
  },
  {
    what: "a colour where a reflectance belongs",
    change: [["at: offset(behind: 1 m)", "at: offset(behind: 1 m), reflectance: white"]],
    code: "surface.unknown",
    says: "There is no surface called `white`.",
    fixes: ["write `white_board` (85 %)", "write `white_paper` (85 %)", "write `white_cloth` (75 %)"],
  },
];

function made({ change, add }: Pick<Mistake, "change" | "add">): string {
  let text = sound;
  for (const [right, wrong] of change) {
    expect(text).toContain(right);
    text = text.replace(right, wrong);
  }
  return text + (add ?? "");
}

const findings = (text: string): readonly Diagnostic[] =>
  findingsUpToScene({ name: "first.light", text }).filter((found) => found.code !== "statement.later");

test("the recipe itself is sound", () => {
  expect(findings(sound)).toEqual([]);
});

describe.each(mistakes)("$what", (mistake) => {
  const text = made(mistake);

  test("has one answer", () => {
    const found = findings(text);
    expect(found.map(({ code }) => code)).toEqual([mistake.code]);
    for (const one of found) {
      expect(asSentence(sentence(one))).toBe(mistake.says);
      if (mistake.help !== undefined) expect(asSentence(one.help)).toBe(mistake.help);
      expect(one.fixes.map(({ title }) => title)).toEqual(mistake.fixes);
    }
  });

  test("each of its fixes gives a sound recipe", () => {
    for (const fix of findings(text).flatMap(({ fixes }) => fixes)) {
      expect(findings(applyFix(text, fix)).map(({ code }) => code)).toEqual([]);
    }
  });
});

describe("answers of the report", () => {
  const reportOf = (text: string) => run({ name: "first.light", text }).evaluated?.report;

  test("the set-up in words names both tapes", () => {
    const said = reportOf(sound)?.setup.find((line) => line.startsWith("key")) ?? "";
    expect(said).toContain("2.40 m from the face (2.40 m along the floor from the mark)");
    const low = reportOf(sound.replace("height: 2.2 m", "height: 3.4 m"))?.setup ?? [];
    // 2.4 m aslant, 3.4 - 1.586 m up: 1.571 m along the floor, and the face is 0.097 m ahead of the mark.
    expect(low.find((line) => line.startsWith("key"))).toMatch(
      /2\.40 m from the face \(1\.6[45] m along the floor/,
    );
  });

  test("stops the wrong way round are called so", () => {
    const asked = "expect stops(wall, face.disc(towards: key)) is 1.5 stop within 1 stop\n";
    const [failed] = reportOf(sound + asked)?.expectations ?? [];
    expect(failed?.outcome).toBe("failed");
    expect(failed?.found).toMatch(
      /^-1\.\d+ stop, the other way round it would hold: \+ means more light on the first$/,
    );
    const turned = "expect stops(face.disc(towards: key), wall) is 1.5 stop within 1 stop\n";
    expect(reportOf(sound + turned)?.expectations[0]?.outcome).toBe("passed");
  });

  test("a difference that is wrong both ways is not called so", () => {
    const [failed] =
      reportOf(`${sound}expect stops(wall, face.disc(towards: key)) > 9 stop\n`)?.expectations ?? [];
    expect(failed?.found).not.toContain("other way round");
  });

  test("plural units are read and formatted away", () => {
    const plural = sound
      .replace("distance: 2.4 m", "distance: 2.4 metres")
      .replace("role: fill", "role: fill\n  loses: 3 stops");
    expect(findings(plural)).toEqual([]);
    const [key, fill] = run({ name: "first.light", text: plural }).recipe?.lights ?? [];
    expect(key?.distance?.written).toBe("2.4 m");
    expect(fill?.loses?.written).toBe("3 stop");
  });
});
