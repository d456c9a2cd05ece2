import { expect, test } from "vitest";
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
