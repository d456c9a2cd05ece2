import {
  durationAbove,
  motionBlur,
  schwarzschildTime,
  shareInsideShutter,
} from "../../physics/flash-duration.js";
import {
  bareFlashDistance,
  coneExposure,
  isotropicExposure,
  lambertianExposure,
  rectangularDiffuserExposure,
} from "../../physics/flash-exposure.js";
import { formula, partialFormula } from "../formula.js";
import { none, nonNegative, number, optional, positive, type Quantity } from "../quantity.js";

const EFFICACY = "efficacies of 15 to 50 lm s/J for whole studio units are in print: an estimate";

const energy = positive("energy_J", "J");
const efficacy = positive("efficacy_lms_per_J", "lm s/J");
const distance = positive("distance_m", "m");
const share = { above: 0, atMost: 1 } as const;
const transmission = number("transmission", "1", share);

/** Light, duration and blur of flashes. */
export const FLASH_QUANTITIES: readonly Quantity[] = [
  formula(
    {
      name: "flash_luminous_exposure_isotropic",
      inputs: [energy, efficacy, distance],
      unit: "lx s",
      title: "Luminous exposure from a bare tube that shines alike in all directions",
      source: `H = E eta / (4 pi d^2); ${EFFICACY}`,
    },
    (get) => isotropicExposure(get("energy_J"), get("efficacy_lms_per_J"), get("distance_m")),
  ),
  formula(
    {
      name: "flash_luminous_exposure_lambertian_front",
      inputs: [energy, efficacy, transmission, distance],
      unit: "lx s",
      title: "Luminous exposure from a flat diffuser far away, on its axis",
      source: `H = E eta tau / (pi d^2); ${EFFICACY}`,
    },
    (get) =>
      lambertianExposure(get("energy_J"), get("efficacy_lms_per_J"), get("transmission"), get("distance_m")),
  ),
  formula(
    {
      name: "flash_luminous_exposure_uniform_cone",
      inputs: [
        energy,
        efficacy,
        number("utilisation", "1", share),
        number("beam_deg", "deg", { above: 0, atMost: 360 }),
        distance,
      ],
      unit: "lx s",
      title: "Luminous exposure from a reflector that spreads its light evenly over a cone",
      source: `H = E eta u / (2 pi (1 - cos(beam / 2)) d^2); ${EFFICACY}`,
    },
    (get) =>
      coneExposure(
        get("energy_J"),
        get("efficacy_lms_per_J"),
        get("utilisation"),
        (get("beam_deg") * Math.PI) / 180,
        get("distance_m"),
      ),
  ),
  formula(
    {
      name: "flash_luminous_exposure_rectangular_diffuser",
      inputs: [energy, efficacy, transmission, positive("width_m", "m"), positive("height_m", "m"), distance],
      unit: "lx s",
      title: "Luminous exposure from a uniform rectangular diffuser at any distance, on its axis",
      source: `H = E eta tau / (pi A) times the projected solid angle; ${EFFICACY}`,
    },
    (get) =>
      rectangularDiffuserExposure(
        get("energy_J"),
        get("efficacy_lms_per_J"),
        get("transmission"),
        get("width_m"),
        get("height_m"),
        get("distance_m"),
      ),
  ),
  formula(
    {
      name: "bare_flash_distance_for_exposure",
      inputs: [
        energy,
        efficacy,
        positive("iso", "ISO"),
        positive("f_number", "f"),
        optional(positive("C", "lx s"), 250),
      ],
      unit: "m",
      title: "Distance at which a bare tube gives the wanted exposure",
      source: `d = sqrt(E eta S / (4 pi C N^2)); ${EFFICACY}`,
    },
    (get) =>
      bareFlashDistance(get("energy_J"), get("efficacy_lms_per_J"), get("iso"), get("f_number"), get("C")),
  ),
  formula(
    {
      name: "flash_t01_over_t05_exponential",
      inputs: [positive("tau_s", "s")],
      unit: "1",
      title: "Duration above 10 % over duration above 50 % of the peak, exponential decay",
      source: "ln 10 / ln 2, whatever the time constant; levels of ISO 2827:1988 (edition from memory)",
    },
    (get) => durationAbove(get("tau_s"), 0.1) / durationAbove(get("tau_s"), 0.5),
  ),
  formula(
    {
      name: "flash_fraction_within_shutter",
      inputs: [positive("t05_s", "s"), nonNegative("shutter_s", "s")],
      unit: "1",
      title: "Share of a flash inside a shutter time that starts with it, exponential decay",
      source: "1 - 2^(-t / t0.5)",
    },
    (get) => shareInsideShutter(get("t05_s"), get("shutter_s")),
  ),
  partialFormula(
    {
      name: "schwarzschild_corrected_time",
      inputs: [positive("metered_s", "s"), positive("p", "1")],
      unit: "s",
      title: "Exposure time corrected for reciprocity failure; unchanged below 1 s",
      source: "t^p, Schwarzschild's form; p belongs to the material",
    },
    (get) => schwarzschildTime(get("metered_s"), get("p")),
    none("the corrected time is beyond the range of numbers"),
  ),
  formula(
    {
      name: "motion_blur_on_sensor",
      inputs: [
        nonNegative("speed_m_s", "m/s"),
        nonNegative("time_s", "s"),
        nonNegative("magnification", "1"),
      ],
      unit: "mm",
      title: "Blur on the sensor of a thing that moves across",
      source: "v t m",
    },
    (get) => 1000 * motionBlur(get("speed_m_s"), get("time_s"), get("magnification")),
  ),
];
