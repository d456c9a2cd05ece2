import { describe, expect, test } from "vitest";
import { kitsAmong } from "../../src/check/kits/texts.js";
import { compile } from "../../src/compile.js";
import { shed } from "../report/session/days.js";

const text = (of: string, lines = "face.disc(towards: key) is f/5.6"): string =>
  `halfshade 1\nsession "A day" of "${of}"\nmeasured {\n${lines}\n}\n`;
const codes = (source: string, texts: ReadonlyMap<string, string> | null): readonly string[] =>
  compile(
    { name: "day.light", text: source },
    texts === null ? {} : { read: kitsAmong(texts) },
  ).diagnostics.map(({ code }) => code);
const texts = new Map([["shed.light", shed]]);

test("without a folder nothing is read, and that is said", () => {
  expect(codes(text("./shed.light"), null)).toEqual(["session.alone"]);
});

test.each(["/etc/passwd", "C:\\shed.light", "http://a/shed.light", "shed.txt"])("%s is no path", (path) => {
  expect(codes(text(path.replaceAll("\\", "\\\\")), texts)).toEqual(["file.path"]);
});

test("a session of itself, or of another session, is refused and ends", () => {
  const day = text("./day.light");
  expect(codes(day, new Map([["day.light", day]]))).toEqual(["session.no-recipe"]);
});

test("an error of the recipe is told with the place that reads it", () => {
  const broken = new Map([["shed.light", shed.replace("height: 2.3 m", "height: 2.3 s")]]);
  const { diagnostics, session } = compile(
    { name: "day.light", text: text("./shed.light") },
    { read: kitsAmong(broken) },
  );
  expect(session).toBeNull();
  expect(diagnostics[0]?.place.file).toBe("shed.light");
  expect(diagnostics[0]?.related.at(-1)?.place.file).toBe("day.light");
});

test("what is measured is checked where it stands", () => {
  const { diagnostics } = compile(
    { name: "day.light", text: text("./shed.light", "kye.height: 2.2 m") },
    { read: kitsAmong(texts) },
  );
  const error = diagnostics.find(({ severity }) => severity === "error");
  expect(error).toMatchObject({ code: "path.unknown", place: { file: "day.light" } });
});

describe("a session of a variant", () => {
  const varied = `${shed}
variant "Lower" {
  key.height: 2 m
  expect no_warnings
}
variant "Lower, and the fill off" from "Lower" {
  fill.power: off
  expect no_warnings
}
`;
  const compiled = (variant: string, lines: string) =>
    compile(
      {
        name: "day.light",
        text: text("./shed.light", lines).replace('.light"', `.light" variant ${variant}`),
      },
      { read: kitsAmong(new Map([["shed.light", varied]])) },
    );

  test("takes the whole variant as planned, with all it comes from, and the lines of the day on top", () => {
    const { session, diagnostics } = compiled(
      '"Lower, and the fill off"',
      "key.distance: 1.9 m\nface.disc(towards: key) is f/5.6",
    );
    expect(diagnostics).toEqual([]);
    const lamps = (of: "plan" | "built") =>
      session?.[of].lights.map(({ name, height, distance, power }) => [
        name,
        height?.value,
        distance?.length.value,
        power?.written,
      ]);
    expect(session?.variant).toBe("Lower, and the fill off");
    expect(lamps("plan")).toEqual([
      ["key", 2, 2, "full - 2 stop"],
      ["fill", 1.8, 2.6, "off"],
    ]);
    expect(lamps("built")).toEqual([
      ["key", 2, 1.9, "full - 2 stop"],
      ["fill", 1.8, 2.6, "off"],
    ]);
  });

  test("that there is not is refused, with the one that was meant", () => {
    const { session, diagnostics } = compiled('"Lowr"', "face.disc(towards: key) is f/5.6");
    expect(session).toBeNull();
    expect(diagnostics.map(({ code }) => code)).toEqual(["session.variant"]);
    expect(diagnostics[0]?.fixes[0]?.title).toBe('write "Lower"');
  });

  test("another word before its title is told to be `variant`", () => {
    const source = text("./shed.light").replace('.light"', '.light" from "Lower"');
    const { diagnostics } = compile({ name: "day.light", text: source });
    expect(diagnostics.map(({ code }) => code)).toEqual(["statement.part"]);
    expect(diagnostics[0]?.fixes[0]?.title).toBe("write `variant`");
  });

  test("a name that only the recipe has is no name of the day where the variant took it out", () => {
    const gone = varied.replace("fill.power: off", "remove fill");
    const { diagnostics } = compile(
      {
        name: "day.light",
        text: text("./shed.light", "face.disc(towards: fill) is f/8").replace(
          '.light"',
          '.light" variant "Lower, and the fill off"',
        ),
      },
      { read: kitsAmong(new Map([["shed.light", gone]])) },
    );
    expect(diagnostics.filter(({ severity }) => severity === "error").map(({ place }) => place.file)).toEqual(
      ["day.light"],
    );
  });
});
