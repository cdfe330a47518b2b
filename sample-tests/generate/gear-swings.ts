/**
 * Story item 3: twelve gear swings on jacks from a ground supply. A bench recorder, five times a second from its start:
 * supply current and voltage, hydraulic pressure, an up and a down switch on each of three legs.
 */
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { type Column, logText } from './log-text.ts';
import { type Random, randomFrom } from './random.ts';

export interface Transit {
  /** s from the first row at which the lever moved */
  fromSeconds: number;
  /** s from the lever to the last leg's lock */
  transit: number;
  /** s from the lever to each leg's lock, as its switch shows it */
  nose: number;
  left: number;
  right: number;
  peakCurrent: number;
  /** of the travel between inrush and lock */
  travelCurrent: number;
  charge: number;
  lowestVoltage: number;
}

export interface GearTruth {
  seed: number;
  cycles: { up: Transit; down: Transit }[];
  /** counted from 1: the swing whose left down switch comes late, and by how much, s */
  lateCycle: number;
  lateBy: number;
  /** fall of hydraulic pressure while the gear is up and the pump off, Pa/s */
  pressureFall: number;
}

const SEED = 2101;
const STEP = 0.2;
const CYCLES = 12;
const LATE_CYCLE = 9;
const LATE_BY = 2.4;
const SECONDS = { before: 8, up: 18, down: 130 };
const RELIEF = toSi(104, 'bar');
const PRESSURE_FALL = toSi(0.25, 'bar');
const SUPPLY = { open: 13.9, resistance: 0.021 };
const LEGS = ['nose', 'left', 'right'] as const;

interface Way {
  /** s from the lever to each leg's lock, mean, and from swing to swing */
  locks: Record<(typeof LEGS)[number], number>;
  travelCurrent: number;
  lockCurrent: number;
  travelPressure: number;
}

const UP: Way = {
  locks: { nose: 8.1, left: 8.6, right: 8.9 },
  travelCurrent: 35,
  lockCurrent: 54,
  travelPressure: toSi(72, 'bar'),
};
const DOWN: Way = {
  locks: { nose: 5.8, left: 6.5, right: 6.8 },
  travelCurrent: 29,
  lockCurrent: 46,
  travelPressure: toSi(48, 'bar'),
};

/** The recorder's file and what lies behind it; the same seed gives the same bytes. */
export function gearSwings(options: { seed?: number; noise?: number } = {}): { csv: string; truth: GearTruth } {
  const seed = options.seed ?? SEED;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, 'gear swings');
  const rows: number[][] = [];
  const cycles: GearTruth['cycles'] = [];
  let pressure = toSi(20, 'bar');
  const write = (current: number, lever: number, made: Record<string, boolean>) => {
    const shake = (size: number) => noise * size * random.normal();
    const shown = Math.max(0, current + (current > 0 ? shake(0.6) : shake(0.05)));
    const switches = LEGS.flatMap((leg) => [made[`${leg} up`] ? 1 : 0, made[`${leg} down`] ? 1 : 0]);
    const bar = Math.max(0, fromSi(pressure, 'bar') + shake(0.3));
    rows.push([shown, SUPPLY.open - SUPPLY.resistance * current + shake(0.01), bar, lever, ...switches]);
  };
  const down = { 'nose down': true, 'left down': true, 'right down': true };
  const wait = (seconds: number, lever: number, made: Record<string, boolean>, fall: number) => {
    for (let k = 0; k < Math.round(seconds / STEP); k += 1) {
      write(0, lever, made);
      pressure -= fall * STEP;
    }
  };
  const travel = (way: Way, to: 'up' | 'down', lateLeft: number): Transit => {
    const locks = drawLocks(way, random.stream(`${to} ${cycles.length}`), noise);
    const from = rows.length * STEP;
    const last = Math.max(...LEGS.map((leg) => locks[leg]));
    const seen = { ...locks, left: locks.left + lateLeft };
    const end = Math.max(...LEGS.map((leg) => seen[leg]));
    const transit = { charge: 0, peakCurrent: 0 };
    const strength = 1 + 0.012 * noise * random.normal();
    for (let k = 0; k * STEP < end + 1.2; k += 1) {
      const t = k * STEP;
      // The late switch keeps the pump running against the relief valve until the relay box sees three of three.
      const current = t > end + 0.2 ? 0 : strength * currentAt(way, t, last, end);
      pressure = pressureAt(way, pressure, t, last);
      const made = Object.fromEntries(LEGS.map((leg) => [`${leg} ${to}`, t >= seen[leg]]));
      const lockedBefore = to === 'up' ? 'down' : 'up';
      for (const leg of LEGS) made[`${leg} ${lockedBefore}`] = t < 0.4;
      write(current, to === 'up' ? 1 : 0, made);
      transit.charge += current * STEP;
      transit.peakCurrent = Math.max(transit.peakCurrent, current);
    }
    return {
      fromSeconds: from,
      transit: end,
      ...seen,
      ...transit,
      travelCurrent: strength * way.travelCurrent,
      lowestVoltage: SUPPLY.open - SUPPLY.resistance * transit.peakCurrent,
    };
  };
  wait(SECONDS.before, 0, down, 0);
  for (let cycle = 1; cycle <= CYCLES; cycle += 1) {
    const up = travel(UP, 'up', 0);
    wait(SECONDS.up, 1, { 'nose up': true, 'left up': true, 'right up': true }, PRESSURE_FALL);
    const out = travel(DOWN, 'down', cycle === LATE_CYCLE ? LATE_BY : 0);
    wait(cycle === CYCLES ? 15 : SECONDS.down, 0, down, PRESSURE_FALL / 4);
    cycles.push({ up, down: out });
  }
  return {
    csv: file(rows),
    truth: { seed, cycles, lateCycle: LATE_CYCLE, lateBy: LATE_BY, pressureFall: PRESSURE_FALL },
  };
}

function drawLocks(way: Way, random: Random, noise: number): Way['locks'] {
  const whole = 1 + 0.008 * noise * random.normal();
  const of = (leg: (typeof LEGS)[number]) => way.locks[leg] * whole + 0.05 * noise * random.normal();
  return { nose: of('nose'), left: of('left'), right: of('right') };
}

/** Inrush, travel that stiffens a little, a peak while the last leg locks, then the relief valve until switched off. */
function currentAt(way: Way, t: number, last: number, end: number): number {
  if (t < 0.1) return 0;
  if (t < 0.5) return way.travelCurrent + 16 * (1 - (t - 0.1) / 0.4);
  if (t < last - 0.5) return way.travelCurrent * (0.96 + 0.08 * (t / last));
  if (t <= last + 0.2) return way.lockCurrent;
  return t <= end + 0.2 ? way.lockCurrent - 2 : 0;
}

function pressureAt(way: Way, before: number, t: number, last: number): number {
  const wanted = t < last - 0.5 ? way.travelPressure : RELIEF;
  return before + (wanted - before) * (1 - Math.exp(-STEP / 0.35));
}

function file(rows: readonly number[][]): string {
  const headers = ['Gear current [A]', 'Bus volts [V]', 'Hyd press [bar]', 'Selector up'];
  for (const leg of LEGS) headers.push(`Gear ${leg} up`, `Gear ${leg} down`);
  const steps = [0.1, 0.01, 1, 1];
  const columns: Column[] = headers.map((header, i) => ({
    header,
    step: steps[i] ?? 1,
    values: Float64Array.from(rows, (row) => row[i] ?? Number.NaN),
  }));
  const millis = Float64Array.from(rows, (_, i) => Math.round(1000 * i * STEP));
  const stamp = { headers: ['Elapsed [s]'], text: (ms: number) => (ms / 1000).toFixed(1) };
  return logText(['# Hangar bench recorder', '# 29 March 2031, started 14:06 local'], stamp, millis, columns);
}
