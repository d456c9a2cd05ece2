import { bodyPoints, fixedPoints, takenNames } from "../../../src/check/places.js";
import type { Draw } from "./draw.js";

/** Names that have given trouble elsewhere: keys of objects, words of the language, other alphabets, blanks. */
const hard = [
  ...["__proto__", "constructor", "toString", "hasOwnProperty", "valueOf", "prototype"],
  ...[
    "light",
    "expect",
    "let",
    "from",
    "with",
    "like",
    "table",
    "over",
    "is",
    "within",
    "and",
    "by",
    "of",
    "between",
  ],
  ...[
    "x",
    "f",
    "in",
    "m",
    "ISO",
    "EV",
    "deg",
    "surely",
    "because",
    "hold",
    "recipe",
    "halfshade",
    "left",
    "right",
    "key",
  ],
  ...["δεξιά", "übers_Dach", "灯", "prénom", "é", "नमस्ते", "ключ"],
  ...[
    "two words",
    "2nd",
    "a-b",
    "#1",
    "it's",
    '"quoted"',
    "{brace}",
    "10 cm",
    "f/8",
    " ",
    "_low",
    "😀",
    "a:b",
    "stops",
  ],
];

/** A source of names, each given out once. */
export function namesOf(draw: Draw): () => string {
  const used = new Set<string>([...takenNames, ...bodyPoints, ...fixedPoints]);
  let count = 0;
  return () => {
    const wish = draw.once(3) ? `n${count}` : draw.one(hard).normalize("NFC");
    const name = used.has(wish) ? `n${count}` : wish;
    count++;
    used.add(name);
    return name;
  };
}
