/** A temperature of a climb on the hot day, at any sample, with every part of its doubt. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { correctToHotDay, HOT_DAY_FACTOR, type HotDayLaw } from '../../models/index.ts';
import { type Combined, combineUncertainty, type Scatter, type UncertaintySource } from '../../numbers/index.ts';
import type { Air } from './air.ts';
import type { Course } from './course.ts';

/** What a correction needs beside the course. */
export interface Reference {
  law: HotDayLaw;
  airplane: Airplane | undefined;
  air: Air;
  repeat: Scatter;
  /** lag of the temperature's own sensor, s */
  lag: number;
  /** the climb began where a thermostat held it: what is left of that start fades from then on; s, or null */
  start: RegulatedStart | null;
  /** the log shows that power fell with the air */
  powerFalls: boolean;
}

/** A climb that began regulated begins at the same temperature on any day, not hotter by the air's difference. */
export interface RegulatedStart {
  /** recording time at which nothing regulated any more, s */
  seconds: number;
  /** time constant with which it is forgotten, s */
  tau: number;
}

export interface Corrected {
  /** sample of the climb */
  at: number;
  /** K; the correction credited, so never below what was measured */
  value: number;
  /** K; negative where the day was hotter than the hot day, and then not credited */
  correction: number;
  hotAir: number;
  /** the hot day may be cooler than this by so much, one-sided: what is left of a start that a thermostat held, K */
  startAllowance: number;
  /** it may be hotter by so much, one-sided: thinner air where power was not seen to fall with it, K */
  powerAllowance: number;
  doubt: Combined;
  sources: UncertaintySource[];
}

/** The one-to-one rule errs either way by this share of the temperature over air; common practice, no source. */
const RULE_DOUBT = 0.02;
/**
 * An engine that keeps its power in thinner air (boosted, or throttled back) runs hotter over air by 3 to 6 % when the air
 * goes from 15 to 38 degC, for less of it passes the radiator: the middle of that, and the span it is for, K.
 */
const THINNER = 0.045;
const THINNER_SPAN = 23;

/**
 * Doubt of the one-to-one rule.
 * @param over temperature over the air that entered, K
 * @returns standard uncertainty, K
 * @source 2 % of the temperature over air [practice]
 */
export function ruleDoubt(over: number): number {
  return RULE_DOUBT * Math.abs(over);
}

/**
 * How much hotter than the rule says the hot day may be where power was not seen to fall with the air.
 * @param over temperature over the air that entered, K
 * @param correction how far it is taken, K
 * @returns one-sided allowance, K; 0 where nothing is added
 * @source conductance goes with density to the power of 0.4 to 0.8 at constant heat [practice]
 */
export function thinnerAir(over: number, correction: number): number {
  return (THINNER * Math.abs(over) * Math.max(0, correction)) / THINNER_SPAN;
}

/**
 * A sample corrected to the hot day.
 * @param course a temperature along a climb, object
 * @param at which sample
 * @param reference hot day, sensors and scatter, object
 * @returns corrected temperature with its doubt
 * @throws OutOfRange when the height is beyond any airplane's
 */
export function correctedAt(course: Course, at: number, reference: Reference): Corrected {
  const { hotAir, correction, value } = onHotDay(course, at, reference.law);
  const sources = [
    ...readingSources(course, at, reference),
    ...(correction > 0 ? correctionSources(course, at, reference) : []),
    { part: 'repeatability' as const, u: reference.repeat.s, nu: reference.repeat.nu },
  ].filter((source) => source.u > 0);
  const left = reference.start ? remembered(course, at, reference.start) : 0;
  return {
    at,
    value,
    correction,
    hotAir,
    startAllowance: Math.max(0, correction) * left,
    powerAllowance: reference.powerFalls ? 0 : thinnerAir(overEntering(course, at), correction),
    doubt: combineUncertainty(sources),
    sources,
  };
}

const overEntering = (course: Course, at: number) =>
  (course.T[at] ?? 0) - ((course.way.inlet ?? course.way.air)[at] ?? 0);

// What is left of the start at a sample, a share: it fades from where the thermostat let go.
function remembered({ way }: Course, at: number, { seconds, tau }: RegulatedStart): number {
  return Math.min(1, Math.exp(-((way.t[at] ?? seconds) - seconds) / tau));
}

/**
 * The corrected value alone.
 * @param course a temperature along a climb, object
 * @param at which sample
 * @param law the hot day, object
 * @returns hot-day air, the correction by the letter and the value with it credited, K
 * @throws OutOfRange when the height is beyond any airplane's
 * @source T_corr = T + k (T_hot - T_air) [14cfr23-1043]
 */
export function onHotDay(course: Course, at: number, law: HotDayLaw) {
  const T = course.T[at] ?? Number.NaN;
  const air = course.way.air[at] ?? Number.NaN;
  const hotAir = law.at(course.way.height[at] ?? Number.NaN);
  const literal = correctToHotDay(T, course.part, air, hotAir);
  return { hotAir, correction: literal - T, value: Math.max(T, literal) };
}

/**
 * What the reading itself may be off by.
 * @param course a temperature along a climb, object
 * @param at which sample
 * @param reference sensors and lag, object
 * @returns noise, recording step, sensor, what its lag takes off a rounded top, what went unseen between readings, K
 */
export function readingSources(
  course: Course,
  at: number,
  { airplane, lag }: Pick<Reference, 'airplane' | 'lag'>,
): UncertaintySource[] {
  const sensor = accuracyOf(airplane, course.quantity);
  return [
    { part: 'noise', u: course.noiseU[at] ?? 0, nu: course.noiseNu },
    { part: 'noise', u: course.stepU[at] ?? 0, nu: Number.POSITIVE_INFINITY },
    { part: 'calibration', u: sensor.u, nu: sensor.nu },
    // after a few lags the reading is the temperature delayed: a top of curvature T'' loses lag^2 T''/2
    { part: 'fit', u: (lag ** 2 * Math.abs(course.bend[at] ?? 0)) / 2, nu: Number.POSITIVE_INFINITY },
    { part: 'fit', u: course.unseenU[at] ?? 0, nu: Number.POSITIVE_INFINITY },
  ];
}

function correctionSources(course: Course, at: number, { law, airplane, air }: Reference): UncertaintySource[] {
  const { way } = course;
  const k = HOT_DAY_FACTOR[course.part];
  const height = way.height[at] ?? 0;
  const altimeter = accuracyOf(airplane, 'pressure-altitude');
  const lapse = Math.abs(law.at(height + 100) - law.at(height)) / 100;
  return [
    { part: 'noise', u: k * air.noiseU, nu: air.noiseNu },
    { part: 'calibration', u: k * air.sensorU, nu: air.sensorNu },
    { part: 'calibration', u: k * (way.ram[at] ?? 0) * air.recoveryU, nu: Number.POSITIVE_INFINITY },
    { part: 'calibration', u: k * Math.abs(way.airRate[at] ?? 0) * air.lagRms, nu: Number.POSITIVE_INFINITY },
    {
      part: 'calibration',
      u: k * lapse * Math.hypot(altimeter.u, altimeter.gain * height),
      nu: altimeter.nu,
    },
    { part: 'fit', u: ruleDoubt(overEntering(course, at)), nu: Number.POSITIVE_INFINITY },
  ];
}
