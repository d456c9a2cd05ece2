import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { MAX_PHOTO_BYTES } from "../../src/core/limits.js";
import { kitDisk } from "../../src/node/kit-reader.js";
import { photoReader } from "../../src/node/photo-reader.js";
import { settingsOfTags } from "../../src/node/photo-tags.js";
import { run } from "../../src/pipeline.js";
import { jpegWith, usual } from "../helpers/photo.js";

const top = realpathSync(mkdtempSync(join(tmpdir(), "halfshade-photos-")));
afterAll(() => rmSync(top, { recursive: true }));
const at = (path: string): string => join(top, path);
const main = at("project/book/a.light");

beforeAll(() => {
  for (const folder of ["project/book", "project/folder.jpg", "outside"])
    mkdirSync(at(folder), { recursive: true });
  writeFileSync(main, "");
  writeFileSync(at("project/book/usual.jpg"), jpegWith(usual));
  writeFileSync(at("project/book/turned.JPG"), jpegWith(usual, [[0x0112, 6]]));
  writeFileSync(at("project/book/bare.jpg"), jpegWith([[0xa002, 6000]]));
  writeFileSync(at("project/book/lacks.jpg"), jpegWith(usual.filter(([tag]) => tag !== 0x829d)));
  writeFileSync(at("project/book/text.jpg"), "no picture at all");
  writeFileSync(at("project/book/cut.jpg"), jpegWith(usual).subarray(0, 60));
  writeFileSync(at("outside/usual.jpg"), jpegWith(usual));
  symlinkSync(at("outside/usual.jpg"), at("project/book/link.jpg"));
});

const read = (path: string) => photoReader(at("project"), main)(path, main);

describe("a photograph's settings", () => {
  test("are those of its tags", () => {
    expect(read("usual.jpg").settings).toEqual({
      focalLength: 0.085,
      aperture: 8,
      shutter: 1 / 125,
      sensitivity: 200,
      pixels: { width: 6000, height: 4000 },
      frame: null,
      held: "level",
    });
    expect(read("./turned.JPG").settings?.held).toBe("upright");
  });

  test.each([
    ["../../outside/usual.jpg", "file.outside"],
    ["link.jpg", "file.outside"],
    ["../folder.jpg", "file.folder"],
    ["nothing.jpg", "file.not-found"],
    ["bare.jpg", "photo.none"],
    ["text.jpg", "photo.none"],
    ["cut.jpg", "photo.none"],
  ])("%s: %s", (path, code) => {
    expect(read(path).problem?.code).toBe(code);
  });

  test("a file above the cap is not opened", () => {
    const disk = {
      ...kitDisk,
      look: () => ({ kind: "file", size: MAX_PHOTO_BYTES + 1 }) as const,
      read: () => {
        throw new Error("opened");
      },
    };
    expect(photoReader(at("project"), main, disk)("usual.jpg", main).problem?.code).toBe("file.too-large");
  });

  test("the picture area by the focal plane's resolution, else by the equivalent focal length", () => {
    const base = {
      FNumber: { value: [8, 1] },
      PixelXDimension: { value: 6000 },
      PixelYDimension: { value: 4000 },
    };
    const plane = {
      ...base,
      FocalPlaneXResolution: { value: [6000, 24] },
      FocalPlaneResolutionUnit: { value: 4 },
    };
    expect(settingsOfTags(plane)?.frame).toEqual({ width: 0.024, height: 0.016 });
    const crop = { ...base, FocalLength: { value: [50, 1] }, FocalLengthIn35mmFilm: { value: 75 } };
    expect(settingsOfTags(crop)?.frame?.width).toBeCloseTo(0.024, 12);
    expect(
      settingsOfTags({ FNumber: { value: [0, 0] }, __proto__: { ISOSpeedRatings: { value: 1 } } }),
    ).toBeNull();
  });
});

const recipe = (camera: string): string => `halfshade 1
recipe "Cooper's yard"
subject { height: 1.7 m }
light key { shape: disc(20 cm), output: 900 lm s, distance: 2 m, height: 2 m }
camera { distance: 3 m, height: 1.4 m, ${camera} }
`;

const withPhotos = { readPhoto: photoReader("/", "/a.light", { ...kitDisk, real: (path) => path }) };
const check = (camera: string) => compile({ name: main, text: recipe(camera) }, withPhotos);

describe("a camera that names a photograph", () => {
  test("takes what it does not say; what is written counts first", () => {
    const { recipe: found, diagnostics } = check('settings: photo("usual.jpg"), aperture: f/11');
    expect(diagnostics).toEqual([]);
    expect(found?.camera).toMatchObject({
      focal_length: { value: 0.085 },
      aperture: { written: "f/11" },
      // 1/125 s stands for 1/128 s, as where it is written.
      shutter: { value: 1 / 128, written: "1/125 s" },
      sensitivity: { value: 200 },
      held: "level",
    });
    expect(found?.camera?.settings?.took).toContain("1/125 s");
    expect(found?.camera?.settings?.took).not.toContain("f/8");
  });

  test("the report says what was taken", () => {
    const text = recipe('settings: photo("usual.jpg")');
    const { report } = run({ name: main, text }, withPhotos).evaluated ?? {};
    expect(report?.setup.find((line) => line.startsWith("Camera"))).toContain("From usual.jpg: 85 mm, f/8");
    expect(report?.camera?.aperture).toBe(8);
  });

  test.each([
    ['settings: photo("lacks.jpg")', ["photo.missing"]],
    ['settings: photo("lacks.jpg"), aperture: f/4', []],
    ['settings: photo("text.jpg")', ["photo.none"]],
    ['settings: photo("/etc/passwd.jpg")', ["file.path"]],
    ['settings: photo("C:/a.jpg")', ["file.path"]],
    ['settings: photo("a.light")', ["file.path"]],
  ])("%s gives %j and nothing else", (camera, codes) => {
    expect(check(camera).diagnostics.map(({ code }) => code)).toEqual(codes);
  });

  test("without a way to read it the written settings count, and a note says so", () => {
    const text = recipe(
      'settings: photo("usual.jpg"), focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, held: level',
    );
    const { diagnostics, sound } = compile({ name: "a.light", text });
    expect(diagnostics.map(({ code }) => code)).toEqual(["photo.alone"]);
    expect(sound).toBe(true);
  });
});
