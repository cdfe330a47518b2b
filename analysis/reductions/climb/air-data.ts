/** How airspeed, static pressure and probe of one run are read: through an accepted calibration where there is one. */
import { RECOVERY_UNKNOWN } from '../../air/index.ts';
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { type AirspeedCalibration, airspeedCalibrationOf, calibrate } from '../../models/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import type { AirData } from './measure-run.ts';

/** Air data of one run, and what its calibrated airspeed is worth. */
export interface RunAir {
  air: AirData;
  /** standard uncertainty of calibrated airspeed, m/s */
  uCas: number;
  /** false where the run lies beyond the calibration: its speed is not comparable with the others' */
  inCurve: boolean;
  flags: Flag[];
}

export interface AirReader {
  /** air data for a run of this mean indicated airspeed, m/s, and mass, kg */
  of(ias: number, mass: number | null): RunAir;
  /** said once for the whole result */
  flags: Flag[];
}

/**
 * The way from indicated values to air data in this airplane.
 * @param airplane the description, or undefined
 * @param accepted an accepted airspeed result, or undefined
 * @param calibrated true where the airspeed channel is calibrated already, boolean
 * @returns air data by run
 */
export function airReader(
  airplane: Airplane | undefined,
  accepted: Result | undefined,
  calibrated: boolean,
): AirReader {
  const instruments = airplane?.instruments;
  const recovery = instruments?.airTemperatureIsStatic ? 0 : (instruments?.probeRecovery ?? RECOVERY_UNKNOWN.value);
  const calibration = calibrated ? null : airspeedCalibrationOf(accepted?.model);
  if (calibration) return { of: (ias, mass) => throughCalibration(calibration, recovery, ias, mass), flags: [] };
  const accuracy = accuracyOf(airplane, calibrated ? 'calibrated-airspeed' : 'indicated-airspeed');
  const air: AirData = { cas: (ias) => ias, staticError: false, recovery };
  const flags: Flag[] = [];
  if (accuracy.assumed) flags.push(flag('assumed-calibration', `airspeed: ${accuracy.basis}`));
  if (!calibrated)
    flags.push(
      flag(
        'assumed-value',
        'no accepted airspeed calibration: indicated airspeed is taken as calibrated; the position error is not in any U95',
      ),
    );
  return {
    of: (ias) => ({ air, uCas: Math.hypot(accuracy.u, accuracy.gain * ias), inCurve: true, flags: [] }),
    flags,
  };
}

// The correction is taken at the mean of the run: samples that wander over a flown end must not lose it.
function throughCalibration(
  calibration: AirspeedCalibration,
  recovery: number,
  ias: number,
  mass: number | null,
): RunAir {
  try {
    const { cas, u95 } = calibrate(calibration, ias, { mass: mass ?? undefined });
    const correction = cas - ias;
    return {
      air: { cas: (one) => one + correction, staticError: calibration.commonStatic, recovery },
      uCas: u95 / 2,
      inCurve: true,
      flags: [],
    };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return {
      air: { cas: (one) => one, staticError: false, recovery },
      uCas: 0,
      inCurve: false,
      flags: [
        flag('extrapolated', `${error.message}: uncalibrated, and kept out of the curve of rate against airspeed`),
      ],
    };
  }
}
