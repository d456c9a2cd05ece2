/** Valid texts that together hold every construct of the language, for changing letter by letter. */
export const recipeTexts: readonly string[] = [
  `halfshade 1
recipe "Dusk in the net loft"

about {
  by: "the loft"  # who set it up
  tags: ["soft", "two lamps",
    "loft"]
  note: """
    A door that is not there,
      drawn with one cloth.
    """
}

use head_a, octa from "./kit.light"
let throw = 3.4 m + 2 * 30 cm - (1 m + 2 m) / 2

room { size: 5 x 8 x 3.2 m, mark: from(left: 1.2 m, back: 70 cm) }
set {
  flat back { size: 2.4 x 2.4 m, reflectance: 55 % }
  paper floor like grey_roll { run: 4 m }
}
subject {
  height: 5 ft 7 1/2 in
  at: (0 m, 0 m, 0 m)
  point face { up: 1.55 m +- 1 cm, ahead: -8 cm }
}
light key like head_a with octa {
  calibration with octa: metered(f/8, at: 2 m, ISO 100)
  distance: 2.6 m from face
  power: full - 2 stop
  dial: numbers(10 is full, 1 is 1 stop)
  position: offset(left: 40 cm, behind: 30 cm,
    up: 1 m)
  place: between(a, b, 40 cm from b)
  output: 1000 lm s, efficacy: 10 lm/W
  wish: 1 stop under face.disc(towards: key)
  height: ?
}
light fill like key
light \`rim light\` like key { bearing: left(30 deg) }
`,
  `halfshade 1
recipe "Checks"

expect surely key.angular_size is 12 deg within 5 % and key.distance > 2 m
  because "the stand has to fit"
expect face.disc(towards: key) is 1 stop under back within 0.3 stop
expect key.distance between 1 m and 2 m
expect no_warnings
hold face.disc(towards: key) is f/8 by key.power, fill.power

table "Walk the lamp in" {
  sweep key.distance from 1 m to 4 m step 0.5 m
  sweep key over [head_a, head_b]
  sweep key.height from 1 m to 3 m count 5
  show key.angular_size as deg "Size", face.disc(towards: key),
    back as lm s
  hold face.disc(towards: key) by key.power
  key.power: 1/4
}

variant "Later" {
  remove fill
  keep expectations
  key.elevation: 18 deg
  light extra { power: 1/2 }
  expect key.distance < 3 m
}

variant "Later still" from "Later" { key.distance: 3 m, remove extra }

solve "find the lamp" {
  find key.distance between 2 m and 9 m near 6 m
  meet key.angular_size is 0.5 deg within 2 %
  prefer least key.power
}
`,
  `halfshade 1
# What was measured on the first evening.
session "first try" of "./loft.light" {
  measured {
    face.disc(towards: key) is f/8 +- 1/3 stop
    key.distance: 2.55 m, key.height: 1.9 m
    light extra { at: (0 m, 1 m, 2 m) }
  }
}
`,
  `halfshade 1
kit "Cupboard"

define light head_a {
  kind: flash
  shape: disc(5 cm)
  white: 5600 K
}
define gel straw { shift: 60 mired, costs: 1/3 stop }
define camera full { frame: 36 x 24 mm, sync: 1/200 s, sensitivity: ISO 100 }
`,
];
