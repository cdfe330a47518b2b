/** Legs written on a card from a known truth, and logs of the same: what the reduction is tried on. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { impactPressure, pressureAt, trueAirspeed } from '../../../../analysis/air/index.ts';
import { type Airplane, airplaneSchema } from '../../../../analysis/airplane/index.ts';
import type { ReductionInput } from '../../../../analysis/reductions/index.ts';
import { reductionOf } from '../../../../analysis/reductions/index.ts';
import type { Result, ResultTable } from '../../../../analysis/results/index.ts';

export const KNOT = 1852 / 3600;
export const DEGREE = Math.PI / 180;

export interface CardLeg {
  ias: number;
  /** direction of the nose, degrees true */
  heading: number;
  /** added to ground speed along the nose: what makes legs differ, m/s */
  off?: number;
  /** minutes from the first leg */
  minutes?: number;
  height?: number;
  flaps?: string;
}

export interface CardTruth {
  wind: { north: number; east: number };
  /** m/s an hour */
  drift?: { north: number; east: number };
  /** correction, m/s, at an indicated airspeed */
  correction: (ias: number) => number;
  air: number;
  height: number;
}

export const CALM_DAY: CardTruth = {
  wind: { north: 4, east: -6 },
  correction: (ias) => 1.2 - 0.03 * (ias - 45),
  air: 283.15,
  height: 1200,
};

/** Points of a card: ground speed and track as they would be for this truth, airspeed and altimeter with its static error. */
export function cardPoints(legs: readonly CardLeg[], truth: CardTruth = CALM_DAY) {
  return {
    kind: 'airspeed',
    points: legs.map((leg) => {
      const height = leg.height ?? truth.height;
      const cas = leg.ias + truth.correction(leg.ias);
      const dps = impactPressure(cas) - impactPressure(leg.ias);
      // The altimeter reads the static port that is in error: sensed p = true p + dps.
      const sensed = (44330.77 * (1 - ((pressureAt(height) + dps) / 101325) ** 0.190263)).toFixed(6);
      const tas = trueAirspeed(cas, pressureAt(height), truth.air) + (leg.off ?? 0);
      const hours = (leg.minutes ?? 0) / 60;
      const north = tas * Math.cos(leg.heading * DEGREE) + truth.wind.north + (truth.drift?.north ?? 0) * hours;
      const east = tas * Math.sin(leg.heading * DEGREE) + truth.wind.east + (truth.drift?.east ?? 0) * hours;
      return {
        'indicated-airspeed': { value: leg.ias, unit: 'm/s' },
        'pressure-altitude': { value: Number(sensed), unit: 'm' },
        'outside-air-temperature': { value: truth.air, unit: 'K' },
        'ground-speed': { value: Math.hypot(north, east), unit: 'm/s' },
        'track-true': { value: Math.atan2(east, north) / DEGREE, unit: 'deg' },
        clock: { value: leg.minutes ?? 0, unit: 'min' },
        ...(leg.flaps ? { flaps: leg.flaps } : {}),
      };
    }),
  };
}

/** Legs at even directions, one after the other every two minutes. */
export function box(
  ias: number,
  headings: readonly number[],
  startMinutes = 0,
  off: readonly number[] = [],
): CardLeg[] {
  return headings.map((heading, i) => ({ ias, heading, minutes: startMinutes + 2 * i, off: off[i] ?? 0 }));
}

const PLAIN = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', '..', '..', 'sample-tests', 'ouzel', 'airplane.json'), 'utf8'),
);

/** An airplane with exact instruments, so that only the legs themselves are in doubt. */
export function exactAirplane(more: Record<string, unknown> = {}): Airplane {
  const exact = (unit: string) => ({ u95: 0, unit, basis: 'exact for a test' });
  return airplaneSchema.parse({
    ...PLAIN,
    instruments: {
      units: PLAIN.instruments.units,
      airTemperatureIsStatic: true,
      accuracy: {
        'indicated-airspeed': exact('kt'),
        'pressure-altitude': exact('ft'),
        'outside-air-temperature': exact('dK'),
        'ground-speed': exact('kt'),
        'track-true': exact('deg'),
      },
      ...more,
    },
  });
}

export function reduce(input: ReductionInput): Result {
  const reduction = reductionOf('airspeed');
  if (!reduction) throw new Error('no airspeed reduction');
  return reduction.reduce(input);
}

export function tableIn(result: Result, name: string): ResultTable {
  const table = result.tables.find((one) => one.name === name);
  if (!table) throw new Error(`no table ${name}: ${result.reason ?? ''}`);
  return table;
}

/** A column of a table by name. */
export function columnIn(result: Result, table: string, column: string): number[] {
  const found = tableIn(result, table);
  const at = found.columns.findIndex((one) => one.name === column);
  if (at < 0) throw new Error(`no column ${column}`);
  return found.rows.map((row) => (row[at] === null ? Number.NaN : Number(row[at])));
}

export function flagsOf(result: Result, kind: string): string[] {
  return result.flags.filter((one) => one.kind === kind).map((one) => one.message);
}
