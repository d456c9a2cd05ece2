/**
 * Words of the trade that the language says otherwise. They are answered with the word that is meant, since no
 * edit distance leads from `iso` to `sensitivity`.
 */
export interface PropertySynonym {
  /** Kinds of block in which the wrong word is understood. */
  readonly kinds: readonly string[];
  readonly wrong: readonly string[];
  readonly right: string;
  /** How the property is written with the value given; `{value}` is the value as written. */
  readonly say: string;
  /** The same where the value is a plain number or plain numbers without unit. */
  readonly plain?: string;
}

/** Wrong words for properties, with the right ones. */
export const propertySynonyms: readonly PropertySynonym[] = [
  {
    kinds: ["camera"],
    wrong: ["iso", "ISO", "asa", "speed", "gain"],
    right: "sensitivity",
    say: "sensitivity: {value}",
    plain: "sensitivity: ISO {value}",
  },
  {
    kinds: ["camera"],
    wrong: ["lens", "focal", "focallength", "zoom"],
    right: "focal_length",
    say: "focal_length: {value}",
    plain: "focal_length: {value} mm",
  },
  {
    kinds: ["camera"],
    wrong: ["wb", "white", "white_balance", "whitebalance", "temperature", "kelvin"],
    right: "balance",
    say: "balance: {value}",
    plain: "balance: {value} K",
  },
  {
    kinds: ["camera"],
    wrong: ["f", "fstop", "f_stop", "f_number", "fnumber", "iris", "stop"],
    right: "aperture",
    say: "aperture: {value}",
    plain: "aperture: f/{value}",
  },
  {
    kinds: ["camera"],
    wrong: ["shutter_speed", "exposure", "exposure_time", "time"],
    right: "shutter",
    say: "shutter: {value}",
    plain: "shutter: {value} s",
  },
  { kinds: ["camera"], wrong: ["orientation", "format", "turned"], right: "held", say: "held: upright" },
  {
    kinds: ["camera"],
    wrong: ["sensor", "sensor_size", "film"],
    right: "frame",
    say: "frame: {value}",
    plain: "frame: {value} mm",
  },
  {
    kinds: ["camera"],
    wrong: ["sync_speed", "x_sync", "flash_sync"],
    right: "sync",
    say: "sync: {value}",
    plain: "sync: {value} s",
  },
  {
    kinds: ["light", "modifier"],
    wrong: ["softbox", "soft_box", "box", "strip", "window", "panel", "face", "opening"],
    right: "shape",
    say: "shape: rectangle({value})",
    plain: "shape: rectangle({value} cm)",
  },
  {
    kinds: ["light", "modifier"],
    wrong: ["dish", "octa", "octabox", "umbrella", "diameter", "reflector", "beauty_dish", "size"],
    right: "shape",
    say: "shape: disc({value})",
    plain: "shape: disc({value} cm)",
  },
  {
    kinds: ["light", "modifier"],
    wrong: ["bulb", "tube", "bare", "bare_bulb"],
    right: "shape",
    say: "shape: sphere({value})",
    plain: "shape: sphere({value} cm)",
  },
  {
    kinds: ["light"],
    wrong: [
      "wattage",
      "watts",
      "joules",
      "energy",
      "strength",
      "intensity",
      "brightness",
      "level",
      "setting",
    ],
    right: "power",
    say: "power: {value}",
  },
  {
    kinds: ["light"],
    wrong: ["max_power", "maximum", "max", "capacity"],
    right: "full_power",
    say: "full_power: {value}",
    plain: "full_power: {value} Ws",
  },
  {
    kinds: ["light"],
    wrong: [
      "color",
      "temperature",
      "colour_temperature",
      "color_temperature",
      "kelvin",
      "white",
      "wb",
      "balance",
    ],
    right: "colour",
    say: "colour: {value}",
    plain: "colour: {value} K",
  },
  { kinds: ["light"], wrong: ["gels", "filter", "filters", "cto", "ctb"], right: "gel", say: "gel: {value}" },
  {
    kinds: ["light"],
    wrong: ["azimuth", "angle", "side", "direction"],
    right: "bearing",
    say: "bearing: {value}",
    plain: "bearing: left({value} deg)",
  },
  {
    kinds: ["light"],
    wrong: ["tilt", "altitude"],
    right: "elevation",
    say: "elevation: {value}",
    plain: "elevation: {value} deg",
  },
  {
    kinds: ["light"],
    wrong: ["throw", "tape", "dist", "away", "slant"],
    right: "distance",
    say: "distance: {value}",
    plain: "distance: {value} m",
  },
  {
    kinds: ["light"],
    wrong: ["along_floor", "floor", "ground_distance", "horizontal"],
    right: "floor_distance",
    say: "floor_distance: {value}",
    plain: "floor_distance: {value} m",
  },
  { kinds: ["light"], wrong: ["type", "source"], right: "kind", say: "kind: {value}" },
  {
    kinds: ["light"],
    wrong: ["honeycomb", "egg_crate", "eggcrate"],
    right: "grid",
    say: "grid: {value}",
    plain: "grid: {value} deg",
  },
  {
    kinds: ["light"],
    wrong: ["loss", "diffusion", "cost", "costs"],
    right: "loses",
    say: "loses: {value}",
    plain: "loses: {value} stop",
  },
  {
    kinds: ["light"],
    wrong: ["target", "points_at", "pointed_at", "look_at", "aimed"],
    right: "aim",
    say: "aim: {value}",
  },
  {
    kinds: ["light", "camera"],
    wrong: ["at", "place", "xyz", "pos", "location"],
    right: "position",
    say: "position: {value}",
  },
  {
    kinds: ["light", "camera"],
    wrong: ["lamp_height", "lens_height", "up"],
    right: "height",
    say: "height: {value}",
    plain: "height: {value} m",
  },
  {
    kinds: ["subject"],
    wrong: ["stature", "tall", "size", "length"],
    right: "height",
    say: "height: {value}",
    plain: "height: {value} cm",
  },
  { kinds: ["subject"], wrong: ["position", "place"], right: "at", say: "at: {value}" },
  {
    kinds: ["subject"],
    wrong: ["faces", "looks", "looking", "turned"],
    right: "facing",
    say: "facing: {value}",
  },
  {
    kinds: ["room"],
    wrong: ["dimensions", "width", "measures"],
    right: "size",
    say: "size: {value}",
    plain: "size: {value} m",
  },
  {
    kinds: ["room"],
    wrong: ["reflectance", "colour", "color", "paint"],
    right: "walls",
    say: "walls { reflectance: {value} }",
    plain: "walls { reflectance: {value} % }",
  },
  {
    kinds: ["room"],
    wrong: ["daylight", "existing_light", "room_light"],
    right: "ambient",
    say: "ambient: {value}",
    plain: "ambient: {value} lx",
  },
  {
    kinds: ["flat", "card", "scrim", "panel"],
    wrong: ["dimensions", "width"],
    right: "size",
    say: "size: {value}",
    plain: "size: {value} m",
  },
  {
    kinds: ["flat", "card", "paper", "panel", "table", "walls", "ceiling", "floor", "wall"],
    wrong: ["colour", "color", "albedo", "white", "reflection", "reflectivity"],
    right: "reflectance",
    say: "reflectance: {value}",
    plain: "reflectance: {value} %",
  },
  {
    kinds: ["flat"],
    wrong: ["angle", "opened", "open"],
    right: "opening",
    say: "opening: {value}",
    plain: "opening: {value} deg",
  },
  { kinds: ["paper"], wrong: ["length"], right: "run", say: "run: {value}", plain: "run: {value} m" },
  {
    kinds: ["scrim"],
    wrong: ["transmission", "loss", "cloth"],
    right: "loses",
    say: "loses: {value}",
    plain: "loses: {value} stop",
  },
];

/** Shapes of light by the words that people may use instead. */
export const shapeSynonyms: ReadonlyMap<string, string> = new Map(
  Object.entries({
    disc: ["disk", "round", "circle", "octa", "octabox", "octagon", "dish", "umbrella", "ring"],
    rectangle: ["rect", "box", "softbox", "strip", "window", "panel"],
    sphere: ["ball", "bulb", "globe", "lantern"],
    capsule: ["tube", "rod", "cylinder"],
  }).flatMap(([right, wrong]) => wrong.map((word) => [word, right] as const)),
);

/** Kinds of block by the words people may use instead. */
export const kindSynonyms: ReadonlyMap<string, string> = new Map(
  Object.entries({
    light: [
      "lights",
      "lamp",
      "lamps",
      "strobe",
      "flash",
      "head",
      "softbox",
      "key",
      "fill",
      "source",
      "monolight",
      "speedlight",
      "spot",
      "sun",
    ],
    subject: ["subjects", "person", "people", "model", "sitter", "talent", "figure", "sitters"],
    camera: ["cameras", "lens", "cam"],
    room: ["rooms", "studio", "space"],
    set: ["sets", "backdrop", "background", "backdrops"],
    flat: ["flats", "vflat", "v_flat", "polyboard"],
    card: ["cards", "reflector", "board", "bounce", "negative", "flag"],
    scrim: ["scrims", "diffuser", "silk", "frame"],
    paper: ["papers", "seamless", "roll", "sweep"],
    point: ["points", "station", "meter_point"],
    modifier: ["modifiers"],
    gel: ["gels", "filter"],
    walls: ["wall_all"],
    intent: ["intents", "look", "goal", "mood"],
    about: ["info", "meta", "metadata"],
    tolerances: ["tolerance"],
    thresholds: ["threshold", "limits"],
    table: ["tables", "desk"],
    sphere: ["spheres", "ball"],
    box: ["boxes", "cube"],
    panel: ["panels"],
    meter: ["lightmeter", "light_meter"],
  }).flatMap(([right, wrong]) => wrong.map((word) => [word, right] as const)),
);

/** Words that people may use where a property takes one of a few others. */
export const wordSynonyms: readonly {
  readonly property: string;
  readonly wrong: readonly string[];
  readonly right: string;
}[] = [
  { property: "held", wrong: ["portrait", "vertical", "tall"], right: "upright" },
  { property: "held", wrong: ["landscape", "horizontal", "wide"], right: "level" },
  { property: "kind", wrong: ["strobe", "flashgun", "speedlight"], right: "flash" },
  { property: "kind", wrong: ["continuous", "constant", "led", "tungsten", "bulb", "hot"], right: "steady" },
  { property: "role", wrong: ["main"], right: "key" },
  { property: "role", wrong: ["back", "backlight", "kicker", "edge"], right: "rim" },
  { property: "role", wrong: ["backdrop"], right: "background" },
  { property: "pose", wrong: ["stand", "upright", "stood"], right: "standing" },
  { property: "pose", wrong: ["sitting", "sit", "sits", "sat", "seat"], right: "seated" },
  { property: "pose", wrong: ["kneels", "knees", "crouching"], right: "kneeling" },
  { property: "pose", wrong: ["lies", "laying", "reclining"], right: "lying" },
  { property: "pattern", wrong: ["paramount", "glamour"], right: "butterfly" },
  { property: "finish", wrong: ["matte", "mat", "dull"], right: "matt" },
  { property: "finish", wrong: ["shiny", "polished", "mirror"], right: "glossy" },
  { property: "edges", wrong: ["sharp", "crisp"], right: "hard" },
  { property: "edges", wrong: ["diffuse", "gentle", "blurred"], right: "soft" },
  { property: "modelling_lamp", wrong: ["led", "diode", "cold"], right: "cool" },
  { property: "modelling_lamp", wrong: ["filament", "halogen", "tungsten"], right: "hot" },
  { property: "wall", wrong: ["rear", "behind"], right: "back" },
];
