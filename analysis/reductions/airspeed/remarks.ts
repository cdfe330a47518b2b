/** Remarks on an airspeed answer: what was assumed, what is weak, what stands apart. */
import type { Airplane } from '../../airplane/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { fromSi } from '../../units/index.ts';
import { type Doubt, legScatterOf, SCATTER_FACTOR } from './doubt.ts';
import type { Leg } from './leg.ts';
import { DILUTION_REFUSE, DILUTION_WARN, type SpeedRow } from './rows.ts';

/** A leg whose residual is this many of its standard deviations off is shown and asked about. */
const STANDS_APART = 3.5;
/** What a published table asks: legs of a minute, and speeds with legs each. */
const LEG_SECONDS = 60;
const TURN = 2 * Math.PI;
/** Blocks of a turn hang together enough for a remark. */
const NEIGHBOURLY = 1.5;
/** A correction beyond this share of airspeed at every speed looks like a unit. */
const UNIT_SHARE = 0.08;

/**
 * Remarks of the answer.
 * @param doubt answer and what its uncertainty is made of
 * @param rows the speeds
 * @param airplane the description, or undefined
 * @returns flags, the weightier first
 */
export function answerRemarks(doubt: Doubt, rows: readonly SpeedRow[], airplane: Airplane | undefined): Flag[] {
  return [
    ...unitRemarks(rows, airplane),
    ...outliers(doubt),
    ...geometry(rows, airplane),
    ...scatterRemarks(doubt),
    ...windRemarks(doubt),
    ...dataRules(doubt, rows),
    ...turnRemarks(doubt),
    ...assumedRemarks(doubt),
  ];
}

/**
 * Externally studentised residual of each leg: how far it stands off the fit of all others.
 * @param doubt answer
 * @returns pure numbers, one a leg; null where a leg is not checked by any other
 * @source deleted residuals through the hat matrix [memory]; the scatter keeps its prior, so that few legs raise no alarm
 */
export function studentised(doubt: Doubt): (number | null)[] {
  const { inverse, jacobian, residuals, rss, nu } = doubt.solution.fit;
  return jacobian.map((row, i) => {
    const hat = row.reduce(
      (sum, a, j) => sum + a * row.reduce((inner, b, k) => inner + (inverse[j]?.[k] ?? 0) * b, 0),
      0,
    );
    const spare = 1 - hat;
    const r = residuals[i] ?? 0;
    if (nu < 2 || spare < 1e-6) return null;
    const others = legScatterOf(Math.max(0, rss - (r * r) / spare), (nu - 1) / doubt.inflation, doubt.legScatter).s;
    return r / (others * Math.sqrt(spare));
  });
}

function outliers(doubt: Doubt): Flag[] {
  return studentised(doubt).flatMap((value, i) => {
    const leg = doubt.legs[i];
    if (value === null || !leg || Math.abs(value) <= STANDS_APART) return [];
    const off = doubt.solution.fit.residuals[i] ?? 0;
    return [
      flag(
        'outlier-leg',
        `${leg.role} ${i + 1} stands ${Math.abs(fromSi(off, 'kt')).toFixed(1)} kt off the others (${Math.abs(value).toFixed(1)} of its standard deviations); it was kept: look at it, and drop it by hand only with a reason`,
        spanOf(leg),
      ),
    ];
  });
}

function unitRemarks(rows: readonly SpeedRow[], airplane: Airplane | undefined): Flag[] {
  const shares = rows.map((row) => row.correction / row.ias).filter((share) => !Number.isNaN(share));
  if (shares.length === 0 || !shares.every((share) => Math.abs(share) > UNIT_SHARE)) return [];
  const unit = airplane?.instruments.units.airspeed ?? 'kt';
  const worst = rows.reduce((most, row) => Math.max(most, Math.abs(row.correction)), 0);
  return [
    flag(
      'implausible-unit',
      `every correction is above ${100 * UNIT_SHARE} % of the airspeed, up to ${fromSi(worst, unit).toFixed(0)} ${unit}: check the units of airspeed and ground speed (miles and knots differ by 15 %)`,
    ),
  ];
}

function geometry(rows: readonly SpeedRow[], airplane: Airplane | undefined): Flag[] {
  const unit = airplane?.instruments.units.airspeed ?? 'kt';
  return rows
    .filter((row) => row.dilution > DILUTION_WARN)
    .map((row) => {
      const name = Number.isNaN(row.ias) ? row.label || 'the legs' : `${fromSi(row.ias, unit).toFixed(0)} ${unit}`;
      const words = `at ${name} an error of one leg is multiplied by ${row.dilution.toFixed(1)}`;
      return row.dilution > DILUTION_REFUSE
        ? flag('not-resolved', `${words}, above ${DILUTION_REFUSE}: no value is given; fly legs across the others`)
        : flag('geometry-warning', `${words} (four legs at right angles: 0.5)`);
    });
}

function scatterRemarks(doubt: Doubt): Flag[] {
  const { scatter, solution } = doubt;
  const expected = `${fromSi(doubt.legScatter, 'kt').toFixed(1)} kt, within a factor ${SCATTER_FACTOR}`;
  if (solution.fit.nu === 0) {
    return [
      flag(
        'assumed-repeatability',
        `as many unknowns as legs: the fit says nothing about its own error. Legs are expected to scatter by ${expected}; repeatability is not shown`,
      ),
    ];
  }
  if (!scatter.assumed) return [];
  return [
    flag(
      'assumed-repeatability',
      `scatter of a leg rests mostly on what is expected, ${expected}: the legs have ${solution.fit.nu} degrees of freedom of their own`,
    ),
  ];
}

function windRemarks(doubt: Doubt): Flag[] {
  const { wind } = doubt.plan;
  const heights = doubt.legs.map((leg) => leg.samples.height[0] ?? Number.NaN).filter((h) => !Number.isNaN(h));
  const span = Math.max(...heights) - Math.min(...heights);
  return [
    ...(wind.drift || wind.axes.length < 2
      ? []
      : [
          flag(
            'wind-drift-not-separable',
            'too few legs to tell a drifting wind from a steady one: the wind is taken as constant',
          ),
        ]),
    ...(span > 150 && !wind.withHeight
      ? [
          flag(
            'method-note',
            `legs were flown over ${Math.round(span)} m of height and a change of wind with height is not told apart`,
          ),
        ]
      : []),
    ...(wind.epochs > 1 ? [flag('method-note', `${wind.epochs} outings, each with a wind of its own`)] : []),
  ];
}

function dataRules(doubt: Doubt, rows: readonly SpeedRow[]): Flag[] {
  const { legs } = doubt;
  const short = legs.filter(
    (leg) => leg.role === 'leg' && !leg.written && leg.toSeconds - leg.fromSeconds < LEG_SECONDS,
  );
  const flown = legs.some((leg) => leg.role === 'turn') ? [] : rows;
  const full = (count: number) => flown.filter((row) => row.legs >= count).length;
  const enough = flown.length === 0 || full(4) >= 4 || full(3) >= 5;
  return [
    ...(short.length > 0
      ? [flag('data-rule', `${short.length} of ${legs.length} legs are shorter than ${LEG_SECONDS} s`)]
      : []),
    ...(enough
      ? []
      : [
          flag(
            'data-rule',
            `a table to publish wants 4 speeds of 4 legs or 5 speeds of 3; here are ${flown.map((row) => row.legs).join(', ')}`,
          ),
        ]),
  ];
}

function turnRemarks({ legs, inflation }: Doubt): Flag[] {
  const turns = new Map<number, Leg[]>();
  for (const leg of legs) if (leg.role === 'turn') turns.set(leg.run, [...(turns.get(leg.run) ?? []), leg]);
  if (turns.size === 0) return [];
  const short = [...turns.values()].filter((blocks) => blocks.length * (TURN / 8) < 2 * TURN).length;
  return [
    flag('method-note', 'from turns: the pressure field about the airplane in a turn is not that of level flight'),
    ...(inflation > NEIGHBOURLY
      ? [
          flag(
            'method-note',
            `neighbouring eighths of a turn feel the same gusts: ${inflation.toFixed(1)} of them count as one`,
          ),
        ]
      : []),
    ...(short > 0
      ? [flag('data-rule', `${short} of ${turns.size} turns go round less than twice; fly both directions if you can`)]
      : []),
  ];
}

function assumedRemarks(doubt: Doubt): Flag[] {
  const assumed = doubt.shifted.filter(({ sensor }) => sensor.assumed).map(({ sensor }) => sensor);
  return assumed.map((sensor) => flag('assumed-calibration', `${sensor.name}: ${sensor.basis}`));
}

function spanOf(leg: Leg): { fromSeconds: number; toSeconds: number } | Record<string, never> {
  return leg.written && leg.fromSeconds === leg.toSeconds
    ? {}
    : { fromSeconds: leg.fromSeconds, toSeconds: leg.toSeconds };
}
