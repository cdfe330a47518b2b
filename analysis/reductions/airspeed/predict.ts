/** Prediction before test: what calibrated and true airspeed the next reading will turn out to be. */
import { impactPressure, machOf, pressureAt, staticTemperature, trueAirspeed } from '../../air/index.ts';
import { type AirspeedCalibration, airspeedCalibrationOf, calibrate } from '../../models/index.ts';
import { coverageFactor } from '../../numbers/index.ts';
import { OutOfRange, parsedBy, refusal } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import type { PredictedQuantity, Prediction } from '../reduction.ts';
import { airspeedConditions } from './input.ts';

/**
 * Predict calibrated airspeed, and true airspeed where height and temperature are given.
 * @param result an airspeed result
 * @param conditions reading, flap setting, mass, height, static air temperature
 * @returns prediction intervals for the next leg, or a refusal outside what was flown
 * @throws InputProblem when the conditions do not fit their schema
 */
export function predictAirspeed(result: Result, conditions: unknown): Prediction {
  const given = parsedBy(airspeedConditions, conditions, 'bad-request');
  const calibration = airspeedCalibrationOf(result.model);
  const refused = (reason: string): Prediction => ({
    kind: 'airspeed',
    status: 'refused',
    reason,
    quantities: [],
    tables: [],
    flags: [],
  });
  if (!calibration) return refused('this result carries no calibration');
  const ias = given['indicated-airspeed'].si;
  try {
    const answer = calibrate(calibration, ias, { flaps: given.flaps, mass: given.mass?.si });
    const half = Math.hypot(answer.u95, nextLegHalf(calibration));
    const said = { 'indicated-airspeed': { value: ias, unit: 'm/s' }, ...(given.flaps ? { flaps: given.flaps } : {}) };
    const why = 'curve of the calibration with its doubt, and the scatter of one more leg';
    const quantities: PredictedQuantity[] = [
      {
        name: 'calibrated-airspeed',
        unit: 'm/s',
        value: answer.cas,
        low: answer.cas - half,
        high: answer.cas + half,
        conditions: said,
        why,
      },
    ];
    const [height, air] = [given['pressure-altitude']?.si, given['outside-air-temperature']?.si];
    if (height !== undefined && air !== undefined) {
      const p = pressureAt(height) - (calibration.commonStatic ? answer.staticError : 0);
      const at = (cas: number) => trueAirspeed(cas, p, staticTemperature(air, machOf(impactPressure(cas), p), 0));
      quantities.push({
        name: 'true-airspeed',
        unit: 'm/s',
        value: at(answer.cas),
        low: at(answer.cas - half),
        high: at(answer.cas + half),
        conditions: {
          ...said,
          'pressure-altitude': { value: height, unit: 'm' },
          'outside-air-temperature': { value: air, unit: 'K' },
        },
        why,
      });
    }
    return { kind: 'airspeed', status: 'predicted', quantities, tables: [], flags: [] };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return refused(refusal('outside-shown', error.message).message);
  }
}

function nextLegHalf(calibration: AirspeedCalibration): number {
  return coverageFactor(calibration.legScatterNu) * calibration.legScatter;
}
