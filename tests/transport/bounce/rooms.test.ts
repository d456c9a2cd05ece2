import { describe, expect, test } from "vitest";
import { subtract } from "../../../src/math/vector.js";
import type { Scene } from "../../../src/scene/types.js";
import { lightField } from "../../../src/transport/light-field.js";
import { grid } from "../../helpers/closed-room.js";
import { mustBreak } from "../../helpers/must-break.js";
import { sceneOf } from "../../helpers/worked.js";

/**
 * What a room does to a hard light: a lamp 4.8 m off in a dark, a grey and a white room, on a person between two white
 * flats on white paper. The values are one other model's for such a set-up (a solver of matt patches, a subject that
 * blocks and does not bounce; computed for a study of the trade, no published source), good to half a stop; our room
 * and set are not the same to the centimetre. They are used as ranges.
 */
const HALF_A_STOP = 0.5;

const rooms = { dark: [8, 8, 8], grey: [50, 80, 25], white: [80, 85, 35] } as const;
/** A bare bulb shines all round, a dish to the front. The trade's bare head, a dome before its housing, lies between. */
const heads = {
  bulb: "shape: sphere(8 cm)",
  front: "shape: disc(8 cm)",
  dish: "shape: disc(18 cm)\n  beam: cosine_power(4)",
} as const;
type Room = keyof typeof rooms;
type Head = keyof typeof heads;

function sceneIn(room: Room, head: Head, board = 85): Scene {
  const [walls, ceiling, floor] = rooms[room];
  const scene = sceneOf(`
room {
  size: 5.2 x 7.6 x 3.3 m
  mark: from(left: 3.1 m, back: 1.9 m)
  walls { reflectance: ${walls} % }
  ceiling { reflectance: ${ceiling} % }
  floor { reflectance: ${floor} % }
}
set {
  flat screen { size: 1.3 x 2.4 m, at: offset(behind: 70 cm, left: 30 cm), front: ${board} %, back: 30 % }
  flat wing { size: 1.3 x 2.4 m, hinge: right_edge(screen), opening: 150 deg, front: ${board} %, back: 30 % }
  paper ground { width: 2.6 m, run: 2.2 m, at: offset(behind: 60 cm), reflectance: 85 % }
}
subject { height: 1.72 m }
light key {
  role: key
  ${heads[head]}
  output: 900 lm s
  distance: 4.8 m
  bearing: left(30 deg)
  height: 3 m
}`);
  const extra = scene.polygons.flatMap(({ name, vertices: [a, b, , d] }) =>
    name === "screen" && a && b && d
      ? grid({ name: `${name} at`, corner: a, u: subtract(b, a), v: subtract(d, a) }, 16)
      : [],
  );
  return { ...scene, stations: [...scene.stations, ...extra] };
}

/** What the room does, in stops. */
interface Found {
  /** What bounced light adds at the face, turned to the lamp. */
  readonly adds: number;
  /** The face to the shaded cheek, which gets bounced light alone. */
  readonly cheek: number;
  /** The lit set to the core of the person's shadow on it, its darkest place. */
  readonly set: number;
}

function find(scene: Scene): Found {
  const { direct, bounced } = lightField(scene);
  const at = (name: string): readonly [number, number] => {
    const i = scene.stations.findIndex((row) => row.name === name);
    return [direct[i] as number, bounced?.[i] as number];
  };
  const [own, more] = at("face");
  const lit: number[] = [];
  const shade: number[] = [];
  scene.stations.forEach(({ name }, i) => {
    if (!name.includes(" at.")) return;
    if ((direct[i] as number) > 0) lit.push((direct[i] as number) + (bounced?.[i] as number));
    else shade.push(bounced?.[i] as number);
  });
  const mean = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / list.length;
  return {
    adds: Math.log2((own + more) / own),
    cheek: Math.log2((own + more) / at("shaded_cheek")[1]),
    set: Math.log2(mean(lit) / Math.min(...shade)),
  };
}

const found = new Map<string, Found>();
for (const room of Object.keys(rooms) as Room[]) {
  for (const head of Object.keys(heads) as Head[]) found.set(`${room} ${head}`, find(sceneIn(room, head)));
}
const of = (room: Room, head: Head): Found => {
  const row = found.get(`${room} ${head}`);
  if (row === undefined) throw new Error(`${room} ${head}`);
  return row;
};

describe("a dish in a room, within half a stop", () => {
  const law = (room: Room, { adds, cheek, set }: Found): void => {
    const row = of(room, "dish");
    expect(Math.abs(row.adds - adds)).toBeLessThan(HALF_A_STOP);
    expect(Math.abs(row.cheek - cheek)).toBeLessThan(HALF_A_STOP);
    expect(Math.abs(row.set - set)).toBeLessThan(HALF_A_STOP);
  };
  const rows = { dark: [0.1, 3.2, 2.9], grey: [0.3, 2.1, 2.2], white: [0.5, 1.5, 1.8] } as const;
  test.each(Object.entries(rows))("%s", (room, [adds, cheek, set]) => {
    law(room as Room, { adds, cheek, set });
    mustBreak(() => law(room as Room, { adds, cheek: cheek + 1, set }));
  });
});

describe("a bare head lies between a bulb that shines all round and one that shines to the front", () => {
  const law = (room: Room, { adds, cheek, set }: Found): void => {
    const [most, least] = [of(room, "bulb"), of(room, "front")];
    expect(adds).toBeGreaterThan(least.adds - HALF_A_STOP);
    expect(adds).toBeLessThan(most.adds + HALF_A_STOP);
    expect(cheek).toBeLessThan(least.cheek + HALF_A_STOP);
    expect(cheek).toBeGreaterThan(most.cheek - HALF_A_STOP);
    expect(set).toBeLessThan(least.set + HALF_A_STOP);
    expect(set).toBeGreaterThan(most.set - HALF_A_STOP);
  };
  const rows = { dark: [0.2, 2.8, 2.7], grey: [0.9, 1.2, 1.7], white: [1.5, 0.7, 1.3] } as const;
  test.each(Object.entries(rows))("%s", (room, [adds, cheek, set]) => {
    law(room as Room, { adds, cheek, set });
    mustBreak(() => law(room as Room, { adds: adds + 2, cheek, set }));
  });
});

test("the lighter the room and the wider the beam, the more light it adds and the shallower the shadows", () => {
  const order = (rows: readonly Found[]): void => {
    for (let i = 1; i < rows.length; i++) {
      const [less, more] = [rows[i - 1] as Found, rows[i] as Found];
      expect(more.adds).toBeGreaterThan(less.adds);
      expect(more.cheek).toBeLessThan(less.cheek);
      expect(more.set).toBeLessThan(less.set);
    }
  };
  for (const head of Object.keys(heads) as Head[])
    order([of("dark", head), of("grey", head), of("white", head)]);
  for (const room of Object.keys(rooms) as Room[])
    order([of(room, "dish"), of(room, "front"), of(room, "bulb")]);
  mustBreak(() => order([of("white", "dish"), of("grey", "dish")]));
});

test("the room does more for the shaded cheek than the flats do", () => {
  const black = find(sceneIn("grey", "front", 4)).cheek - of("grey", "front").cheek;
  const room = of("dark", "front").cheek - of("white", "front").cheek;
  expect(black).toBeGreaterThan(0);
  expect(room).toBeGreaterThan(2 * black);
});
