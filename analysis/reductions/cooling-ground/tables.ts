/** The tables of a ground run. */
import type { Governing } from '../../models/index.ts';
import type { ResultTable } from '../../results/index.ts';
import type { HotDayAnswer } from './hot-day-margin.ts';
import type { Measured } from './measure.ts';
import type { Times } from './rows.ts';

/** A measured point with what follows from it. */
export interface Answered {
  measured: Measured;
  times: Times;
  hotDay: HotDayAnswer | null;
  file: string;
}

const columns = (list: readonly (readonly [string, string])[]) => list.map(([name, unit]) => ({ name, unit }));

/**
 * The segments table: one row a point, null where not resolved.
 * @param name of the table, text
 * @param answers points in order, list
 * @returns the table
 */
export function segmentsTable(name: string, answers: readonly Answered[]): ResultTable {
  return {
    name,
    columns: columns([
      ['engine-speed', '1/s'],
      ['exit', '1'],
      ['fan', 'none'],
      ['air', 'K'],
      ['equilibrium', 'K'],
      ['equilibrium-u95', 'dK'],
      ['slow-node-allowance', 'dK'],
      ['time-constant', 's'],
      ['time-to-caution', 's'],
      ['time-to-limit', 's'],
      ['time-to-limit-early', 's'],
      ['share-never', '1'],
      ['regime', 'none'],
      ['from-seconds', 's'],
      ['to-seconds', 's'],
      ['label', 'none'],
      ['channel', 'none'],
      ['start', 'K'],
      ['end', 'K'],
      ['rate-at-end', 'K/s'],
      ['still-to-come', 'dK'],
      ['time-constant-low', 's'],
      ['time-constant-high', 's'],
      ['time-to-caution-early', 's'],
    ]),
    rows: answers.map(({ measured, times }) => {
      const { point, fit, equilibrium, doubt } = measured;
      const resolved = equilibrium !== null;
      return [
        point.hold.engineSpeed,
        point.hold.exit,
        point.hold.fan,
        measured.air,
        equilibrium,
        doubt?.u95 ?? null,
        resolved ? measured.allowance : null,
        resolved && fit?.tauHigh !== null ? (fit?.tau ?? null) : null,
        times.toCaution,
        times.toLimit,
        times.limitEarly,
        times.shareNever,
        measured.regime === 'unknown' ? null : measured.regime,
        measured.fromSeconds,
        measured.toSeconds,
        point.label,
        measured.hot.quantity,
        numberOrNull(measured.start),
        numberOrNull(measured.end),
        numberOrNull(measured.rate),
        equilibrium === null ? null : equilibrium - measured.end,
        fit?.tauLow ?? null,
        fit?.tauHigh ?? null,
        times.cautionEarly,
      ];
    }),
  };
}

const numberOrNull = (value: number) => (Number.isFinite(value) ? value : null);

/** Each resolved condition on the hot day. */
export function hotDayTable(name: string, answers: readonly Answered[], hotAir: number): ResultTable {
  return {
    name,
    columns: columns([
      ['label', 'none'],
      ['outside-air-temperature', 'K'],
      ['equilibrium', 'K'],
      ['hot-day-air', 'K'],
      ['corrected', 'K'],
      ['margin', 'dK'],
      ['u95', 'dK'],
      ['slow-node-allowance', 'dK'],
      ['from-seconds', 's'],
      ['to-seconds', 's'],
    ]),
    rows: answers.flatMap(({ measured, hotDay }) =>
      hotDay
        ? [
            [
              measured.point.label,
              measured.outside,
              measured.equilibrium,
              hotAir,
              hotDay.corrected,
              hotDay.margin,
              hotDay.doubt.u95,
              measured.allowance,
              measured.fromSeconds,
              measured.toSeconds,
            ],
          ]
        : [],
    ),
  };
}

/** What a regulating thermostat or door still had in hand, in place of a margin. */
export function authorityTable(answers: readonly Answered[], governing: Governing): ResultTable {
  return {
    name: 'authority',
    columns: columns([
      ['label', 'none'],
      ['temperature', 'K'],
      ['thermostat-left', '1'],
      ['exit-left', '1'],
      ['from-seconds', 's'],
      ['to-seconds', 's'],
    ]),
    rows: answers
      .filter(({ measured }) => measured.regime === 'regulated')
      .map(({ measured }) => [
        measured.point.label,
        numberOrNull(measured.end),
        thermostatLeft(measured, governing),
        measured.point.hold.exit === null ? null : 1 - measured.point.hold.exit,
        measured.fromSeconds,
        measured.toSeconds,
      ]),
  };
}

/** Share of the thermostat's range not yet used at the end of a point; null where it is not known. */
export function thermostatLeft(measured: Measured, governing: Governing): number | null {
  if (governing === null || governing === 'none') return null;
  const { start, open } = governing;
  return Math.min(1, Math.max(0, (open - measured.end) / (open - start)));
}
