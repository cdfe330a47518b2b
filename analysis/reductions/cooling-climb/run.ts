/** One recording from channels to what each temperature did in each climb. */
import type { Airplane } from '../../airplane/index.ts';
import type { Recording } from '../../logs/index.ts';
import {
  fitHeating,
  type Governing,
  governingOf,
  type HeldRecord,
  limitEvents,
  limitsOf,
  OVER_OPEN,
  type Regime,
} from '../../models/index.ts';
import { type Flag, type Refusal, refusal } from '../../remarks/index.ts';
import type { Comparison } from '../../results/index.ts';
import type { SegmentEdit } from '../../segments/index.ts';
import { aheadOf } from './ahead.ts';
import type { Around, Found } from './answer.ts';
import { coolingChannels } from './channels.ts';
import { CLIMB_WORDS, type Climb, climbsFound, climbsSet } from './climbs.ts';
import type { RegulatedStart } from './corrected.ts';
import { courseOf, wayOf } from './course.ts';
import type { CoolingClimbOptions } from './input.ts';
import { peakOf } from './peak.ts';
import { type DoorLevel, doorLevels, regimesAlong } from './regimes.ts';
import { climbRemarks, powerFalls } from './remarks.ts';
import { type HotTrace, type Trace, traceOf } from './trace.ts';

export interface Run {
  file: string;
  found: Found[];
  /** climbs with their settings, for the list of segments */
  climbs: { climb: Climb; settings: Readonly<Record<string, number | null>> }[];
  trace: Trace | null;
  flags: Flag[];
  comparisons: Comparison[];
}

/** Lag of a temperature sensor nobody measured, s; common practice, no source. */
export const USUAL_LAG = 7;

/**
 * Measure the climbs of a recording.
 * @param recording aligned logs, object
 * @param airplane the description, or undefined
 * @param options what a person stated, object
 * @param edits segments set by hand, or undefined
 * @returns the run, or a refusal
 * @throws InputProblem when an edit names a file that is not there
 */
export function measureRun(
  recording: Recording,
  airplane: Airplane | undefined,
  options: CoolingClimbOptions,
  edits: readonly SegmentEdit[] | undefined,
): Run | Refusal {
  const channels = coolingChannels(recording, airplane, options);
  if ('code' in channels) return channels;
  const { trace, flags } = traceOf(recording, channels, airplane, options);
  const { climbs, flags: climbFlags } =
    edits && edits.length > 0 ? climbsSet(trace, recording, edits) : climbsFound(trace);
  if (climbs.length === 0) {
    return refusal(
      'no-segments',
      `${trace.file}: no climb was found (${CLIMB_WORDS}); set one by hand (role climb) if the trace shows it`,
    );
  }
  const found: Found[] = [];
  const remarks: Flag[] = [];
  const settings = climbs.map((climb) => ({ climb, settings: settingsAt(trace, climb, null) }));
  for (const climb of climbs) {
    const doors = doorLevels(trace, climb);
    const way = wayOf(trace, climb);
    for (const hot of trace.hot) {
      const governing = governingOf(airplane, options.thermostat, hot.part);
      const one = foundIn({ trace, climb, way, hot, governing, doors, airplane });
      if (one) found.push(one);
    }
    remarks.push(
      ...climbRemarks(
        trace,
        climb,
        doors,
        found.filter((one) => one.course.way === way),
      ),
    );
  }
  const events = trace.hot.map((hot) => limitEvents(hot, limitsOf(airplane, hot.part)));
  return {
    file: trace.file,
    found,
    climbs: settings,
    trace,
    flags: [...events.flatMap((one) => one.flags), ...remarks, ...channels.flags, ...flags, ...climbFlags],
    comparisons: events.flatMap((one) => one.comparisons),
  };
}

interface OneTemperature {
  trace: Trace;
  climb: Climb;
  way: ReturnType<typeof wayOf>;
  hot: HotTrace;
  governing: Governing;
  doors: readonly DoorLevel[] | null;
  airplane: Airplane | undefined;
}

function foundIn({ trace, climb, way, hot, governing, doors, airplane }: OneTemperature): Found | null {
  const course = courseOf(way, trace, climb, hot);
  const peak = course && peakOf(course);
  if (!course || !peak) return null;
  const regimes = regimesAlong(trace, climb, hot, governing, doors);
  const lag = hot.part === 'coolant' ? (airplane?.cooling.sensorLag?.si ?? USUAL_LAG) : USUAL_LAG;
  const settings = settingsAt(trace, climb, climb.from + peak.at);
  const exit = settings['cowl-exit-position'] ?? null;
  const open = lastPart(trace, climb, hot, regimes, lag);
  return {
    course,
    peak,
    regimes,
    air: trace.air,
    lag,
    thermostatLeft:
      governing === null || governing === 'none'
        ? null
        : Math.min(1, Math.max(0, (governing.open - peak.highest) / (governing.open - governing.start))),
    exitLeft: exit === null ? null : Math.max(0, 1 - exit),
    settings,
    ahead: peak.peaked || !open ? null : aheadOf(open, lag),
    start: startOf({ trace, climb, hot, governing, regimes, open }),
    powerFalls: powerFalls(trace, climb),
    around: aroundOf(trace, climb, hot),
  };
}

/** Settings are read over this about a peak, s. */
const ABOUT_SECONDS = 30;
const SETTINGS = ['speed', 'manifold', 'fuelFlow', 'airspeed', 'door', 'fan', 'gear', 'flap'] as const;
const NAMES: Record<(typeof SETTINGS)[number], string> = {
  speed: 'engine-speed',
  manifold: 'manifold-pressure',
  fuelFlow: 'fuel-flow',
  airspeed: 'indicated-airspeed',
  door: 'cowl-exit-position',
  fan: 'cooling-fan-state',
  gear: 'gear-position',
  flap: 'flap-position',
};

// Means about one sample, or over the whole climb.
function settingsAt(trace: Trace, climb: Climb, at: number | null): Record<string, number | null> {
  const half = Math.round(ABOUT_SECONDS / 2 / trace.grid.dt);
  const from = at === null ? climb.from : Math.max(climb.from, at - half);
  const to = at === null ? climb.to : Math.min(climb.to, at + half);
  return Object.fromEntries(
    SETTINGS.flatMap((key) => {
      const values = trace[key];
      return values ? [[NAMES[key], meanOf(values, from, to)]] : [];
    }),
  );
}

function meanOf(values: Float64Array, from: number, to: number): number | null {
  const there = values.subarray(from, to + 1).filter((value) => !Number.isNaN(value));
  return there.length > 0 ? there.reduce((sum, value) => sum + value, 0) / there.length : null;
}

/** A chart shows this much before and after a climb, s. */
const BEFORE_SECONDS = 180;
const AFTER_SECONDS = 90;

function aroundOf(trace: Trace, climb: Climb, hot: HotTrace): Around {
  const { start, dt, n } = trace.grid;
  const first = Math.max(0, climb.from - Math.round(BEFORE_SECONDS / dt));
  const last = Math.min(n - 1, climb.to + Math.round(AFTER_SECONDS / dt));
  return {
    t: Float64Array.from({ length: last - first + 1 }, (_, i) => start + (first + i) * dt),
    T: hot.steady.slice(first, last + 1),
    air: trace.air.outside.slice(first, last + 1),
    from: climb.from - first,
  };
}

/** A record shorter than this has no curve, s. */
const LEAST_RECORD = 120;

// The last stretch of the climb in which nothing regulated: only that tells what comes next.
function lastPart(
  trace: Trace,
  climb: Climb,
  hot: HotTrace,
  regimes: readonly Regime[],
  lag: number,
): HeldRecord | null {
  const settle = Math.ceil((3 * lag) / trace.grid.dt);
  const from = climb.from + Math.max(lastClosed(regimes) + 1, settle);
  if ((climb.to - from) * trace.grid.dt < LEAST_RECORD) return null;
  const entering = trace.air.inlet ?? trace.air.outside;
  return {
    dt: trace.grid.dt,
    hot: hot.values.slice(from, climb.to + 1),
    air: entering.slice(from, climb.to + 1),
    step: hot.step,
    perSample: hot.perSample,
  };
}

const isClosed = (one: Regime | undefined) => one === 'regulated' || one === 'warming';
const lastClosed = (regimes: readonly Regime[]) => regimes.findLastIndex(isClosed);

/** Time constant of a coolant loop or head where its own does not show, s; common practice, no source. */
const USUAL_TAU = 200;

interface Beginning {
  trace: Trace;
  climb: Climb;
  hot: HotTrace;
  governing: Governing;
  regimes: readonly Regime[];
  open: HeldRecord | null;
}

// A door on its way to where it stands in the climb holds no temperature: only a thermostat does.
function startOf({ trace, climb, hot, governing, regimes, open }: Beginning): RegulatedStart | null {
  if (governing === null || governing === 'none') return null;
  if ((hot.steady[climb.from] ?? Number.NaN) > governing.open + OVER_OPEN) return null;
  const opened = regimes.findIndex((one) => !isClosed(one));
  if (opened < 0) return null;
  const tau = (open && fitHeating(open)?.tau) ?? USUAL_TAU;
  return { seconds: trace.grid.start + (climb.from + opened) * trace.grid.dt, tau };
}
