import type { LightModel } from "../../model/types.js";
import type { CalibrationValue, OutputValue } from "../../model/values.js";
import type { Beam } from "../../physics/beam.js";
import {
  energyFromAxialIntensity,
  energyFromGuideNumber,
  energyFromReading,
} from "../../physics/calibration.js";
import type { SourceShape } from "../../physics/source-shape.js";
import { shareInStops } from "../../units/spread.js";
import { placeOfBlock, report, type Site } from "../site.js";
import { uncertainty } from "./uncertainty.js";

/** The luminous energy of a head as it is defined, at full power, before gels, grid and losses. */
export interface HeadOutput {
  /** lm s. */
  readonly energy: number;
  /** Stops to either side. */
  readonly uncertainty: number;
  readonly known: string;
}

const unknownOutput: HeadOutput = { energy: 0, uncertainty: 0, known: "not known" };

/** The time over which a steady lamp's light counts, s. */
export function shutterOf(site: Site): number {
  return site.recipe.camera?.shutter?.value ?? 1;
}

function statedOutput(site: Site, output: OutputValue, shape: SourceShape, beam: Beam): HeadOutput {
  const amount = output.amount.value;
  const steady = output.kind === "flux" || output.kind === "intensity";
  const time = steady ? shutterOf(site) : 1;
  const known = `stated output, ${output.amount.written}`;
  const off = shareInStops(output.amount) ?? uncertainty.output;
  if (output.kind === "luminous_energy" || output.kind === "flux") {
    return { energy: amount * time, uncertainty: off, known };
  }
  const energy = energyFromAxialIntensity(shape, amount * time, beam);
  return { energy, uncertainty: off, known };
}

function calibrated(
  site: Site,
  light: LightModel,
  calibration: CalibrationValue,
  shape: SourceShape,
  beam: Beam,
  c: number,
): HeadOutput {
  switch (calibration.kind) {
    case "metered": {
      const energy = energyFromReading(
        shape,
        { fNumber: calibration.fNumber.value, iso: calibration.iso.value, distance: calibration.at.value, c },
        beam,
      );
      if (energy === undefined) {
        report(site, "light.meter-inside", { name: light.name ?? "light" });
        return unknownOutput;
      }
      const off = Math.abs(calibration.fNumber.plusMinus?.value ?? uncertainty.metered);
      return { energy, uncertainty: off, known: "one meter reading" };
    }
    case "guide_number": {
      const at100 = calibration.number.value / Math.sqrt(calibration.iso.value / 100);
      const energy = energyFromGuideNumber(shape, at100, c, beam);
      const share = shareInStops(calibration.number);
      // Twice as many stops as the number, whose square the light goes with.
      return {
        energy,
        uncertainty: share === null ? uncertainty.guideNumber : 2 * share,
        known: "guide number",
      };
    }
    case "efficacy": {
      if (light.full_power === undefined) {
        report(site, "scene.incomplete", { name: light.name ?? "light", what: "its full power" });
        return unknownOutput;
      }
      const energy = light.full_power.value * calibration.efficacy.value;
      const off = shareInStops(calibration.efficacy) ?? uncertainty.efficacy;
      return { energy, uncertainty: off, known: "watt-seconds and an efficacy" };
    }
    case "candelas": {
      const energy = energyFromAxialIntensity(shape, calibration.axial, beam);
      return { energy, uncertainty: uncertainty.output, known: `candela seconds of ${calibration.file}` };
    }
    default:
      return calibration satisfies never;
  }
}

/** Whether a lamp's output is that of the file of its beam: nothing else says how much it gives. */
export function fromFile({ beam, output, calibration }: LightModel): boolean {
  return beam?.kind === "measured" && output === undefined && calibration === undefined;
}

/** The output of a head as defined: from `output` where it is stated, else from its calibration. */
export function headOutput(
  site: Site,
  light: LightModel,
  shape: SourceShape,
  beam: Beam,
  c: number,
): HeadOutput {
  if (light.beam?.kind === "measured" && fromFile(light)) {
    const front = beam.kind === "table" ? beam.table.front : 0;
    const known = `the measured file ${light.beam.file}`;
    return { energy: front * shutterOf(site), uncertainty: uncertainty.output, known };
  }
  if (light.output !== undefined) return statedOutput(site, light.output, shape, beam);
  if (light.calibration === undefined) {
    site.place = placeOfBlock(light.origins);
    report(site, "scene.incomplete", { name: light.name ?? "light", what: "how its output is known" });
    return unknownOutput;
  }
  site.place = placeOfBlock(light.origins, "calibration");
  return calibrated(site, light, light.calibration, shape, beam, c);
}
