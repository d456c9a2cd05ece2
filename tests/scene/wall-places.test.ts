import { describe, expect, test } from "vitest";
import { run } from "../../src/pipeline.js";
import { backgroundPoints } from "../../src/report/geometry/background-points.js";
import { setTop } from "../../src/report/geometry/set-top.js";
import { backgroundStation } from "../../src/report/light/background.js";
import type { Report } from "../../src/report/schema/report.js";
import { backgroundCorners } from "../../src/report/thrown/fan.js";
import { buildScene } from "../../src/scene/build.js";
import type { Scene, SceneSubject } from "../../src/scene/types.js";
import { directPerLumenSecond } from "../../src/transport/direct.js";

const camera =
  "camera { held: upright, focal_length: 85 mm, aperture: f/5.6, shutter: 1/125 s, sensitivity: ISO 200, distance: 3 m, height: 1.5 m }";

const text = (more: { walls?: string; set?: string; camera?: string; rest?: string; glow?: string } = {}) =>
  `halfshade 1
recipe "Back wall"
room {
  size: 4.2 x 5.5 x 2.6 m
  mark: from(left: 1.6 m, back: 1.6 m)
  ${more.walls ?? "walls { reflectance: 0 % }, wall back { belongs_to: set, reflectance: 0 % }"}
  ceiling { reflectance: 0 % }
  floor { reflectance: 0 % }
}
${more.set ?? ""}
subject { height: 1.7 m, skin: 0 %, cloth: 0 %, hair: 0 % }
light key { role: key, shape: disc(18 cm), output: 4000 lm s, distance: 2 m, bearing: left(40 deg), height: 2 m }
light glow { role: background, shape: disc(18 cm), output: 1000 lm s, position: offset(right: 1.5 m, behind: 60 cm, up: 1 m), aim: ${more.glow ?? "wall_back"} }
${more.camera ?? camera}
${more.rest ?? ""}
`;

function reportOf(source: string): Report {
  const { evaluated, diagnostics } = run({ name: "wall.light", text: source });
  if (evaluated === null) throw new Error(JSON.stringify(diagnostics));
  return evaluated.report;
}

function sceneOf(source: string): Scene {
  const { recipe, diagnostics } = run({ name: "wall.light", text: source });
  if (recipe === null) throw new Error(JSON.stringify(diagnostics));
  return buildScene(recipe, () => undefined);
}

const codesOf = (source: string): readonly string[] =>
  run({ name: "wall.light", text: source }).diagnostics.map(({ code }) => code);

const names = ({ stations }: Scene): readonly string[] =>
  stations.map(({ name }) => name).filter((name) => name.startsWith("wall"));

// The lens stands 3 m before the mark and is focused on the face 2.9031 m away: 85 mm draws out to 85 x 2.9031 / 2.8181
// = 87.564 mm, and 12 mm beside the middle of the frame are 12 / 87.564 x 4.6 m = 0.6304 m on the wall 4.6 m away.
const half = 0.6304;

describe("a wall that belongs to the set", () => {
  const scene = sceneOf(text());

  test("has its stations in the middles of the thirds of what the picture shows of it", () => {
    expect(names(scene)).toEqual(["wall_back.left", "wall_back", "wall_back.right"]);
    const [left, middle, right] = scene.stations.filter(({ name }) => name.startsWith("wall_back"));
    expect(left?.at[0]).toBeCloseTo((-2 / 3) * half, 3);
    expect(middle?.at[0]).toBeCloseTo(0, 9);
    expect(right?.at[0]).toBeCloseTo((2 / 3) * half, 3);
    for (const station of [left, middle, right]) {
      expect(station?.at[1]).toBeCloseTo(1.6, 9);
      expect(station?.at[2]).toBeCloseTo(1.5, 9);
      expect(station?.facing).toEqual([0, -1, 0]);
    }
  });

  test("reads what the lamps give it", () => {
    const { stations } = reportOf(text());
    const read = stations.find(({ name }) => name === "wall_back.right");
    const glow = scene.sources[1];
    if (read === undefined || glow === undefined) throw new Error("no station");
    const own = read.exposure.lights.find(({ name }) => name === "glow")?.direct ?? 0;
    // An opening that sends out alike to all sides in front, 1000 lm s over pi, by both cosines over the square of the way.
    const [x, y, z] = [1.5 - (2 / 3) * half, 0.6 - 1.6, 1 - 1.5];
    const way = Math.hypot(x, y, z);
    const aim = [-1.5, 1, 0.5].map((part) => part / Math.hypot(1.5, 1, 0.5));
    const out = (-x * (aim[0] ?? 0) - y * (aim[1] ?? 0) - z * (aim[2] ?? 0)) / way;
    const byHand = (1000 / Math.PI) * (out / (way * way)) * (-y / way);
    expect(Math.abs(own / byHand - 1)).toBeLessThan(0.01);
    expect(directPerLumenSecond(glow, [2 * half, 1.6, 1.5], [0, -1, 0], "disc")).not.toBeCloseTo(
      own / 1000,
      3,
    );
  });

  test("is the background, as far as the picture shows it, and has a top", () => {
    const station = backgroundStation(scene);
    expect(station?.name).toBe("wall_back");
    if (station === null) throw new Error("no background");
    const points = backgroundPoints(scene, station);
    expect(points).toHaveLength(20);
    // 18 mm above the middle are 18 / 87.564 x 4.6 m = 0.9456 m: four rows from 1.5 m by a quarter of that.
    const across = points.map(({ meter }) => meter.at[0]);
    const up = points.map(({ meter }) => meter.at[2]);
    expect(Math.max(...across)).toBeCloseTo(0.8 * half, 3);
    expect(Math.max(...up)).toBeCloseTo(1.5 + 0.75 * 0.9456, 3);
    expect(points[0]?.where).toBe("at the lower left");
    // In the plane of the face, 2.9031 m away: 1.5 + 1.1 x 2.9031 / 4.6.
    expect(setTop(scene, scene.subjects[0] as SceneSubject)?.visible).toBeCloseTo(2.1942, 3);
    expect(backgroundCorners(scene).map(([x]) => Math.abs(x).toFixed(2))).toEqual(["0.63", "0.63"]);
  });

  test("is held against a wish, and warned of by its name", () => {
    const wish = "intent { background: 3 stop over face.disc(towards: key) }";
    const report = reportOf(text({ rest: wish }));
    const off = report.warnings.find(({ code }) => code === "background-off");
    expect(off?.message).toMatch(/^The back wall is .* too dark/);
    expect(off?.about).toBe("wall back");
    expect(report.intent?.criteria.find(({ name }) => name === "background")?.value).not.toBe(null);
    const silent = reportOf(
      text({ rest: wish, set: "" }).replace("belongs_to: set, reflectance: 0 %", "reflectance: 0 %"),
    );
    expect(silent.warnings.find(({ code }) => code === "background-off")).toBe(undefined);
  });

  test("may be asked for in expectations, part by part", () => {
    const { expectations } = reportOf(
      text({
        rest: "expect wall_back.right is over wall_back.left within 9 stop\nexpect f_number(wall_back.middle) > f/0.1".replace(
          "is over",
          "is 1 stop over",
        ),
      }),
    );
    expect(expectations.map(({ outcome }) => outcome)).toEqual(["passed", "passed"]);
    expect(codesOf(text({ rest: "expect f_number(wall_back.top) > f/1" }))).toContain("name.part");
    expect(codesOf(text({ set: "set { flat wall_back { size: 1 x 1 m, at: mark } }" }))).toContain(
      "name.taken",
    );
  });
});

describe("other walls", () => {
  test("have no readings of their own, but are places to aim at", () => {
    const plain = sceneOf(text({ walls: "walls { reflectance: 0 % }", glow: "wall_left" }));
    expect(names(plain)).toEqual([]);
    // The camera does not see the left wall: its middle, 1.6 m to the left, 2.75 m deep of 5.5 m, 1.6 m of them behind.
    const [x, y, z] = plain.sources[1]?.aim ?? [];
    expect([x, y, z]).toEqual([-1.6, expect.closeTo(1.6 - 2.75, 9), 1.3]);
  });

  test("with a set that stands before them leave the background to it", () => {
    const flat = "set { flat drop { size: 2 x 2.4 m, at: offset(behind: 1 m) } }";
    const scene = sceneOf(text({ set: flat }));
    expect(backgroundStation(scene)?.name).toBe("drop");
    expect(setTop(scene, scene.subjects[0] as SceneSubject)?.piece).toBe("drop");
  });

  test("without a camera have the thirds of the whole wall, left as one sees it from inside", () => {
    const all = sceneOf(text({ walls: "walls { reflectance: 0 %, belongs_to: set }", camera: "" }));
    const at = (name: string) => all.stations.find((station) => station.name === name)?.at;
    // Sixths of 4.2 m from the left wall at -1.6 m, and of 5.5 m from the front wall at -3.9 m.
    expect(at("wall_back.left")).toEqual([expect.closeTo(-0.9, 9), 1.6, 1.3]);
    expect(at("wall_left.left")).toEqual([-1.6, expect.closeTo(-3.9 + 5.5 / 6, 9), 1.3]);
    expect(at("wall_right.left")).toEqual([2.6, expect.closeTo(1.6 - 5.5 / 6, 9), 1.3]);
    expect(at("wall_front.left")?.[0]).toBeCloseTo(2.6 - 0.7, 9);
    expect(names(all)).toHaveLength(12);
  });

  test("are seen from inside alone, and no farther than they reach", () => {
    // A wide lens near the right wall sees both walls: the back wall ends where the right one begins.
    const wide = camera.replace("85 mm", "20 mm").replace("upright", "level");
    const scene = sceneOf(text({ camera: wide }));
    const right = scene.stations.find(({ name }) => name === "wall_back.right")?.at[0] ?? 0;
    expect(right).toBeLessThan(2.6);
    expect(right).toBeGreaterThan(1.5);
  });

  test("are no places without a room", () => {
    const bare = text().replace(/room \{[\s\S]*?\n\}\n/, "");
    expect(codesOf(bare)).toContain("point.unknown");
  });

  test("a camera that is aimed at what it sees is told so", () => {
    expect(
      codesOf(text({ camera: camera.replace("height: 1.5 m", "height: 1.5 m, aim: wall_back") })),
    ).toContain("point.circular");
  });

  test("lie beside an opening, which is no end of the wall", () => {
    const hatch = (up: string) =>
      `wall back { belongs_to: set, reflectance: 40 % }, opening hatch { wall: back, size: 1.2 x 1.2 m, at: offset(up: ${up}) }`;
    for (const camera of [undefined, ""]) {
      const holed = sceneOf(text({ walls: hatch("90 cm"), ...(camera === undefined ? {} : { camera }) }));
      const at = holed.stations.find(({ name }) => name === "wall_back")?.at ?? [0, 0, 0];
      // The opening reaches 0.6 m to both sides of the mark.
      expect(Math.abs(at[0])).toBeGreaterThan(0.6);
      expect(Math.abs(at[0])).toBeLessThan(1);
      expect(at[1]).toBeCloseTo(1.6, 9);
    }
    const holed = sceneOf(text({ walls: hatch("90 cm") }));
    expect(setTop(holed, holed.subjects[0] as SceneSubject)?.edge).toBeCloseTo(2.6, 9);
  });

  test("are the background where the picture shows them", () => {
    const walls = "walls { reflectance: 0 %, belongs_to: set }";
    const turned = camera.replace("distance: 3 m", "distance: 1.5 m, bearing: right(90 deg)");
    expect(backgroundStation(sceneOf(text({ walls, camera: turned })))?.name).toBe("wall_left");
    expect(backgroundStation(sceneOf(text({ walls })))?.name).toBe("wall_back");
    const right = "wall right { belongs_to: set, reflectance: 0 % }";
    expect(backgroundStation(sceneOf(text({ walls: right, glow: "wall_right" })))).toBeNull();
  });
});
