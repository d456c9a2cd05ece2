import {
  ambientShare,
  calibratedReflectance,
  flashFNumber,
  flashRequiredExposure,
  focalPlaneExposure,
  incidentFNumber,
  incidentTime,
  mixedFNumber,
  reflectedTime,
  requiredIlluminance,
} from "../../physics/exposure.js";
import {
  exposureValue,
  exposureValue100,
  exposureValueOfIlluminance,
  illuminanceAtExposureValue,
  luminanceAtExposureValue,
  sunnySixteenIlluminance,
} from "../../physics/exposure-value.js";
import { formula, partialFormula } from "../formula.js";
import { none, nonNegative, number, optional, positive, type Quantity } from "../quantity.js";

const INCIDENT = "ISO 2720:1974, incident-light equation N^2 / t = E S / C";
const FLASH =
  "flash form of the ISO 2720:1974 incident-light equation, N^2 = H S / C; meters: ISO 10157:1991";
const TOO_LARGE = none("the result is beyond the range of numbers");

const illuminance = positive("illuminance_lx", "lx");
const luminance = positive("luminance_cd_m2", "cd/m2");
const iso = positive("iso", "ISO");
const fNumber = positive("f_number", "f");
const time = positive("time_s", "s");
const c = optional(positive("C", "lx s"), 250);
const k = optional(positive("K", "cd s/m2"), 12.5);
const ev100 = number("ev100", "EV");

/** Meter readings, exposure values and settings. */
export const EXPOSURE_QUANTITIES: readonly Quantity[] = [
  formula(
    {
      name: "incident_exposure_time",
      inputs: [illuminance, iso, fNumber, c],
      unit: "s",
      title: "Exposure time from an incident reading",
      source: INCIDENT,
    },
    (get) => incidentTime(get("illuminance_lx"), get("iso"), get("f_number"), get("C")),
  ),
  formula(
    {
      name: "incident_f_number",
      inputs: [illuminance, iso, time, c],
      unit: "1",
      title: "f-number from an incident reading",
      source: INCIDENT,
    },
    (get) => incidentFNumber(get("illuminance_lx"), get("iso"), get("time_s"), get("C")),
  ),
  formula(
    {
      name: "incident_required_illuminance",
      inputs: [fNumber, time, iso, c],
      unit: "lx",
      title: "Illuminance that settings ask for",
      source: INCIDENT,
    },
    (get) => requiredIlluminance(get("f_number"), get("time_s"), get("iso"), get("C")),
  ),
  formula(
    {
      name: "reflected_exposure_time",
      inputs: [luminance, iso, fNumber, k],
      unit: "s",
      title: "Exposure time from a reflected-light reading",
      source: "ISO 2720:1974, reflected-light equation N^2 / t = L S / K",
    },
    (get) => reflectedTime(get("luminance_cd_m2"), get("iso"), get("f_number"), get("K")),
  ),
  formula(
    {
      name: "calibrated_reflectance",
      inputs: [k, c],
      unit: "1",
      title: "Reflectance of the matt surface at which both kinds of meter agree",
      source: "pi K / C, from the two equations of ISO 2720:1974",
    },
    (get) => calibratedReflectance(get("K"), get("C")),
  ),
  formula(
    {
      name: "ev_from_settings",
      inputs: [fNumber, time],
      unit: "EV",
      title: "Exposure value of settings",
      source: "EV = log2(N^2 / t)",
    },
    (get) => exposureValue(get("f_number"), get("time_s")),
  ),
  formula(
    {
      name: "ev100_from_settings",
      inputs: [fNumber, time, iso],
      unit: "EV",
      title: "Exposure value of settings, referred to ISO 100",
      source: "EV100 = log2(N^2 / t) - log2(S / 100)",
    },
    (get) => exposureValue100(get("f_number"), get("time_s"), get("iso")),
  ),
  partialFormula(
    {
      name: "illuminance_at_ev100",
      inputs: [ev100, c],
      unit: "lx",
      title: "Illuminance of an exposure value at ISO 100",
      source: "E = C 2^EV / 100; ISO 2720:1974",
    },
    (get) => illuminanceAtExposureValue(get("ev100"), get("C")),
    TOO_LARGE,
  ),
  partialFormula(
    {
      name: "luminance_at_ev100",
      inputs: [ev100, k],
      unit: "cd/m2",
      title: "Luminance of an exposure value at ISO 100",
      source: "L = K 2^EV / 100; ISO 2720:1974",
    },
    (get) => luminanceAtExposureValue(get("ev100"), get("K")),
    TOO_LARGE,
  ),
  formula(
    {
      name: "ev100_from_illuminance",
      inputs: [illuminance, c],
      unit: "EV",
      title: "Exposure value at ISO 100 of an illuminance",
      source: "EV100 = log2(100 E / C)",
    },
    (get) => exposureValueOfIlluminance(get("illuminance_lx"), get("C")),
  ),
  formula(
    {
      name: "sunny16_illuminance",
      inputs: [c],
      unit: "lx",
      title: "Illuminance that f/16 at 1/ISO s stands for",
      source: "E = 256 C; the rule is common practice, no source",
    },
    (get) => sunnySixteenIlluminance(get("C")),
  ),
  formula(
    {
      name: "flash_f_number_from_luminous_exposure",
      inputs: [nonNegative("luminous_exposure_lxs", "lx s"), iso, c],
      unit: "1",
      title: "f-number from the luminous exposure of a flash",
      source: FLASH,
    },
    (get) => flashFNumber(get("luminous_exposure_lxs"), get("iso"), get("C")),
  ),
  formula(
    {
      name: "flash_required_luminous_exposure",
      inputs: [fNumber, iso, c],
      unit: "lx s",
      title: "Luminous exposure that an f-number asks for",
      source: FLASH,
    },
    (get) => flashRequiredExposure(get("f_number"), get("iso"), get("C")),
  ),
  formula(
    {
      name: "mixed_flash_ambient_f_number",
      inputs: [nonNegative("flash_lxs", "lx s"), nonNegative("ambient_lx", "lx"), time, iso, c],
      unit: "1",
      title: "f-number from flash and steady light together",
      source: "exposures add: N^2 = (H + E t) S / C",
    },
    (get) => mixedFNumber(get("flash_lxs"), get("ambient_lx"), get("time_s"), get("iso"), get("C")),
  ),
  partialFormula(
    {
      name: "ambient_fraction_of_exposure",
      inputs: [nonNegative("flash_lxs", "lx s"), nonNegative("ambient_lx", "lx"), time],
      unit: "1",
      title: "Share of the exposure that comes from the steady light",
      source: "E t / (H + E t)",
    },
    (get) => ambientShare(get("flash_lxs"), get("ambient_lx"), get("time_s")),
    none("there is neither flash nor steady light"),
  ),
  formula(
    {
      name: "focal_plane_exposure",
      inputs: [nonNegative("luminance_cd_m2", "cd/m2"), time, fNumber, optional(positive("qf", "1"), 0.65)],
      unit: "lx s",
      title: "Luminous exposure on the sensor",
      source: "H = q L t / N^2, q = 0.65; camera equation of ISO 12232 (q from memory)",
    },
    (get) => focalPlaneExposure(get("luminance_cd_m2"), get("time_s"), get("f_number"), get("qf")),
  ),
];
