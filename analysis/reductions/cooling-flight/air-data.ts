/** How airspeed and air temperature of one steady point are read: through an accepted calibration where there is one. */
import { impactPressure, machOf, pressureAt, RECOVERY_UNKNOWN, staticTemperature } from '../../air/index.ts';
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { airspeedCalibrationOf, calibrate } from '../../models/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';

export interface AirReader {
  /** calibrated airspeed, m/s, with its standard uncertainty */
  cas(ias: number): { cas: number; u: number };
  /** static air temperature of an indicated one, K */
  air(indicated: number, cas: number | null, height: number | null): number;
  flags: Flag[];
}

/**
 * The way from indicated values to air data in this airplane.
 * @param airplane the description, or undefined
 * @param accepted an accepted airspeed result, or undefined
 * @param calibrated true where the airspeed channel is calibrated already, boolean
 * @returns the reader with what it assumed
 */
export function airReader(
  airplane: Airplane | undefined,
  accepted: Result | undefined,
  calibrated: boolean,
): AirReader {
  const instruments = airplane?.instruments;
  const isStatic = instruments?.airTemperatureIsStatic === true;
  const recovery = isStatic ? 0 : (instruments?.probeRecovery ?? RECOVERY_UNKNOWN.value);
  const flags: Flag[] = [];
  if (!isStatic && instruments?.probeRecovery === undefined)
    flags.push(
      flag(
        'assumed-value',
        `recovery factor of the air probe: ${RECOVERY_UNKNOWN.value} assumed, which is 1 K at most in a light airplane`,
      ),
    );
  const calibration = calibrated ? null : airspeedCalibrationOf(accepted?.model);
  const accuracy = accuracyOf(airplane, calibrated ? 'calibrated-airspeed' : 'indicated-airspeed');
  if (!calibration && !calibrated)
    flags.push(
      flag(
        'assumed-value',
        'no accepted airspeed calibration: indicated airspeed is taken as calibrated; the position error is not in any U95',
      ),
    );
  let extrapolated = false;
  const cas = (ias: number) => {
    const own = { cas: ias, u: Math.hypot(accuracy.u, accuracy.gain * ias) };
    if (!calibration) return own;
    try {
      const { cas: read, u95 } = calibrate(calibration, ias);
      return { cas: read, u: u95 / 2 };
    } catch (error) {
      if (!(error instanceof OutOfRange)) throw error;
      if (!extrapolated)
        flags.push(flag('extrapolated', `${error.message}: indicated airspeed is taken as calibrated there`));
      extrapolated = true;
      return own;
    }
  };
  const air = (indicated: number, speed: number | null, height: number | null) =>
    speed === null
      ? indicated
      : staticTemperature(indicated, machOf(impactPressure(speed), pressureAt(height ?? 0)), recovery);
  return { cas, air, flags };
}
