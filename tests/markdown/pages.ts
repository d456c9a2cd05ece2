/** A recipe of a lamp at the weaver's loom, quick to work out. */
export const recipe = `halfshade 1
recipe "The weaver at the loom"

subject { height: 1.70 m }

light key {
  shape: disc(60 cm)
  calibration: metered(f/11, at: 2 m, ISO 100)
  power: 1/2
  distance: 2 m
  bearing: left(45 deg)
  height: 2.1 m
}

camera {
  held: upright
  focal_length: 85 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 100
  distance: 3 m
  height: 1.4 m
}

expect key.angular_size > 10 deg

variant "Farther out" {
  key.distance: 4 m
}

table "Walk the lamp in" {
  sweep key.distance over [1 m, 2 m, 4 m]
  show key.angular_size as deg "Size"
}
`;

/** A page with text before and behind a fence. */
export const page = (info: string, text: string = recipe): string =>
  `# A lesson\n\nBefore.\n\n\`\`\`${info}\n${text}\`\`\`\n\nAfter.\n`;
