/** The air along a climb: static, smoothed, with its doubts; from the probe, or by height as read by hand. */
import { impactPressure, machOf, pressureAt, RECOVERY_UNKNOWN, staticTemperature } from '../../air/index.ts';
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { localParabola, movingMedian, scatterWithin } from '../../numbers/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import { filledWithNearest, type Grid, movingMean } from '../../segments/index.ts';
import { show } from '../../units/index.ts';
import { lapseBetween } from './air-by-height.ts';
import type { CoolingClimbOptions } from './input.ts';

export interface Air {
  /** static, smoothed, K, one a sample, without gaps */
  outside: Float64Array;
  /** radiator inlet, smoothed, K; null where not logged */
  inlet: Float64Array | null;
  /** change with time, K/s */
  rate: Float64Array;
  /** whether the probe was read within a minute of a sample */
  read: Uint8Array;
  /** standard uncertainty of the smoothed reading from its noise, K, and its degrees of freedom */
  noiseU: number;
  noiseNu: number;
  /** the probe's offset: standard uncertainty, K, and degrees of freedom */
  sensorU: number;
  sensorNu: number;
  /** what a unit of recovery factor changes at each sample, K, and the factor's standard uncertainty */
  ram: Float64Array;
  recoveryU: number;
  /** probe lag that nobody measured, root mean square, s */
  lagRms: number;
}

interface Given {
  grid: Grid;
  /** outside air as read, K, NaN where missing; null where only stated by hand */
  probe: Float64Array | null;
  inlet: Float64Array | null;
  height: Float64Array;
  airspeed: Float64Array | null;
  airplane: Airplane | undefined;
  byHeight: CoolingClimbOptions['airByHeight'];
  /** readings by hand, unevenly spaced: taken as they stand */
  asRead?: boolean;
}

/** Air is smoothed over this, s: the air at the probe wanders more than the air the radiator takes in. */
const AIR_SECONDS = 60;
const SPIKE_SECONDS = 10;
/** The change of the air is looked at over this long, s. */
const RATE_SECONDS = 120;
/** Air not read for so long says nothing, s. */
const UNREAD_SECONDS = 60;
/** An air probe lags by something between nothing and this, s; common practice, no source. */
const LAG_MOST = 20;

/**
 * Static air along a record.
 * @param given readings, height, airspeed and description, object
 * @returns the air, with remarks on what was assumed
 */
export function airAlong(given: Given): { air: Air; flags: Flag[] } {
  const { grid, probe, byHeight, airplane } = given;
  if (byHeight) return statedAir(given, byHeight);
  const flags: Flag[] = [];
  const { recovery, recoveryU } = recoveryOf(airplane);
  const ram = new Float64Array(grid.n);
  const mach = machAlong(given);
  if (!given.airspeed && recovery > 0) flags.push(noAirspeed(airplane));
  const readings = probe ?? new Float64Array(grid.n).fill(Number.NaN);
  const read = given.asRead ? readings : smoothed(readings, grid);
  const outside = read.map((Ti, i) => {
    const T = staticTemperature(Ti, mach[i] ?? 0, recovery);
    ram[i] = T * 0.2 * (mach[i] ?? 0) ** 2;
    return T;
  });
  const scatter = scatterOf(probe, read, grid.dt);
  const accuracy = accuracyOf(airplane, 'outside-air-temperature');
  if (accuracy.assumed) flags.push(flag('assumed-calibration', `outside air temperature: ${accuracy.basis}`));
  if (recoveryU > 0) {
    const most = ram.reduce((top, one) => Math.max(top, one), 0);
    flags.push(
      flag(
        'assumed-value',
        `the air probe’s recovery factor is not known: ${RECOVERY_UNKNOWN.value} ± ${RECOVERY_UNKNOWN.halfWidth} taken, up to ${show(recovery * most, 'dK', { decimals: 1 }).text} off the reading. Enter it, or that the reading is static, on the Airplane page`,
      ),
    );
  }
  return {
    air: {
      outside,
      inlet: given.inlet && !given.asRead ? smoothed(given.inlet, grid) : given.inlet,
      rate: rateOf(outside, grid),
      read: nearReadings(probe, grid),
      // over a smoothing of 60 s by triangle some 40 s of readings count
      noiseU: (scatter.s * Math.sqrt(scatter.inflation)) / Math.sqrt(Math.max(1, (2 * AIR_SECONDS) / 3 / grid.dt)),
      noiseNu: scatter.nu,
      sensorU: accuracy.u,
      sensorNu: accuracy.nu,
      ram,
      recoveryU,
      lagRms: LAG_MOST / Math.sqrt(3),
    },
    flags,
  };
}

function recoveryOf(airplane: Airplane | undefined): { recovery: number; recoveryU: number } {
  const instruments = airplane?.instruments;
  if (instruments?.airTemperatureIsStatic) return { recovery: 0, recoveryU: 0 };
  if (instruments?.probeRecovery !== undefined) return { recovery: instruments.probeRecovery, recoveryU: 0 };
  return { recovery: RECOVERY_UNKNOWN.value, recoveryU: RECOVERY_UNKNOWN.halfWidth / Math.sqrt(3) };
}

const climbSpeedOf = (airplane: Airplane | undefined) => (airplane?.speeds.climb ?? airplane?.speeds.bestRate)?.si ?? 0;

function noAirspeed(airplane: Airplane | undefined): Flag {
  return flag(
    'assumed-value',
    climbSpeedOf(airplane) > 0
      ? 'no airspeed was logged: the ram rise at the air probe is that of the climb speed in the description'
      : 'no airspeed was logged and the description has no climb speed: the ram rise at the air probe (about 1 K at 80 kt) was left in, which makes the correction too small by as much',
  );
}

// Position error is left out: 5 % of airspeed are a tenth of a kelvin of ram rise.
function machAlong({ height, airspeed, airplane }: Given): Float64Array {
  return height.map((H, i) => {
    const cas = airspeed?.[i] ?? climbSpeedOf(airplane);
    try {
      return machOf(impactPressure(cas), pressureAt(H));
    } catch (error) {
      if (error instanceof OutOfRange) return 0;
      throw error;
    }
  });
}

function smoothed(values: Float64Array, grid: Grid): Float64Array {
  const samples = (seconds: number) => Math.max(1, Math.round(seconds / grid.dt));
  // run twice, a mean over half the width weighs the whole width as a triangle
  const half = AIR_SECONDS / 2 / grid.dt;
  const steady = movingMedian(values, samples(SPIKE_SECONDS));
  return filledWithNearest(movingMean(movingMean(steady, half), half)) ?? values;
}

function scatterOf(probe: Float64Array | null, smooth: Float64Array, dt: number) {
  const away = (probe ?? new Float64Array()).map((value, i) => value - (smooth[i] ?? Number.NaN));
  const there = away.filter((value) => Number.isFinite(value) && Math.abs(value) < SPIKE);
  return scatterWithin(there, dt, CORRELATION_FLOOR, 1);
}

/** Further than this from its neighbours an air reading is a spike, K. */
const SPIKE = 5;
/** Least credible correlation time of a temperature, s. */
const CORRELATION_FLOOR = 10;

function rateOf(outside: Float64Array, grid: Grid): Float64Array {
  return localParabola(outside, grid.dt, RATE_SECONDS).slope.map((one) => (Number.isNaN(one) ? 0 : one));
}

function nearReadings(probe: Float64Array | null, grid: Grid): Uint8Array {
  const out = new Uint8Array(grid.n);
  const reach = Math.ceil(UNREAD_SECONDS / grid.dt);
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < grid.n; i += 1) {
    if (!Number.isNaN(probe?.[i] ?? Number.NaN)) last = i;
    if (i - last <= reach) out[i] = 1;
  }
  last = Number.POSITIVE_INFINITY;
  for (let i = grid.n - 1; i >= 0; i -= 1) {
    if (!Number.isNaN(probe?.[i] ?? Number.NaN)) last = i;
    if (last - i <= reach) out[i] = 1;
  }
  return out;
}

/** A thermometer read by hand and the layers between two readings; U95 half-width, K; common practice, no source. */
const BY_HAND_U95 = 2;

function statedAir(
  { grid, height, inlet }: Given,
  byHeight: NonNullable<Given['byHeight']>,
): { air: Air; flags: Flag[] } {
  const points = byHeight.map((one) => ({ H: one['pressure-altitude'].si, T: one['outside-air-temperature'].si }));
  const at = lapseBetween(points);
  const outside = height.map(at);
  const alone = points.length === 1;
  const words = alone
    ? 'the air was stated by hand at one height: from there it is taken to lapse as the standard atmosphere, 6.5 K per 1000 m'
    : `the air was stated by hand at ${points.length} heights, straight lines between them`;
  return {
    air: {
      outside,
      inlet: inlet ? smoothed(inlet, grid) : null,
      rate: rateOf(outside, grid),
      read: new Uint8Array(grid.n).fill(1),
      noiseU: 0,
      noiseNu: Number.POSITIVE_INFINITY,
      sensorU: BY_HAND_U95 / 2,
      sensorNu: 50,
      ram: new Float64Array(grid.n),
      recoveryU: 0,
      lagRms: 0,
    },
    flags: [flag('assumed-value', `${words}; good to ${BY_HAND_U95} K (95 %) assumed, common practice, no source`)],
  };
}
