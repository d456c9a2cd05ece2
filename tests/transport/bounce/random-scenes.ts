import { randomFrom } from "../../helpers/random.js";

/**
 * The blocks of a made-up set-up with what rooms and sets may hold: people in all poses, hinged flats, a paper sweep,
 * cards, tables, boxes and round things, windows, cloths, lamps with every shape and beam, on stands and booms, and
 * lamps that shine into a surface. The same seed gives the same text.
 */
export function randomBlocks(seed: number): string {
  const random = randomFrom(seed * 7919 + 17);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const pick = <T>(...values: readonly T[]): T => values[Math.floor(random() * values.length)] as T;
  const maybe = (share: number): boolean => random() < share;
  const m = (x: number): string => `${x.toFixed(3)} m`;
  const deg = (x: number): string => `${x.toFixed(1)} deg`;
  const share = (low: number, high: number): string => `${between(low, high).toFixed(0)} %`;
  const side = (x: number): string => `${x < 0 ? "left" : "right"}(${deg(Math.abs(x))})`;
  const place = (x: number, y: number, z: number): string => `(${m(x)}, ${m(y)}, ${m(z)})`;
  const out: string[] = [];

  const high = between(2.4, 4);
  const wide = between(3.4, 7);
  const roomy = !maybe(0.15);
  if (roomy) {
    const tone = pick<readonly [number, number]>([3, 12], [35, 60], [70, 90]);
    out.push(`room {
  size: ${m(wide)} x ${m(between(4.5, 8))} x ${m(high)}
  mark: from(left: ${m(wide * between(0.4, 0.6))}, back: ${m(between(1.7, 2.1))})
  walls { reflectance: ${share(...tone)} }
  ceiling { reflectance: ${share(tone[0], 90)} }
  floor { reflectance: ${share(5, tone[1])} }
${maybe(0.3) ? `  opening gap { wall: ${pick("left", "right")}, size: 1.1 x 1.3 m, at: offset(ahead: 0.6 m, up: 0.9 m) }\n` : ""}}`);
  }

  const set: string[] = [];
  const backdrop = pick("flats", "paper", "panel", "none");
  if (backdrop === "flats") {
    set.push(
      `flat back { size: ${m(between(1, 1.3))} x ${m(between(2, 2.35))}, at: offset(behind: ${m(between(0.45, 1))}), front: ${share(60, 90)}, back: ${share(3, 40)} }`,
      `flat wing { size: 1 x ${m(between(1.9, 2.3))}, hinge: ${pick("left_edge", "right_edge")}(back), opening: ${deg(between(70, 150))}, front: ${share(3, 90)}, back: ${share(3, 60)} }`,
    );
  }
  if (backdrop === "paper") {
    set.push(
      `paper roll { width: ${m(between(1.4, 2.7))}, at: offset(behind: ${m(between(0.8, 1.4))}), run: ${m(between(1.5, 3))}, hangs: ${m(between(2, 2.3))}, curve: ${m(between(0.2, 0.5))}, reflectance: ${share(4, 88)} }`,
    );
  }
  if (backdrop === "panel") {
    set.push(
      `panel slate { size: 1.6 x 1.2 m, at: offset(behind: ${m(between(0.5, 1))}, up: ${m(between(1, 1.6))}), front: ${share(10, 80)}, back: ${share(4, 50)} }`,
    );
  }
  if (maybe(0.5)) {
    set.push(
      `card bounce { size: ${m(between(0.4, 1))} x ${m(between(0.6, 1.4))}, at: offset(${pick("left", "right")}: ${m(between(0.45, 0.9))}, ahead: ${m(between(-0.1, 0.4))}, up: ${m(between(0.8, 1.5))}), faces: mark_up, front: ${share(60, 90)}, back: ${share(3, 60)} }`,
    );
  }
  if (maybe(0.4)) {
    set.push(
      `table bench { size: 1.1 x 0.6 m, height: ${m(between(0.6, 0.9))}, at: offset(right: ${m(between(0.2, 0.6))}, ahead: ${m(between(0.55, 0.9))}), reflectance: ${share(10, 70)} }`,
    );
  }
  if (maybe(0.4)) {
    set.push(
      `box crate { size: 0.5 x 0.45 x ${m(between(0.3, 0.9))}, at: offset(left: ${m(between(0.5, 1))}, behind: ${m(between(-0.3, 0.2))}), faces: ${side(between(-60, 60))}, reflectance: ${share(10, 80)} }`,
    );
  }
  if (maybe(0.4)) {
    set.push(
      `sphere ball { diameter: ${m(between(0.06, 0.4))}, at: offset(right: ${m(between(0.3, 0.8))}, ahead: ${m(between(0.1, 0.5))}, up: ${m(between(0.3, 1.3))}), reflectance: ${share(10, 85)} }`,
      `capsule post { diameter: ${m(between(0.05, 0.2))}, height: ${m(between(0.3, 1.3))}, at: offset(left: ${m(between(0.4, 0.9))}, ahead: ${m(between(0.2, 0.5))}), reflectance: ${share(10, 85)} }`,
      `disc lid { diameter: ${m(between(0.2, 0.8))}, at: offset(right: ${m(between(0.4, 0.9))}, behind: 0.2 m, up: ${m(between(0.4, 1.6))}), faces: ${pick("up", "low", "camera")}, reflectance: ${share(10, 85)} }`,
    );
  }
  const cloth = maybe(0.25);
  if (cloth) {
    set.push(
      `scrim silk { size: ${m(between(0.9, 1.4))} x ${m(between(1, 1.6))}, at: (${m(pick(-1, 1) * between(0.9, 1.2))}, ${m(between(-1.2, -0.8))}, ${m(between(1.3, 1.7))}), faces: (0 m, 0 m, 1.5 m) }`,
    );
  }
  if (set.length > 0) out.push(`set {\n  ${set.join("\n  ").replaceAll("mark_up", "(0 m, 0 m, 1.3 m)")}\n}`);

  const still = maybe(0.12);
  const people = still ? 0 : maybe(0.2) ? 2 : 1;
  for (let i = 0; i < people; i++) {
    const x = people === 2 ? (i === 0 ? -0.4 : 0.42) : 0;
    out.push(`subject${people === 2 ? ` person_${i === 0 ? "a" : "b"}` : ""} {
  height: ${m(between(1.5, 1.9))}
  pose: ${pick("standing", "standing", "seated", "kneeling", people === 2 ? "standing" : "lying")}
  at: offset(right: ${m(x)})
  facing: ${side(between(-40, 40))}
  arms: ${pick("hanging", "hanging", "raised")}
  skin: ${share(8, 60)}
  cloth: ${share(3, 80)}
}`);
  }
  out.push(`point low { at: ${place(0.55, -0.5, 0.4)}, faces: up }
point near { at: ${place(between(-0.5, -0.3), between(-0.5, 0), between(1, 1.9))}, faces: camera }
point nook { at: ${place(between(0.3, 0.6), between(0.15, 0.4), between(0.2, 1.8))}, faces: ${pick("(0 m, 2 m, 1 m)", "camera", "up")} }`);

  const lamps = 1 + Math.floor(random() * 3);
  for (let i = 0; i < lamps; i++) {
    const shape = pick(
      `disc(${m(between(0.1, 0.9))})`,
      `rectangle(${m(between(0.2, 0.5))} x ${m(between(0.5, 1.3))})`,
      `sphere(${m(between(0.05, 0.3))})`,
      `capsule(${m(between(0.3, 1))}, ${m(between(0.03, 0.1))})`,
    );
    const flat = shape.startsWith("disc") || shape.startsWith("rect");
    const shines = flat
      ? pick("", "", `  beam: cosine_power(${pick(2, 4, 9)})\n`, `  grid: ${pick(20, 40, 60)} deg\n`)
      : "";
    const into = roomy && maybe(0.15) ? pick("ceiling", "wall_left", "wall_right") : "";
    const through = cloth && i === 0 && into === "";
    const where =
      into !== ""
        ? `  position: ${place(into === "ceiling" ? 0.9 : into === "wall_left" ? -0.9 : 0.9, -0.8, into === "ceiling" ? high - between(0.4, 0.9) : 1.7)}\n  into: ${into}\n`
        : through
          ? `  position: ${place(pick(-1, 1) * between(1.2, 1.5), between(-1.9, -1.6), 1.6)}\n  through: silk\n`
          : `  distance: ${m(between(0.9, 2))}\n  bearing: ${side(between(-150, 150))}\n  elevation: ${deg(between(-10, 35))}\n  aim: (0 m, 0 m, ${m(between(0.9, 1.6))})\n`;
    const stand =
      into === "" && maybe(0.4)
        ? `  stand { highest: 4 m${maybe(0.4) ? ", boom: 1 m, tail: 0.5 m" : ""} }\n`
        : "";
    out.push(`light lamp_${"abc"[i]} {
  shape: ${shape}
${shines}  output: ${between(200, 1500).toFixed(0)} lm s
${i === 0 ? "  role: key\n" : ""}${where}${stand}}`);
  }
  out.push(
    "camera { held: upright, focal_length: 50 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.4 m }",
  );
  return out.join("\n");
}
