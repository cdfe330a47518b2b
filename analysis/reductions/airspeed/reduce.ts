/** The story of an airspeed calibration: legs, plan, answer, doubt, remarks, result. */
import { RECOVERY_UNKNOWN, vapourPressure } from '../../air/index.ts';
import type { Airplane } from '../../airplane/index.ts';
import { DEFAULT_REPEATABILITY } from '../../models/index.ts';
import { type Flag, flag, OutOfRange, parsedBy, type Refusal, refusal } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import { type ReductionInput, refusedResult, resultShell } from '../reduction.ts';
import type { AirChain } from './air-chain.ts';
import { buildResult } from './build-result.ts';
import { doubtOf } from './doubt.ts';
import { type AirspeedOptions, airspeedOptions, airspeedPoints } from './input.ts';
import { airspeedNote } from './note.ts';
import { planLegs } from './plan-legs.ts';
import { type Gathered, gatherLegs } from './points.ts';
import { answerRemarks } from './remarks.ts';
import { DILUTION_REFUSE, speedRows } from './rows.ts';
import { sensorsInDoubt } from './sensors.ts';

/**
 * Reduce an airspeed calibration flown by legs, turns or a measured course.
 * @param input aligned logs or written points, the airplane, segments and options
 * @returns the result, or a refusal with its reason
 * @throws InputProblem when points, options or segments do not fit their schema
 */
export function reduceAirspeed(input: ReductionInput): Result {
  const options = parsedBy(airspeedOptions, input.options ?? {}, 'bad-request');
  const points = input.points === undefined ? undefined : parsedBy(airspeedPoints, input.points, 'bad-points').points;
  try {
    const chain = chainOf(input.airplane, options);
    const gathered = gatherLegs(input, options, points, chain);
    if ('code' in gathered) return refused(input, gathered);
    return answered(input, options, chain, gathered);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return refused(input, refusal('out-of-domain', `${error.message}; a unit or a channel may be wrong`));
  }
}

function answered(input: ReductionInput, options: AirspeedOptions, chain: AirChain, gathered: Gathered): Result {
  const { legs } = gathered;
  const planned = planLegs(legs, input.airplane?.wing.area?.si ?? null, chain);
  if ('code' in planned) return refused(input, planned, gathered.flags);
  const sensors = sensorsInDoubt(input.airplane, legs, options.dewPoint !== undefined);
  const legScatter = options.legScatter?.si ?? DEFAULT_REPEATABILITY['airspeed-leg'].s0;
  const doubt = doubtOf(legs, planned.plan, chain, planned.solution, sensors, legScatter);
  const rows = speedRows(doubt, chain);
  const implausible = implausibleSpeeds(rows);
  if (implausible) return refused(input, implausible, gathered.flags);
  const flags: Flag[] = [
    ...answerRemarks(doubt, rows, input.airplane),
    ...gathered.flags,
    ...humidityRemark(
      options,
      rows,
      sensors.some((sensor) => sensor.name === 'humidity'),
    ),
  ];
  return buildResult({ input, chain, doubt, rows, gathered, flags });
}

/** How the airplane's instruments are to be read. */
function chainOf(airplane: Airplane | undefined, options: AirspeedOptions): AirChain {
  const instruments = airplane?.instruments;
  const recovery = instruments?.airTemperatureIsStatic ? 0 : (instruments?.probeRecovery ?? RECOVERY_UNKNOWN.value);
  return {
    commonStatic: instruments?.commonStatic ?? true,
    recovery,
    vapour: options.dewPoint ? { pressure: vapourPressure(options.dewPoint.si) } : { relative: 0 },
    shift: { ias: 0, iasGain: 0, height: 0, heightGain: 0, air: 0 },
    otherStatic: 0,
  };
}

/** No pitot-static system errs by a quarter of the airspeed at every speed: a channel or a unit is wrong. */
const ABSURD = 0.25;

function implausibleSpeeds(rows: ReturnType<typeof speedRows>): Refusal | null {
  const given = rows.filter((row) => !Number.isNaN(row.correction) && row.dilution <= DILUTION_REFUSE);
  if (given.length === 0 || !given.every((row) => Math.abs(row.correction) > ABSURD * row.ias)) return null;
  const share = Math.round((100 * (given[0]?.correction ?? 0)) / (given[0]?.ias ?? 1));
  return refusal(
    'implausible-values',
    `speed through the air by satellites is ${share} % off the indicated airspeed at every speed: the unit of one of them is wrong, or they are not of one flight`,
  );
}

function humidityRemark(options: AirspeedOptions, rows: ReturnType<typeof speedRows>, carried: boolean): Flag[] {
  const temperatures = rows.filter((row) => !Number.isNaN(row.T));
  if (options.dewPoint || temperatures.length === 0) return [];
  const share = Math.max(
    ...temperatures.map((row) => (row.T > 223 && row.T < 333 ? (0.5 * 0.378 * vapourPressure(row.T)) / row.p : 0)),
  );
  return [
    flag(
      'assumed-value',
      `the air was taken as dry: saturated it would make true and calibrated airspeed up to ${(100 * share).toFixed(2)} % higher (${carried ? 'carried in U95' : 'not in U95, because the air temperature is stated as exact'}); write the dew point to settle it`,
    ),
  ];
}

function refused(input: ReductionInput, why: Refusal, flags: Flag[] = []): Result {
  return refusedResult(resultShell('airspeed', airspeedNote, input), why, flags);
}
