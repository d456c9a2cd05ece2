import { airyOf, opticsOf, pixelPitch } from "../frame/sharpness.js";
import { apertureAtMost } from "../say/nominal.js";
import { fixed, twoFigures } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule } from "./rule.js";

/** Diffraction softens the finest detail. */
export const diffraction: Rule = {
  code: "diffraction",
  thresholds: ["diffraction"],
  safety: false,
  page: {
    when: "The disc as which diffraction draws a point, 2.44 x 555 nm x N (1 + m), is more than `diffraction` (0.85) of the circle of confusion. With the usual circle that is beyond f/18 on 36 x 24 mm, and earlier on smaller formats and near by.",
    means: "The whole picture loses its finest detail, whatever is in focus.",
    todo: "Open the aperture; depth is won by distance, or by several pictures focused one behind the other.",
    source:
      "Airy disc: Ray, Applied Photographic Optics (2002), formula standard, page from memory; the threshold is common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const optics = opticsOf(scene);
    if (typeof optics === "string") return [];
    const airy = airyOf(optics);
    const circle = optics.camera.circleOfConfusion;
    const most = threshold(recipe, "diffraction");
    if (!(airy > most * circle * (1 + 1e-9))) return [];
    const wider = apertureAtMost((optics.fNumber * most * circle) / airy);
    const good =
      wider !== null && airyOf({ ...optics, fNumber: wider.exact }) <= most * circle * (1 + 1e-9)
        ? wider
        : null;
    const pitch = pixelPitch(optics.camera);
    const pixels = pitch === null ? "" : `, ${fixed(airy / pitch, 1)} pixels`;
    return [
      {
        severity: "note",
        message: `Diffraction draws a point as a disc of ${twoFigures(airy * 1e6)} micrometres${pixels}; ${twoFigures(circle * 1e6)} count as sharp.`,
        remedy: `${good === null ? "Open the aperture" : `Open to ${good.text} or wider`}; for more depth go farther away than ${sayLength(optics.focus)}, or focus several pictures one behind the other.`,
        about: null,
      },
    ];
  },
};
