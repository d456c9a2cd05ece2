import {
  blurDisc,
  depthOfField,
  farLimit,
  hyperfocalDistance,
  nearLimit,
} from "../../physics/depth-of-field.js";
import { airyDisc } from "../../physics/diffraction.js";
import {
  angleOfView,
  backdropWidth,
  distanceForFrame,
  fieldAtDistance,
} from "../../physics/field-of-view.js";
import { closeFocusLoss, magnification } from "../../physics/magnification.js";
import { circleOfConfusion, cropFactor, diagonal } from "../../physics/sensor-format.js";
import {
  type Inputs,
  impossible,
  none,
  nonNegative,
  type Outcome,
  positive,
  type Quantity,
  value,
} from "../quantity.js";

const THIN_LENS =
  "thin lens, symmetric pupil; Ray, Applied Photographic Optics (2002); Conrad, Depth of Field in Depth (2006); " +
  "formulae standard, pages from memory";

const APERTURE = [positive("focal_mm", "mm"), positive("f_number", "1"), positive("coc_mm", "mm")] as const;

const FOCUSED = [...APERTURE, positive("subject_mm", "mm")] as const;

type LensFormula = (focal: number, fNumber: number, circle: number, subject: number) => number | undefined;

/** A formula that needs an image of the subject and may have no finite end. */
function focused(inputs: Inputs, formula: LensFormula): Outcome {
  const focal = inputs.number("focal_mm");
  const subject = inputs.number("subject_mm");
  if (subject <= focal) return noImage();
  const result = formula(focal, inputs.number("f_number"), inputs.number("coc_mm"), subject);
  return result === undefined
    ? none("the focus is at or beyond the hyperfocal distance, so that the far limit is infinite")
    : value(result);
}

function imaged(result: number | undefined): Outcome {
  return result === undefined ? noImage() : value(result);
}

function noImage(): Outcome {
  return impossible("subject_mm must be greater than focal_mm: a nearer subject has no image");
}

/** Depth of field, field of view, formats and magnification. */
export const LENS_QUANTITIES: readonly Quantity[] = [
  {
    name: "hyperfocal_distance",
    inputs: APERTURE,
    unit: "mm",
    title: "Nearest focus at which infinity still looks sharp",
    source: `H = f^2 / (N c) + f; ${THIN_LENS}`,
    compute: (inputs) =>
      value(
        hyperfocalDistance(inputs.number("focal_mm"), inputs.number("f_number"), inputs.number("coc_mm")),
      ),
  },
  {
    name: "depth_of_field_near_limit",
    inputs: FOCUSED,
    unit: "mm",
    title: "Nearest distance that looks sharp",
    source: `s (H - f) / (H + s - 2 f); ${THIN_LENS}`,
    compute: (inputs) => focused(inputs, nearLimit),
  },
  {
    name: "depth_of_field_far_limit",
    inputs: FOCUSED,
    unit: "mm",
    title: "Farthest distance that looks sharp",
    source: `s (H - f) / (H - s), infinite for s >= H; ${THIN_LENS}`,
    compute: (inputs) => focused(inputs, farLimit),
  },
  {
    name: "depth_of_field_total",
    inputs: FOCUSED,
    unit: "mm",
    title: "Depth that looks sharp",
    source: `far limit less near limit; ${THIN_LENS}`,
    compute: (inputs) => focused(inputs, depthOfField),
  },
  {
    name: "background_blur_disc",
    inputs: [
      positive("focal_mm", "mm"),
      positive("f_number", "1"),
      positive("subject_mm", "mm"),
      positive("point_mm", "mm"),
    ],
    unit: "mm",
    title: "Diameter on the sensor of the blur disc of a point out of focus",
    source: `b = f^2 |x - s| / (N x (s - f)); ${THIN_LENS}`,
    compute: (inputs) =>
      imaged(
        blurDisc(
          inputs.number("focal_mm"),
          inputs.number("f_number"),
          inputs.number("subject_mm"),
          inputs.number("point_mm"),
        ),
      ),
  },
  {
    name: "angle_of_view_infinity",
    inputs: [positive("sensor_mm", "mm"), positive("focal_mm", "mm")],
    unit: "deg",
    title: "Angle of view of a rectilinear lens focused at infinity",
    source: "2 atan(w / 2 f), plane geometry",
    compute: (inputs) =>
      value((angleOfView(inputs.number("sensor_mm"), inputs.number("focal_mm")) * 180) / Math.PI),
  },
  {
    name: "sensor_diagonal",
    inputs: [positive("width_mm", "mm"), positive("height_mm", "mm")],
    unit: "mm",
    title: "Diagonal of a sensor",
    source: "Pythagoras",
    compute: (inputs) => value(diagonal(inputs.number("width_mm"), inputs.number("height_mm"))),
  },
  {
    name: "coc_from_diagonal",
    inputs: [positive("width_mm", "mm"), positive("height_mm", "mm"), positive("divisor", "1")],
    unit: "mm",
    title: "Circle of confusion as a share of the sensor's diagonal",
    source: "diagonal / divisor; the divisor (1500, 1730) is common practice, no source",
    compute: (inputs) =>
      value(
        circleOfConfusion(inputs.number("width_mm"), inputs.number("height_mm"), inputs.number("divisor")),
      ),
  },
  {
    name: "magnification",
    inputs: [positive("focal_mm", "mm"), positive("subject_mm", "mm")],
    unit: "1",
    title: "Size of the image over the size of the subject",
    source: `m = f / (s - f); ${THIN_LENS}`,
    compute: (inputs) => imaged(magnification(inputs.number("focal_mm"), inputs.number("subject_mm"))),
  },
  {
    name: "field_at_distance",
    inputs: [positive("sensor_mm", "mm"), positive("focal_mm", "mm"), positive("subject_mm", "mm")],
    unit: "mm",
    title: "What the frame takes in at the plane of focus",
    source: `W = w (s - f) / f; ${THIN_LENS}`,
    compute: (inputs) =>
      imaged(
        fieldAtDistance(inputs.number("sensor_mm"), inputs.number("focal_mm"), inputs.number("subject_mm")),
      ),
  },
  {
    name: "distance_to_frame_height",
    inputs: [positive("sensor_mm", "mm"), positive("focal_mm", "mm"), positive("frame_mm", "mm")],
    unit: "mm",
    title: "Distance at which the frame takes in a wanted size",
    source: `s = f (1 + W / w); ${THIN_LENS}`,
    compute: (inputs) =>
      value(
        distanceForFrame(inputs.number("sensor_mm"), inputs.number("focal_mm"), inputs.number("frame_mm")),
      ),
  },
  {
    name: "backdrop_width_needed",
    inputs: [positive("subject_frame_mm", "mm"), positive("subject_mm", "mm"), positive("backdrop_mm", "mm")],
    unit: "mm",
    title: "Width of backdrop that fills the frame behind the subject",
    source: "similar triangles from the entrance pupil",
    compute: (inputs) =>
      value(
        backdropWidth(
          inputs.number("subject_frame_mm"),
          inputs.number("subject_mm"),
          inputs.number("backdrop_mm"),
        ),
      ),
  },
  {
    name: "bellows_factor_stops",
    inputs: [nonNegative("magnification", "1")],
    unit: "stop",
    title: "Light lost by focusing near",
    source: `2 log2(1 + m); ${THIN_LENS}`,
    compute: (inputs) => value(closeFocusLoss(inputs.number("magnification"))),
  },
  {
    name: "airy_disc_diameter",
    inputs: [positive("f_number", "1"), nonNegative("magnification", "1"), positive("wavelength_nm", "nm")],
    unit: "mm",
    title: "Diameter on the sensor of the disc as which diffraction draws a point",
    source:
      "2.44 lambda N (1 + m), with 2.44 for twice the first zero of J1 over pi (Abramowitz and Stegun (1964), table 9.5); Ray, Applied Photographic Optics (2002), page from memory",
    compute: (inputs) =>
      value(
        1000 *
          airyDisc(
            inputs.number("f_number"),
            inputs.number("magnification"),
            inputs.number("wavelength_nm") * 1e-9,
          ),
      ),
  },
  {
    name: "crop_factor",
    inputs: [positive("width_mm", "mm"), positive("height_mm", "mm")],
    unit: "1",
    title: "Diagonal of 36 x 24 mm over the sensor's diagonal",
    source: "Pythagoras; frame size ISO 1007",
    compute: (inputs) => value(cropFactor(inputs.number("width_mm"), inputs.number("height_mm"))),
  },
];
