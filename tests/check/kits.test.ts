import { describe, expect, test } from "vitest";
import { isKitPath } from "../../src/check/kits/path.js";
import type { ReadKit } from "../../src/check/kits/read.js";
import { joinNames, kitsAmong } from "../../src/check/kits/texts.js";
import { compile } from "../../src/compile.js";
import { MAX_KIT_BYTES, MAX_KIT_DEPTH, MAX_KITS } from "../../src/core/limits.js";
import { sentence } from "../../src/diagnostics/create.js";
import { withoutOrigins } from "../../src/model/plain.js";
import type { Recipe } from "../../src/model/types.js";
import { run } from "../../src/pipeline.js";

const kit = (name: string, body: string): string => `halfshade 1\nkit "${name}"\n\n${body}\n`;
const rest = `
subject { height: 1.7 m }
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
const recipe = (body: string): string => `halfshade 1\nrecipe "A boat builder"\n${body}\n${rest}`;
const place = "distance: 2 m, bearing: left(30 deg), height: 2 m";

/** Findings as `file:code`, of a recipe with the texts of kits beside it. */
function found(text: string, kits: Readonly<Record<string, string>>): readonly string[] {
  const { diagnostics } = compile(
    { name: "a.light", text },
    { read: kitsAmong(new Map(Object.entries(kits))) },
  );
  return diagnostics.map(({ place, code }) => `${place.file} ${code}`);
}

function modelOf(text: string, kits: Readonly<Record<string, string>>): Recipe {
  const { recipe: model, diagnostics } = compile(
    { name: "a.light", text },
    { read: kitsAmong(new Map(Object.entries(kits))) },
  );
  expect(diagnostics.map(({ code }) => code)).toEqual([]);
  if (model === null) throw new Error("no model");
  return model;
}

describe("what a kit brings in", () => {
  const body = `let wide = 60 cm
define light lamp { shape: disc(wide), output: 900 lm s, gel: straw }
define gel straw { warms: 60 mired }
define room shed { size: 5 x 6 x 3 m, walls { reflectance: 70 % } }`;
  const uses = `use lamp, shed from "./kit.light"\nlight key like lamp { ${place} }\nroom like shed {}`;

  test("is what the same definitions in the file itself are", () => {
    const own = modelOf(recipe(`${body}\nlight key like lamp { ${place} }\nroom like shed {}`), {});
    const used = modelOf(recipe(uses), { "kit.light": kit("Shed", body) });
    const both = [own, used].map((model) => ({
      ...(withoutOrigins(model) as Recipe),
      uses: [],
      lets: [],
      definitions: [],
    }));
    expect(both[1]).toEqual(both[0]);
    expect(used.uses).toEqual([{ name: "./kit.light", written: 'use lamp, shed from "./kit.light"' }]);
  });

  test("means what its own file says, whatever the recipe calls by the same names", () => {
    const text = `let wide = 10 cm\ndefine gel straw { cools: 200 mired }\n${uses.replace("height: 2 m", "height: 2 m + wide")}`;
    const model = modelOf(recipe(`${text}\nlight rim like lamp { ${place}, gel: straw }`), {
      "kit.light": kit("Shed", body),
    });
    const [key, rim] = model.lights;
    expect(key?.shape).toMatchObject({ kind: "disc", diameter: { value: 0.6 } });
    expect(key?.height?.value).toBe(2.1);
    expect(key?.gel?.items).toMatchObject([{ tint: "warm", shift: { value: 60 } }]);
    expect(rim?.gel?.items).toMatchObject([{ tint: "cool", shift: { value: 200 } }]);
  });

  test("is calibrated with the modifier of its own file, not with another of that name", () => {
    const heads = kit(
      "Heads",
      `define light head { shape: disc(18 cm), full_power: 300 Ws, calibration: metered(f/8, at: 2 m, ISO 100), calibration with hood: metered(f/32, at: 2 m, ISO 100) }
define modifier hood { shape: disc(30 cm) }`,
    );
    const own = `use head from "./heads.light"\ndefine modifier hood { shape: disc(90 cm) }\nlight key like head with hood { ${place} }`;
    expect(found(recipe(own), { "heads.light": heads })).toEqual(["a.light calibration.pair"]);
    const used = `use head, hood from "./heads.light"\nlight key like head with hood { ${place} }`;
    const [key] = modelOf(recipe(used), { "heads.light": heads }).lights;
    expect(key?.calibration?.written).toContain("f/32");
  });

  test("may come by two ways, and through kits in other folders", () => {
    const model = modelOf(
      recipe(
        `use lamp from "./kits/lamps.light"\nuse sail from "./cloth/sails.light"\nlight key like lamp { ${place} }\nlight wide like lamp with sail { calibration with sail: metered(f/4, at: 2 m, ISO 100), ${place} }`,
      ),
      {
        "kits/lamps.light": kit(
          "Lamps",
          'use sail from "../cloth/sails.light"\ndefine light bare { shape: disc(20 cm), full_power: 300 Ws, calibration: metered(f/8, at: 2 m, ISO 100) }\ndefine light lamp like bare with sail { calibration with sail: metered(f/5.6, at: 2 m, ISO 100) }',
        ),
        "cloth/sails.light": kit("Cloth", "define modifier sail { shape: rectangle(1 x 2 m) }"),
      },
    );
    expect(model.lights.map((light) => light.shape?.kind)).toEqual(["rectangle", "rectangle"]);
    expect(model.lights.map((light) => light.calibration?.written)).toEqual([
      "metered(f/5.6, at: 2 m, ISO 100)",
      "metered(f/4, at: 2 m, ISO 100)",
    ]);
  });

  test("is worked out like any other", () => {
    const { evaluated } = run(
      { name: "a.light", text: recipe(uses) },
      { read: kitsAmong(new Map([["kit.light", kit("Shed", body)]])) },
    );
    expect(evaluated?.report.lights.map(({ name }) => name)).toEqual(["key"]);
  });
});

describe("mistakes", () => {
  const lamp = "define light lamp { shape: disc(6 cm), output: 900 lm s }";
  const use = `use lamp from "./kit.light"\nlight key like lamp { ${place} }`;

  test("of a kit stand at their place in the kit, once, with the place that uses it", () => {
    const text = recipe(`${use}\nlight fill like lamp { ${place} }`);
    const kits = { "kit.light": kit("Shed", "define light lamp { shape: disc(6), output: 900 lm s }") };
    const { diagnostics, sound, sources } = compile(
      { name: "a.light", text },
      { read: kitsAmong(new Map(Object.entries(kits))) },
    );
    expect(sound).toBe(false);
    expect(sources.map(({ name }) => name)).toEqual(["a.light", "kit.light"]);
    expect(diagnostics.map(({ place: { file }, code }) => `${file} ${code}`)).toEqual([
      "kit.light unit.missing",
    ]);
    const [one] = diagnostics;
    expect(kits["kit.light"].slice(one?.place.start, one?.place.end)).toBe("6");
    const [related] = one?.related.slice(-1) ?? [];
    expect(related?.text).toBe("used here");
    expect(text.slice(related?.place.start, related?.place.end)).toBe('"./kit.light"');
  });

  test("of letters in a kit are found too", () => {
    const codes = found(recipe(use), { "kit.light": kit("Shed", `${lamp}\ndefine gel { `) });
    expect(codes.every((code) => code.startsWith("kit.light "))).toBe(true);
    expect(codes.length).toBeGreaterThan(0);
  });

  test("that come from kit and recipe together stand in the kit, with the name in the `use`", () => {
    const text = recipe('use lamp from "./kit.light"\nlight key like lamp { bearing: left(30 deg) }');
    const kits = {
      "kit.light": kit(
        "Shed",
        "define light lamp { shape: disc(6 cm), output: 900 lm s, distance: 2 m, height: 2 m, aim: hand }",
      ),
    };
    // `hand` is a point of the recipe only; a kit cannot name it.
    expect(found(text, kits)).toEqual(["kit.light name.unknown"]);
  });

  test.each<readonly [string, string, Readonly<Record<string, string>>, readonly string[]]>([
    ["no such kit", use, {}, ["a.light file.not-found"]],
    ["a recipe in place of a kit", use, { "kit.light": recipe(lamp) }, ["a.light use.no-kit"]],
    ["no recipe at all", use, { "kit.light": "PASSWORD=hunter2\n".repeat(9) }, ["a.light use.no-kit"]],
    [
      "the same name twice in one `use`",
      use.replace("lamp from", "lamp, lamp from"),
      { "kit.light": kit("A", lamp) },
      ["a.light use.twice"],
    ],
    ["defined here as well", `${lamp}\n${use}`, { "kit.light": kit("A", lamp) }, ["a.light use.twice"]],
    [
      "two kits with one name",
      `${use}\nuse lamp from "./other.light"`,
      { "kit.light": kit("A", lamp), "other.light": kit("B", lamp) },
      ["a.light use.twice"],
    ],
    [
      "a name never used",
      'use lamp from "./kit.light"',
      { "kit.light": kit("A", lamp) },
      ["a.light use.unused"],
    ],
    [
      "a kit that takes it from another",
      use,
      { "kit.light": kit("A", 'use lamp from "./b.light"'), "b.light": kit("B", lamp) },
      ["a.light use.unknown"],
    ],
    ["a `let` of the kit", use, { "kit.light": kit("A", "let lamp = 3 m") }, ["a.light use.unknown"]],
  ])("%s", (_what, body, kits, codes) => {
    expect(found(recipe(body), kits)).toEqual(codes);
  });

  test("circles of one, two and three files are named where they close", () => {
    const to = (name: string): string => kit(name, `use x from "./${name}.light"\ndefine light y like x {}`);
    const way = (kits: Readonly<Record<string, string>>, text: string): readonly string[] =>
      compile({ name: "a.light", text }, { read: kitsAmong(new Map(Object.entries(kits))) })
        .diagnostics.filter(({ code }) => code === "use.circle")
        .map(({ place: { file }, args }) => `${file}: ${args.way}`);
    expect(way({}, to("a"))).toEqual([]); // a file that is not on the shelf is not found
    expect(way({ "a.light": to("a") }, to("a"))).toEqual(["a.light: a.light, a.light"]);
    expect(way({ "a.light": to("b"), "b.light": to("a") }, to("b"))).toEqual([
      "b.light: a.light, b.light, a.light",
    ]);
    expect(way({ "b.light": to("c"), "c.light": to("d"), "d.light": to("b") }, to("b"))).toEqual([
      "d.light: b.light, c.light, d.light, b.light",
    ]);
  });

  test("a text without a reader says so, and nothing else is missed because of it", () => {
    const { diagnostics } = compile({ name: "a.light", text: recipe(use) });
    expect(diagnostics.map(sentence)).toEqual(["There is no folder in which to look for `./kit.light`"]);
  });
});

describe("limits", () => {
  const chain = (count: number): Readonly<Record<string, string>> =>
    Object.fromEntries(
      Array.from({ length: count }, (_, index) => [
        `k${index}.light`,
        kit(
          `K${index}`,
          index + 1 < count
            ? `use l${index + 1} from "./k${index + 1}.light"\ndefine light l${index} like l${index + 1} {}`
            : `define light l${index} { shape: disc(6 cm), output: 900 lm s }`,
        ),
      ]),
    );
  const first = recipe(`use l0 from "./k0.light"\nlight key like l0 { ${place} }`);

  test("kits in a row", () => {
    expect(found(first, chain(MAX_KIT_DEPTH))).toEqual([]);
    expect(found(first, chain(MAX_KIT_DEPTH + 1))).toEqual([`k${MAX_KIT_DEPTH - 1}.light use.limit`]);
  });

  const side = (count: number): string =>
    recipe(Array.from({ length: count }, (_, index) => `use g${index} from "./k${index}.light"`).join("\n"));
  const gels: ReadKit = (path) => {
    const index = /\d+/.exec(path)?.[0] ?? "";
    return { source: { name: path, text: kit(`K${index}`, `define gel g${index} { warms: 9 mired }`) } };
  };

  test("kits beside each other", () => {
    const codes = (count: number): readonly string[] =>
      compile({ name: "a.light", text: side(count) }, { read: gels }).diagnostics.flatMap(
        ({ severity, code }) => (severity === "error" ? [code] : []),
      );
    expect(codes(MAX_KITS)).toEqual([]);
    expect(codes(MAX_KITS + 1)).toEqual(["use.limit"]);
  });

  test("bytes of all kits together", () => {
    const padding = `# ${"é".repeat(99)}\n`; // 201 bytes, 102 letters
    const each = padding.repeat(1300);
    const size = Buffer.byteLength(each) + 60;
    const count = Math.floor(MAX_KIT_BYTES / size);
    const big: ReadKit = (path, from) => {
      const kitText = gels(path, from).source?.text ?? "";
      return { source: { name: path, text: kitText + each } };
    };
    const codes = (many: number): readonly string[] =>
      compile({ name: "a.light", text: side(many) }, { read: big }).diagnostics.flatMap(
        ({ severity, code }) => (severity === "error" ? [code] : []),
      );
    expect(codes(count)).toEqual([]);
    expect(codes(count + 1)).toEqual(["use.limit"]);
  });
});

describe("paths", () => {
  test.each([
    "./kit.light",
    "kit.light",
    "../kit.light",
    "../../a b/kit.light",
    "./ünï/k-1.light",
    "./.a.light",
  ])("%s may be said", (path) => expect(isKitPath(path)).toBe(true));

  test.each([
    "",
    ".light",
    "./",
    "./kit",
    "./kit.txt",
    "./kit.light/",
    "./.light",
    "/etc/kit.light",
    "//host/share/kit.light",
    "./a//kit.light",
    "\\\\host\\kit.light",
    ".\\kit.light",
    "C:/kit.light",
    "c:kit.light",
    "file:///etc/kit.light",
    "http://example.org/kit.light",
    "data:,kit.light",
    "./*.light",
    "./**/kit.light",
    "./k?t.light",
    "./{a,b}.light",
    "./[ab].light",
    "~/kit.light",
    "$HOME/kit.light",
    "%HOME%/kit.light",
    "./kit\0.light",
    "./kit\n.light",
    "./kit\u202e.light",
    "./a /kit.light",
    " ./kit.light",
    "./con/kit.light",
    "./NUL.light",
    "./com1.light",
    `./${"a/".repeat(600)}kit.light`,
  ])("%j is refused, and no reader is asked", (path) => {
    expect(isKitPath(path)).toBe(false);
    const read: ReadKit = () => {
      throw new Error("asked");
    };
    const said = JSON.stringify(path).replace(/\\u0000|\\n|\u202e/g, "\\u{1}");
    const { diagnostics } = compile({ name: "a.light", text: kit("A", `use x from ${said}`) }, { read });
    expect(diagnostics.some(({ severity }) => severity === "error")).toBe(true);
  });

  test.each([
    ["a.light", "./kit.light", "kit.light"],
    ["book/a.light", "./kit.light", "book/kit.light"],
    ["book/day/a.light", "../kits/kit.light", "book/kits/kit.light"],
    ["a.light", "../kit.light", "../kit.light"],
    ["../a.light", "../kit.light", "../../kit.light"],
    ["/book/a.light", "./kit.light", "/book/kit.light"],
  ])("from %s, %s is %s", (from, path, name) => expect(joinNames(from, path)).toBe(name));
});

describe("parts that come from a kit are changed as those of the file itself", () => {
  const body = `let grey = 30 %
define room shed {
  size: 5 x 6 x 3 m
  walls { reflectance: grey }
  wall back { reflectance: 10 % }
  opening door { wall: left, size: 1 x 2 m, at: offset(left: 2.5 m, up: 1 m) }
}
define room low_shed like shed { size: 5 x 6 x 2.5 m }
define light lamp { shape: disc(9 cm), output: 900 lm s, stand { highest: 3 m } }`;
  const around = `room like low_shed {}\nlight key like lamp { ${place} }\nlet pale = 75 %`;
  const setting = (text: string, settings: string, kits: Readonly<Record<string, string>>): Recipe => {
    const { recipe: model, diagnostics } = compile(
      { name: "a.light", text },
      { read: kitsAmong(new Map(Object.entries(kits))), settings: { name: "--set", text: settings } },
    );
    expect(diagnostics.flatMap(({ code, severity }) => (severity === "error" ? [code] : []))).toEqual([]);
    if (model === null) throw new Error("no model");
    return model;
  };
  /** What counts of a model; a part that is changed in the text itself moves behind the others. */
  const content = (one: Pick<Recipe, "room">): object => {
    const clean = withoutOrigins(one as Recipe) as Recipe;
    const parts = [...(clean.room?.parts ?? [])].map((part) => JSON.stringify(part)).sort();
    return { ...clean, room: { ...clean.room, parts }, uses: [], lets: [], definitions: [] };
  };
  const shown = (model: Recipe): unknown => ({
    ...content(model),
    variants: model.variants.map(({ recipe: one }) => content(one)),
  });
  const uses = `use low_shed, lamp from "./kit.light"\n`;
  const kits = { "kit.light": kit("Shed", body) };

  test.each([
    "walls.reflectance=75 %",
    "wall.back.reflectance=75 %",
    "door.size=80 x 200 cm",
    "room.door.size=80 x 200 cm",
    "door.at=offset(left: 2.5 m, up: 1.01 m)",
    "key.stand.highest=2.5 m",
    "walls.reflectance=75 %\ndoor.wall=left\nwall.back.reflectance=60 %",
  ])("%j from outside", (settings) => {
    const own = setting(recipe(`${body}\n${around}`), settings, {});
    const used = setting(recipe(`${uses}${around}`), settings, kits);
    expect(shown(used)).toEqual(shown(own));
    expect(shown(used)).not.toEqual(shown(setting(recipe(`${uses}${around}`), "camera.aperture=f/8", kits)));
  });

  test("by a variant, by one that comes from it, and with a `let` of the recipe", () => {
    const variants = `variant "Pale" { walls.reflectance: pale, door.size: 1.1 x 2 m, keep expectations }
variant "Paler" from "Pale" { walls.reflectance: 80 %, door.size: 1.2 x 2 m, keep expectations }`;
    const [own, used] = [
      setting(recipe(`${body}\n${around}\n${variants}`), "camera.aperture=f/8", {}),
      setting(recipe(`${uses}${around}\n${variants}`), "camera.aperture=f/8", kits),
    ];
    expect(used.variants.length).toBe(2);
    expect(shown(used)).toEqual(shown(own));
  });

  test("a name that the kit does not have is told with those it has", () => {
    const text = recipe(`${uses}${around}\nvariant "X" { dorr.size: 1 x 1 m, keep expectations }`);
    const { diagnostics } = compile(
      { name: "a.light", text },
      { read: kitsAmong(new Map(Object.entries(kits))) },
    );
    const [error, ...more] = diagnostics.filter(({ severity }) => severity === "error");
    expect([error?.code, more]).toEqual(["path.unknown", []]);
    expect(error?.help).toContain("`door`");
  });

  test("a kit that cannot be read is the only thing that is told", () => {
    const text = recipe(
      `${uses}room like low_shed {}\nvariant "X" { door.size: 1 x 1 m, keep expectations }`,
    );
    expect(found(text, {}).every((line) => !line.includes("path."))).toBe(true);
    expect(found(text, {}).length).toBeGreaterThan(0);
  });
});

describe("one mistake in a kit is one error", () => {
  const uses = `use bowl, lid from "./b.light"
light key like bowl with lid { role: key, ${place} }`;
  const lid = "define modifier lid { shape: disc(18 cm) }";

  test("of letters or signs: what its line would mean is not judged where it is used", () => {
    const body = `define light bowl { calibration: metered(f/8 at: 2 m, ISO 100) }
${lid}`;
    expect(found(recipe(uses), { "b.light": kit("Bowls", body) })).toEqual(["b.light comma.missing"]);
  });

  test("of the kind of a definition: its name is not also called unknown", () => {
    const body = `define ligth bowl { calibration: metered(f/8, at: 2 m, ISO 100) }
${lid}`;
    expect(found(recipe(uses), { "b.light": kit("Bowls", body) })).toEqual(["b.light block.unknown"]);
  });

  test("and a second mistake elsewhere is told, too", () => {
    const body = `define light bowl { shape: disc(9 cm), calibration: metered(f/8, at: 2 m, ISO 100), colour: 3 m }
${lid}`;
    const wrong = uses.replace("bowl, lid", "bowl, lud").replace("with lid ", "");
    expect(found(recipe(wrong), { "b.light": kit("Bowls", body) })).toEqual([
      "a.light use.unknown",
      "b.light unit.wrong",
    ]);
  });
});

test("kits that use one another too far say how far they may", () => {
  const texts = Object.fromEntries(
    Array.from({ length: MAX_KIT_DEPTH + 2 }, (_, i) => [
      `k${i}.light`,
      kit(
        `K${i}`,
        `use lamp${i + 1} from "./k${i + 1}.light"
define light lamp${i} like lamp${i + 1} {}`,
      ),
    ]),
  );
  const { diagnostics } = compile(
    { name: "a.light", text: recipe('use lamp0 from "./k0.light"\nlight key like lamp0 { distance: 2 m }') },
    { read: kitsAmong(new Map(Object.entries(texts))) },
  );
  const deep = diagnostics.find(({ code }) => code === "use.limit");
  expect(deep && sentence(deep)).toContain(
    `there are more than ${MAX_KIT_DEPTH} kits that use one another in a row`,
  );
});
