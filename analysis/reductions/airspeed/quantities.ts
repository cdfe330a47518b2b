/** Values of the answer, each with its uncertainty, its conditions and its remarks. */
import { chiSquareCdf } from '../../numbers/index.ts';
import type { ResultQuantity } from '../../results/index.ts';
import type { Doubt } from './doubt.ts';
import { DILUTION_REFUSE, type SpeedRow } from './rows.ts';
import { windAt } from './wind-answer.ts';

/** Wind of each outing; along the course only, where nothing else was flown. */
export function windQuantities(doubt: Doubt): ResultQuantity[] {
  if (doubt.plan.wind.axes.length < 2) return [alongCourse(doubt)];
  return doubt.plan.wind.middles.flatMap((middle, epoch): ResultQuantity[] => {
    const wind = windAt(doubt, epoch, middle);
    const conditions = {
      at: { value: middle, unit: 's' },
      'from-seconds': { value: wind.fromSeconds, unit: 's' },
      'to-seconds': { value: wind.toSeconds, unit: 's' },
      drift: doubt.plan.wind.drift ? 'linear in time' : 'constant',
    };
    const { speedDoubt, fromDoubt } = wind;
    return [
      {
        name: 'wind-speed',
        symbol: 'W',
        value: wind.speed,
        unit: 'm/s',
        u95: speedDoubt.u95,
        parts: speedDoubt.parts,
        conditions,
        flags: [],
      },
      {
        name: 'wind-direction',
        symbol: 'W_dir',
        value: fromDoubt ? wind.from : null,
        unit: 'rad',
        u95: fromDoubt?.u95 ?? null,
        parts: fromDoubt?.parts ?? {},
        conditions: { ...conditions, from: 'where it comes from, true north' },
        flags: fromDoubt ? [] : [{ kind: 'not-resolved', message: 'the wind is too light to have a direction' }],
      },
    ];
  });
}

function alongCourse(doubt: Doubt): ResultQuantity {
  const wind = windAt(doubt, 0, doubt.plan.wind.middles[0] ?? 0);
  const axis = doubt.plan.wind.axes[0] ?? { north: 1, east: 0 };
  return {
    name: 'wind-speed',
    symbol: 'W',
    value: null,
    unit: 'm/s',
    u95: null,
    parts: {},
    conditions: {
      'along-course': { value: wind.north * axis.north + wind.east * axis.east, unit: 'm/s' },
      'along-course-u95': { value: wind.speedDoubt.u95, unit: 'm/s' },
    },
    flags: [{ kind: 'not-resolved', message: 'runs on one course tell the wind along it only' }],
  };
}

/** Position error, calibrated and true airspeed of one speed. */
export function speedQuantities(row: SpeedRow, speedOnly: boolean): ResultQuantity[] {
  const lost = row.dilution > DILUTION_REFUSE;
  const flags = lost
    ? [{ kind: 'not-resolved' as const, message: `the legs hold this speed too weakly (${row.dilution.toFixed(1)})` }]
    : [];
  const conditions = speedOnly
    ? { legs: { value: row.legs, unit: '1' }, ...(row.label ? { label: row.label } : {}) }
    : {
        'indicated-airspeed': { value: row.ias, unit: 'm/s' },
        flaps: row.flaps,
        'pressure-altitude': { value: row.height, unit: 'm' },
        'outside-air-temperature': { value: row.T, unit: 'K' },
        legs: { value: row.legs, unit: '1' },
        ...(row.mass === null ? {} : { mass: { value: row.mass, unit: 'kg' } }),
      };
  const quantity = (name: string, symbol: string, value: number, doubt: SpeedRow['error']): ResultQuantity => ({
    name,
    symbol,
    value: lost ? null : value,
    unit: 'm/s',
    u95: lost ? null : doubt.u95,
    parts: lost ? {} : doubt.parts,
    conditions,
    flags,
  });
  return [
    ...(speedOnly ? [] : [quantity('position-error', 'dV', row.correction, row.error)]),
    ...(speedOnly ? [] : [quantity('calibrated-airspeed', 'CAS', row.cas, row.casDoubt)]),
    quantity('true-airspeed', 'TAS', row.tas, row.tasDoubt),
  ];
}

/** Scatter between legs, and how it compares with the noise within them. */
export function fitQuantities(doubt: Doubt): ResultQuantity[] {
  const { fit } = doubt.solution;
  const { within, scatter } = doubt;
  const plain = (
    name: string,
    value: number | null,
    unit: string,
    u95: number | null,
    conditions: ResultQuantity['conditions'],
  ) => ({
    name,
    value,
    unit,
    u95,
    parts: {},
    conditions,
    flags: [],
  });
  const noisy = within.every((u) => u > 0);
  const chiSquare = fit.residuals.reduce((sum, r, i) => sum + (r / (within[i] || 1)) ** 2, 0);
  return [
    plain('leg-scatter', scatter.s, 'm/s', null, {
      'degrees-of-freedom': { value: scatter.nu, unit: '1' },
      'own-degrees-of-freedom': { value: fit.nu, unit: '1' },
      ...(fit.nu > 0 ? { own: { value: Math.sqrt(fit.rss / fit.nu), unit: 'm/s' } } : {}),
      expected: { value: doubt.legScatter, unit: 'm/s' },
    }),
    ...(noisy && fit.nu > 0
      ? [
          plain('residual-chi-square', chiSquare, '1', null, {
            'degrees-of-freedom': { value: fit.nu, unit: '1' },
            'share-below': { value: chiSquareCdf(chiSquare, fit.nu), unit: '1' },
            against:
              'noise within the legs with the correlation it shows: far above 1 a degree of freedom, legs differ for other reasons',
          }),
        ]
      : []),
  ];
}
