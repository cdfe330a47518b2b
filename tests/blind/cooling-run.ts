/**
 * Ground runs of airplanes nobody built, for testing what the reduction of ground cooling says against what was put in.
 * One lump with a radiator behind a lagging thermostat, if wanted a slow lump beside it, a sensor that lags, a recorder
 * that rounds. Written for the tests: it shares no formula with the code under test.
 */
import { type LogChannel, type Recording, recordingOf } from '../../analysis/logs/index.ts';
import { type Random, seededRandom } from '../../analysis/numbers/index.ts';
import { differenceToSi, toSi } from '../../analysis/units/index.ts';

export interface Step {
  /** rpm; 0 is stopped */
  rpm: number;
  seconds: number;
  /** fully open equilibrium over air, K, and time constant, s */
  excess: number;
  tau: number;
  exit?: number;
  fan?: boolean;
  /** end the step when the shown temperature reaches this, K */
  stopAbove?: number;
}

export interface Day {
  steps: Step[];
  /** K */
  air: number;
  /** K per hour */
  airRise?: number;
  startTemperature?: number;
  thermostat?: { start: number; open: number } | null;
  /** true thermostat: opens over this range and closes again lower by this, K */
  hysteresis?: number;
  /** share of the heat capacity in a slow lump, and how many times slower it follows */
  slow?: { share: number; times: number };
  rateHz?: number;
  unit?: 'degC' | 'degF';
  /** recording step in that unit */
  step?: number;
  rpmNoise?: number;
  rpmWander?: number;
  rpmStep?: number;
  /** rms of the temperature's own unrest, K, and its correlation time, s */
  gust?: number;
  gustSeconds?: number;
  white?: number;
  lag?: number;
  /** half-widths (95 %) the sensor errors are drawn from, K */
  sensorU95?: number;
  airU95?: number;
  /** channels left out of the log */
  without?: readonly string[];
  part?: 'coolant-temperature' | 'cylinder-head-temperature#1';
  throttleSeconds?: number;
  /** share of rows missing, in stretches of a few seconds */
  dropouts?: number;
}

export interface HeldTruth {
  fromSeconds: number;
  toSeconds: number;
  step: Step;
  airMean: number;
  /** fully open equilibrium in air of airMean, K */
  equilibrium: number;
  /** thermostat opening at the end, 0..1 */
  opening: number;
  /** lump, without sensor, at each second of the step */
  temperatures: number[];
}

export interface SimulatedRun {
  recording: Recording;
  truth: HeldTruth[];
}

/** Share of the conductance that does not pass the radiator. */
const SKIN = 0.08;
const WAX = 15;
const TICK = 0.2;

export function simulateRun(day: Day, seed: number | string): SimulatedRun {
  const random = seededRandom(`run ${seed}`);
  const rate = day.rateHz ?? 1;
  const every = Math.round(1 / rate / TICK);
  const gust = wander(random, day.gust ?? 0.2, day.gustSeconds ?? 15);
  const speedWander = wander(random, day.rpmWander ?? 0.002, 20);
  const sensorError = ((day.sensorU95 ?? 1) / 2) * random.normal();
  const airError = ((day.airU95 ?? 0.5) / 2) * random.normal();
  const rows: { t: number; T: number; air: number; rpm: number; exit: number; fan: number }[] = [];
  const truth: HeldTruth[] = [];
  let T = day.startTemperature ?? day.air;
  let [wax, read, slow, valve] = [T, T, T, 0];
  let tick = 0;
  let rpm = day.steps[0]?.rpm ?? 0;
  let shown = T;
  for (const step of day.steps) {
    const from = tick;
    const temperatures: number[] = [];
    let airSum = 0;
    while ((tick - from) * TICK < step.seconds) {
      const t = tick * TICK;
      const air = day.air + ((day.airRise ?? 0) * t) / 3600;
      airSum += air;
      const ramp = (day.throttleSeconds ?? 0) > 0 ? TICK / (day.throttleSeconds ?? 1) : 1;
      rpm += (step.rpm - rpm) * Math.min(1, 3 * ramp);
      valve = opening(day, wax, valve);
      const heat = step.excess / step.tau;
      const conductance = (valve * (1 - SKIN) + SKIN) / step.tau;
      const { share, times } = day.slow ?? { share: 0, times: 1 };
      const exchange = share > 0 ? (share / (times * step.tau)) * (slow - T) : 0;
      T += TICK * (heat - conductance * (T - air) + exchange);
      if (share > 0) slow += (TICK * (T - slow)) / (times * step.tau);
      wax += (TICK * (T - wax)) / WAX;
      read += (TICK * (T - read)) / Math.max(TICK, day.lag ?? 6);
      if (tick % every === 0) {
        const noisy = read + gust(1 / rate) + (day.white ?? 0.15) * random.normal() + sensorError;
        shown = rounded(noisy, day.unit ?? 'degC', day.step ?? 0.5);
        const n = rpm * (1 + speedWander(1 / rate)) + (rpm > 1 ? (day.rpmNoise ?? 8) * random.normal() : 0);
        rows.push({
          t,
          T: shown,
          air: rounded(air + airError + 0.15 * random.normal(), day.unit ?? 'degC', day.step ?? 0.5),
          rpm: Math.max(0, Math.round(n / (day.rpmStep ?? 10)) * (day.rpmStep ?? 10)),
          exit: step.exit ?? 1,
          fan: step.fan ? 1 : 0,
        });
        temperatures.push(T);
      }
      tick += 1;
      if (step.stopAbove !== undefined && shown >= step.stopAbove) break;
    }
    const airMean = airSum / Math.max(1, tick - from);
    truth.push({
      fromSeconds: from * TICK,
      toSeconds: tick * TICK,
      step,
      airMean,
      equilibrium: airMean + step.excess,
      opening: valve,
      temperatures,
    });
  }
  return { recording: recordingOfRows(day, rows, random), truth };
}

// Without hysteresis the valve follows the wax; with it, it snaps open and shut some kelvins apart and cycles.
function opening(day: Day, wax: number, before: number): number {
  const { thermostat } = day;
  if (!thermostat) return 1;
  if (day.hysteresis) {
    const middle = (thermostat.start + thermostat.open) / 2;
    if (wax > middle + day.hysteresis / 2) return 1;
    return wax < middle - day.hysteresis / 2 ? 0 : before;
  }
  return Math.min(1, Math.max(0, (wax - thermostat.start) / (thermostat.open - thermostat.start)));
}

function rounded(kelvin: number, unit: 'degC' | 'degF', step: number): number {
  const offset = toSi(0, unit);
  const size = differenceToSi(step, unit);
  return offset + Math.round((kelvin - offset) / size) * size;
}

function wander(random: Random, size: number, seconds: number) {
  let x = size * random.normal();
  return (dt: number) => {
    const keep = Math.exp(-dt / seconds);
    x = keep * x + size * Math.sqrt(1 - keep * keep) * random.normal();
    return x;
  };
}

function recordingOfRows(
  day: Day,
  all: { t: number; T: number; air: number; rpm: number; exit: number; fan: number }[],
  random: Random,
): Recording {
  let missing = 0;
  const rows = all.filter(() => {
    if (missing > 0) missing -= 1;
    else if (random.uniform() < (day.dropouts ?? 0) / 4) missing = 1 + random.whole(6);
    return missing === 0;
  });
  const part = day.part ?? 'coolant-temperature';
  const columns: Record<string, (row: (typeof rows)[number]) => number> = {
    'engine-speed': (row) => toSi(row.rpm, 'rpm'),
    [part]: (row) => row.T,
    'outside-air-temperature': (row) => row.air,
    'cowl-exit-position': (row) => row.exit,
    'cooling-fan-state': (row) => row.fan,
  };
  const channels = Object.entries(columns)
    .filter(([quantity]) => !day.without?.includes(quantity))
    .map(
      ([quantity, read], index): LogChannel => ({
        column: quantity,
        index,
        name: quantity,
        quantity,
        unit: null,
        confidence: 1,
        why: 'simulated',
        values: Float64Array.from(rows, read),
        valid: 1,
        flags: [],
      }),
    );
  const seconds = Float64Array.from(rows, (row) => row.t);
  return recordingOf([
    {
      file: 'run.csv',
      sha256: '',
      rows: rows.length,
      time: {
        seconds,
        startUtcMs: null,
        start: null,
        zone: 'unknown',
        durationSeconds: seconds[seconds.length - 1] ?? 0,
        sampleRateHz: day.rateHz ?? 1,
        segments: [],
      },
      channels,
      flags: [],
    },
  ]);
}
