/** The answer as tables: SI, the unit in every column. */
import { altitudeCorrection, directionOf, speedOf } from '../../air/index.ts';
import { type AirspeedCalibration, calibrate, calibratedRange } from '../../models/index.ts';
import type { ResultTable } from '../../results/index.ts';
import { fromSi, toSi } from '../../units/index.ts';
import type { Doubt } from './doubt.ts';
import type { CurveRank } from './fitted-curve.ts';
import { meanOf } from './leg.ts';
import type { NextLeg } from './next-point.ts';
import { studentised } from './remarks.ts';
import { DILUTION_REFUSE, type SpeedRow } from './rows.ts';
import { windAt, windTimes } from './wind-answer.ts';

const column = (name: string, unit: string) => ({ name, unit });
const known = (value: number) => (Number.isFinite(value) ? value : null);
/** A speed too weakly held by the legs carries no number. */
const held = (row: SpeedRow, value: number) => (row.dilution > DILUTION_REFUSE ? null : known(value));

/** Corrections by speed: the table other things rely on, its first five columns by name. */
export function positionErrorTable(rows: readonly SpeedRow[]): ResultTable {
  return {
    name: 'position-error',
    columns: [
      column('indicated-airspeed', 'm/s'),
      column('calibrated-airspeed', 'm/s'),
      column('correction', 'm/s'),
      column('u95', 'm/s'),
      column('legs', '1'),
      column('flaps', 'none'),
      column('calibrated-airspeed-u95', 'm/s'),
      column('true-airspeed', 'm/s'),
      column('true-airspeed-u95', 'm/s'),
      column('pressure-altitude', 'm'),
      column('dilution', '1'),
      column('role', 'none'),
    ],
    rows: rows
      .filter((row) => !Number.isNaN(row.ias))
      .map((row) => [
        row.ias,
        held(row, row.cas),
        held(row, row.correction),
        held(row, row.error.u95),
        row.legs,
        row.flaps,
        held(row, row.casDoubt.u95),
        held(row, row.tas),
        held(row, row.tasDoubt.u95),
        known(row.height),
        row.dilution,
        row.turning ? 'turn' : 'leg',
      ]),
  };
}

/** What each speed's U95 is made of. */
export function uncertaintyTable(rows: readonly SpeedRow[]): ResultTable {
  const sensors = [...new Set(rows.flatMap((row) => Object.keys(row.bySensor)))];
  return {
    name: 'uncertainty-parts',
    columns: [
      column('indicated-airspeed', 'm/s'),
      column('flaps', 'none'),
      column('noise', 'm/s'),
      column('repeatability', 'm/s'),
      ...sensors.map((name) => column(name, 'm/s')),
      column('u95', 'm/s'),
      column('degrees-of-freedom', '1'),
    ],
    rows: rows.map((row) => [
      known(row.ias),
      row.flaps,
      row.error.parts.noise ?? 0,
      row.error.parts.repeatability ?? 0,
      ...sensors.map((name) => row.bySensor[name] ?? 0),
      row.error.u95,
      known(row.error.nu),
    ]),
  };
}

/** Every leg with its residual and its place in the log. */
export function legsTable(doubt: Doubt): ResultTable {
  const { solution, legs } = doubt;
  const off = studentised(doubt);
  return {
    name: 'legs',
    columns: [
      column('leg', '1'),
      column('role', 'none'),
      column('flaps', 'none'),
      column('from-seconds', 's'),
      column('to-seconds', 's'),
      column('indicated-airspeed', 'm/s'),
      column('pressure-altitude', 'm'),
      column('outside-air-temperature', 'K'),
      column('ground-speed', 'm/s'),
      column('track-true', 'rad'),
      column('true-airspeed', 'm/s'),
      column('heading-true', 'rad'),
      column('residual', 'm/s'),
      column('residual-in-deviations', '1'),
      column('noise', 'm/s'),
      column('covered', '1'),
      column('mass', 'kg'),
    ],
    rows: legs.map((leg, i) => {
      const over = { north: meanOf(leg.samples.north), east: meanOf(leg.samples.east) };
      const w = solution.fit.windOf[i] ?? { north: 0, east: 0 };
      const tas = Number.isNaN(leg.ias) ? (solution.legCorrections[i] ?? Number.NaN) : (solution.linear[i]?.tas ?? 0);
      return [
        i + 1,
        leg.role,
        leg.flaps,
        leg.fromSeconds,
        leg.toSeconds,
        known(leg.ias),
        known(meanOf(leg.samples.height)),
        known(meanOf(leg.samples.air)),
        speedOf(over),
        directionOf(over),
        known(tas),
        leg.along ? directionOf(leg.along) : directionOf({ north: over.north - w.north, east: over.east - w.east }),
        solution.fit.residuals[i] ?? null,
        off[i] ?? null,
        2 * (doubt.within[i] ?? 0),
        leg.covered,
        leg.mass,
      ];
    }),
  };
}

/** The smooth curve over the speeds flown, at round figures of the person's own unit, by flap setting. */
export function curveTable(calibration: AirspeedCalibration, rows: readonly SpeedRow[], unit: string): ResultTable {
  const height = meanOf(rows.map((row) => row.height));
  return {
    name: 'airspeed-curve',
    columns: [
      column('flaps', 'none'),
      column('indicated-airspeed', 'm/s'),
      column('calibrated-airspeed', 'm/s'),
      column('correction', 'm/s'),
      column('u95', 'm/s'),
      column('static-error', 'Pa'),
      column('altitude-correction', 'm'),
      column('altitude-correction-sea-level', 'm'),
    ],
    rows: calibration.curves.flatMap(({ flaps }) =>
      gridOf(calibratedRange(calibration, flaps) ?? [0, 0], unit).map((ias) => {
        const { cas, u95, staticError } = calibrate(calibration, ias, { flaps });
        return [
          flaps,
          ias,
          cas,
          cas - ias,
          u95,
          staticError,
          altitudeCorrection(staticError, height),
          altitudeCorrection(staticError, 0),
        ];
      }),
    ),
  };
}

/** Ends as flown and every five units between. */
function gridOf([low, high]: [number, number], unit: string): number[] {
  const from = Math.ceil(fromSi(low, unit) / 5 + 0.2) * 5;
  const between: number[] = [];
  for (let v = from; v < fromSi(high, unit) - 1; v += 5) between.push(toSi(v, unit));
  return high > low ? [low, ...between, high] : [low];
}

/** Wind in the middle of each outing, and at its ends where a drift was solved for. */
export function windTable(doubt: Doubt): ResultTable {
  return {
    name: 'wind',
    columns: [
      column('seconds', 's'),
      column('wind-speed', 'm/s'),
      column('wind-speed-u95', 'm/s'),
      column('wind-direction', 'rad'),
      column('wind-direction-u95', 'rad'),
      column('wind-north', 'm/s'),
      column('wind-east', 'm/s'),
    ],
    rows: windTimes(doubt).map(({ epoch, seconds }) => {
      const wind = windAt(doubt, epoch, seconds);
      return [
        seconds,
        wind.speed,
        wind.speedDoubt.u95,
        wind.fromDoubt ? wind.from : null,
        wind.fromDoubt?.u95 ?? null,
        wind.north,
        wind.east,
      ];
    }),
  };
}

/** What one more leg would bring: the best direction at each speed. */
export function nextLegTable(candidates: readonly NextLeg[]): ResultTable {
  const best = candidates.filter(
    (one, i) => candidates.findIndex((other) => other.ias === one.ias && other.flaps === one.flaps) === i,
  );
  return {
    name: 'next-leg',
    columns: [
      column('flaps', 'none'),
      column('indicated-airspeed', 'm/s'),
      column('track-true', 'rad'),
      column('heading-true', 'rad'),
      column('largest-u95-now', 'm/s'),
      column('largest-u95-then', 'm/s'),
    ],
    rows: best.map((one) => [one.flaps, one.ias, one.track, one.heading, one.now, one.then]),
  };
}

/** Curves of each degree by the information criterion: shown, not obeyed. */
export function curveRankTable(ranks: readonly CurveRank[]): ResultTable {
  return {
    name: 'curve-degrees',
    columns: [
      column('curve', 'none'),
      column('coefficients', '1'),
      column('residual-sum-of-squares', 'm2/s2'),
      column('aicc', '1'),
      column('used', 'none'),
    ],
    rows: ranks.map((one) => [one.name, one.terms, one.rss, one.aicc, one.used]),
  };
}
