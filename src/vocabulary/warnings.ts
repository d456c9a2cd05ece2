/** One warning of the report, as a recipe knows it. */
export interface WarningRow {
  /** Words joined by hyphens. */
  readonly code: string;
  /** True for warnings about people's safety, which cannot be silenced. */
  readonly safety: boolean;
}

/** Every warning, in the order in which findings of like weight are reported. */
export const warningTable = [
  { code: "lamp-through-ceiling", safety: false },
  { code: "lamp-near-ceiling", safety: false },
  { code: "stand-too-short", safety: false },
  { code: "lamp-through-wall", safety: false },
  { code: "camera-through-wall", safety: false },
  { code: "set-short-top", safety: false },
  { code: "set-top-pose", safety: false },
  { code: "bare-frame", safety: false },
  { code: "paper-edge", safety: false },
  { code: "fold-at-head", safety: false },
  { code: "panel-shades-key", safety: false },
  { code: "blocked", safety: false },
  { code: "lamp-in-frame", safety: false },
  { code: "own-shadow", safety: false },
  { code: "not-sun-hard", safety: false },
  { code: "sun-flat", safety: false },
  { code: "sun-harsh", safety: false },
  { code: "low-sun", safety: false },
  { code: "elevation-changes-down-body", safety: false },
  { code: "fan", safety: false },
  { code: "two-suns", safety: false },
  { code: "not-overcast", safety: false },
  { code: "hot-spot-scrim", safety: false },
  { code: "diffuser-no-softer", safety: false },
  { code: "soft-too-far", safety: false },
  { code: "crossing-noses", safety: false },
  { code: "dark-sockets", safety: false },
  { code: "not-enough-power", safety: false },
  { code: "no-reserve", safety: false },
  { code: "below-minimum", safety: false },
  { code: "off-aperture", safety: false },
  { code: "uncalibrated", safety: false },
  { code: "near-field", safety: false },
  { code: "meter-trap", safety: false },
  { code: "ratio-off", safety: false },
  { code: "no-detail", safety: false },
  { code: "head-to-toe", safety: false },
  { code: "people-uneven", safety: false },
  { code: "background-off", safety: false },
  { code: "white-too-hot", safety: false },
  { code: "white-too-dim", safety: false },
  { code: "bg-uneven", safety: false },
  { code: "wrap", safety: false },
  { code: "clipped-lit", safety: false },
  { code: "ambient", safety: false },
  { code: "sync-band", safety: false },
  { code: "white-balance-off", safety: false },
  { code: "tail-cut", safety: false },
  { code: "motion-blur", safety: false },
  { code: "burst-too-fast", safety: false },
  { code: "colour-mix", safety: false },
  { code: "bounce-colour", safety: false },
  { code: "reflectance-assumed", safety: false },
  { code: "out-of-focus", safety: false },
  { code: "diffraction", safety: false },
  { code: "too-close", safety: false },
  { code: "edge-stretch", safety: false },
  { code: "flare", safety: false },
  { code: "stand-tip", safety: true },
  { code: "boom-balance", safety: true },
] as const satisfies readonly WarningRow[];

/** The code of a warning. */
export type WarningCode = (typeof warningTable)[number]["code"];
