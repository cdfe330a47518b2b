/**
 * An extended ground run of Ouzel: the heat balance driven through a schedule of power, door and fan, recorded by the
 * engine monitor. The pilot reads the displayed coolant temperature and stops where the card says so.
 */
import { toSi } from '../../analysis/units/index.ts';
import {
  drawOffsets,
  type EngineMoment,
  engineMonitor,
  engineMonitorCsv,
  type MonitorColumns,
  OUZEL_OFFSETS,
  type SensorOffsets,
} from './engine-monitor.ts';
import { GROUND_STORIES, type GroundStep, type GroundStory, LONG_RUN } from './ground-run-stories.ts';
import {
  coldState,
  groundPower,
  type HeatState,
  heatTimeConstants,
  type Operation,
  steadyHeat,
  stepHeat,
  thermostat,
} from './heat-balance.ts';
import { randomFrom } from './random.ts';
import { wander } from './signals.ts';

export interface GroundSegment {
  label: string;
  /** s from the first row of the file */
  fromSeconds: number;
  toSeconds: number;
  /** nominal, 1/s; 0 stopped */
  engineSpeed: number;
  /** 0..1 */
  exit: number;
  fan: boolean;
  /** mean of the true air at the scoop, K */
  airMean: number;
  /** coolant of the whole model held in this condition for ever in air of airMean, thermostat as it is, K; null stopped */
  equilibrium: number | null;
  /** the same less airMean, K: what carries over to another day while the thermostat is fully open */
  equilibriumOverAir: number | null;
  /** the same as if the thermostat stood fully open, K */
  equilibriumThermostatOpen: number | null;
  /** oil and block in the same steady state, K */
  oilEquilibrium: number | null;
  /** main time constant of coolant to air, thermostat fully open, s */
  timeConstant: number | null;
  /** of oil and block, s */
  slowTimeConstant: number | null;
  /** true coolant at the end, K */
  coolantAtEnd: number;
  /** opening of the thermostat at the end, 0..1 */
  thermostatAtEnd: number;
  /** what governs: warming below the thermostat, regulated by it, or fully-open; cooling when the engine is stopped */
  regime: 'warming' | 'regulated' | 'fully-open' | 'cooling';
}

export interface GroundTruth {
  seed: number;
  offsets: SensorOffsets;
  segments: GroundSegment[];
  /** s; null where the run was not stopped by the criterion */
  stoppedAtSeconds: number | null;
  shutdownAtSeconds: number;
  /** true coolant at shutdown and its highest value afterwards, K */
  coolantAtShutdown: number;
  peakAfterShutdown: number;
  peakAfterShutdownSeconds: number;
  /** s from shutdown until the coolant is below the hot-restart limit for good; null when not seen */
  timeToRestart: number | null;
}

export interface GroundRun {
  csv: string;
  /** what the recorder showed before rounding, one a second, in the units of its headers */
  columns: MonitorColumns;
  rows: number;
  /** noiseless state at each row, K */
  trueCoolant: Float64Array;
  trueAir: Float64Array;
  truth: GroundTruth;
}

export interface GroundRunOptions {
  story: 1 | 2;
  seed?: number;
  /** factor on everything random; 0 is a still day and a perfect recorder that still rounds */
  noise?: number;
  /** sensor errors; absent: the airplane's own for the story's seed, else drawn from their stated accuracy */
  offsets?: SensorOffsets;
}

const STEP_SECONDS = 0.5;
const RESTART_LIMIT = toSi(95, 'degC');

/** One run of the story; the same options always give the same bytes. */
export function groundRun(options: GroundRunOptions): GroundRun {
  return runGround(GROUND_STORIES[options.story], options);
}

/**
 * A monitor file of many hours, for measuring how fast it is read: the same three conditions over and over.
 * @param bytes about this long
 */
export function longGroundRunCsv(bytes: number): string {
  const bytesPerRow = 72;
  const mostSeconds = Math.ceil(bytes / bytesPerRow);
  return runGround({ ...LONG_RUN, mostSeconds }, {}).csv;
}

function runGround(story: GroundStory, options: Omit<GroundRunOptions, 'story'>): GroundRun {
  const seed = options.seed ?? story.seed;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, `session ${story.session}`);
  const offsets = options.offsets ?? (seed === story.seed ? OUZEL_OFFSETS : drawOffsets(random.stream('offsets')));
  const monitor = engineMonitor(random.stream('monitor'), story.mostSeconds, offsets, noise);
  const airGust = wander(random.stream('air'), 0.2 * noise, 40, 1);
  const windGust = wander(random.stream('wind'), 0.008 * noise, 20, 1);
  const throttle = wander(random.stream('throttle'), 0.0025 * noise, 25, 1);
  const swell = 2 * Math.PI * random.stream('swell').uniform();

  const trueCoolant = new Float64Array(story.mostSeconds);
  const trueAir = new Float64Array(story.mostSeconds);
  const segments: GroundSegment[] = [];
  let stoppedAtSeconds: number | null = null;
  let shutdownAtSeconds = 0;
  let state: HeatState = coldState(story.air);
  let t = 0;
  for (let k = 0; t < story.mostSeconds && (k < story.steps.length || story.repeat); k += 1) {
    const step = story.steps[k % story.steps.length];
    if (!step) break;
    if (step.engineSpeed === 0 && segments.length > 0 && shutdownAtSeconds === 0) shutdownAtSeconds = t;
    const from = t;
    let airSum = 0;
    let overSince: number | null = null;
    while (t < story.mostSeconds) {
      const air =
        story.air + (story.airRise * t) / 3600 + noise * 0.15 * Math.sin((2 * Math.PI * t) / 900 + swell) + airGust();
      const engineSpeed = step.engineSpeed * (1 + throttle());
      const operation: Operation = {
        engineSpeed,
        power: groundPower(engineSpeed),
        exit: step.exit,
        fan: step.fan,
        dynamicPressure: 0,
        air,
        gust: 1 + windGust(),
      };
      trueCoolant[t] = state.coolant;
      trueAir[t] = air;
      airSum += air;
      const shown = monitor.take(momentOf(operation, state, story.stationPressure));
      for (let part = 0; part < 1 / STEP_SECONDS; part += 1) state = stepHeat(state, operation, STEP_SECONDS);
      t += 1;
      if (step.stopAbove !== undefined && shown >= step.stopAbove && overSince === null) overSince = t;
      if (overSince !== null && t - overSince >= (step.reactionSeconds ?? 0)) {
        stoppedAtSeconds = t;
        break;
      }
      if (t - from >= step.seconds) break;
    }
    segments.push(segmentOf(step, from, t, airSum / (t - from), state));
  }
  const after = soak(trueCoolant, shutdownAtSeconds, t);
  return {
    csv: engineMonitorCsv(monitor.columns, t, story.startLocalMillis, story.session),
    columns: monitor.columns,
    rows: t,
    trueCoolant: trueCoolant.subarray(0, t),
    trueAir: trueAir.subarray(0, t),
    truth: { seed, offsets, segments, stoppedAtSeconds, shutdownAtSeconds, ...after },
  };
}

function momentOf(o: Operation, state: HeatState, stationPressure: number): EngineMoment {
  const running = o.engineSpeed > 0;
  const load = 0.22 + 0.24 * (o.engineSpeed / toSi(3200, 'rpm'));
  const viscosity = Math.min(1, Math.max(0, (toSi(110, 'degC') - state.oil) / 90));
  return {
    engineSpeed: o.engineSpeed,
    manifoldPressure: running ? stationPressure * (load + 0.1) : stationPressure,
    fuelFlow: running ? toSi(2.2 + (0.34 * o.power) / 1000 + 2.4 * (o.engineSpeed / toSi(2500, 'rpm')), 'L/h') : 0,
    coolant: state.coolant,
    oil: state.oil,
    oilPressure: running
      ? toSi(Math.min(6.2, 2.2 + 1.3 * (o.engineSpeed / toSi(2500, 'rpm')) + 2.2 * viscosity), 'bar')
      : 0,
    fuelPressure: toSi(running ? 3.0 : 0.4, 'bar'),
    air: o.air,
    exit: o.exit,
    fan: o.fan,
    busVoltage: running ? 14.2 - (o.fan ? 0.1 : 0) : 12.7 - (o.fan ? 0.4 : 0),
    generatorCurrent: running ? 16 + (o.fan ? 20 : 0) : 0,
  };
}

function segmentOf(step: GroundStep, from: number, to: number, airMean: number, end: HeatState): GroundSegment {
  const running = step.engineSpeed > 0;
  const held: Operation = {
    engineSpeed: step.engineSpeed,
    power: groundPower(step.engineSpeed),
    exit: step.exit,
    fan: step.fan,
    dynamicPressure: 0,
    air: airMean,
    gust: 1,
  };
  const steady = running ? steadyHeat(held) : null;
  const constants = running ? heatTimeConstants(held) : null;
  const opening = thermostat(end.wax);
  return {
    label: step.label,
    fromSeconds: from,
    toSeconds: to,
    engineSpeed: step.engineSpeed,
    exit: step.exit,
    fan: step.fan,
    airMean,
    equilibrium: steady ? steady.coolant : null,
    equilibriumOverAir: steady ? steady.coolant - airMean : null,
    equilibriumThermostatOpen: running ? steadyHeat(held, true).coolant : null,
    oilEquilibrium: steady ? steady.oil : null,
    timeConstant: constants ? constants.main : null,
    slowTimeConstant: constants ? constants.slow : null,
    coolantAtEnd: end.coolant,
    thermostatAtEnd: opening,
    regime: !running ? 'cooling' : opening >= 1 ? 'fully-open' : opening > 0 ? 'regulated' : 'warming',
  };
}

function soak(coolant: Float64Array, shutdown: number, end: number) {
  let peak = shutdown;
  let restart = shutdown;
  for (let t = shutdown; t < end; t += 1) {
    if ((coolant[t] ?? 0) > (coolant[peak] ?? 0)) peak = t;
    if ((coolant[t] ?? 0) >= RESTART_LIMIT) restart = t + 1;
  }
  return {
    coolantAtShutdown: coolant[shutdown] ?? Number.NaN,
    peakAfterShutdown: coolant[peak] ?? Number.NaN,
    peakAfterShutdownSeconds: peak,
    timeToRestart: restart < end ? restart - shutdown : null,
  };
}
