/** Tables of flight cooling: steady points with residuals, exponents, margins, the next point. */
import { combineUncertainty, type UncertaintySource } from '../../numbers/index.ts';
import type { Cell, ResultTable } from '../../results/index.ts';
import type { ChannelAnswer } from './channel-fit.ts';
import type { Margin } from './margins.ts';
import type { NextSegment } from './next-segment.ts';
import { isOpen, stillToCome } from './point.ts';
import { dynamicPressure, TERM_WORDS, type TermName } from './terms.ts';

const column = (name: string, unit: string) => ({ name, unit });

/** Every temperature of every point, its regime, what was still in hand, and how far it stands from the fit. */
export function steadyPointsTable(answers: readonly ChannelAnswer[]): ResultTable {
  const byFlow = answers[0]?.variables[0] !== 'manifold-times-speed';
  const rows = answers
    .flatMap((answer) => answer.readings.map((reading) => ({ answer, reading })))
    .sort((a, b) => a.reading.point - b.reading.point)
    .map(({ answer, reading }): Cell[] => {
      const { setting, regime, door } = { ...reading, door: reading.setting.door };
      const place = answer.fitted.indexOf(reading);
      const left = isOpen(reading) || door === null ? null : 1 - door;
      const q = setting.cas === null ? null : dynamicPressure(setting.cas, setting.height);
      return [
        reading.label,
        reading.quantity,
        reading.temperature,
        reading.air,
        reading.excess,
        regime,
        place < 0 ? null : (answer.fit?.residuals[place] ?? null),
        reading.rate,
        stillToCome(reading),
        setting.power,
        setting.ias,
        door,
        setting.height,
        q,
        reading.thermostatLeft,
        left,
        reading.written ? null : reading.fromSeconds,
        reading.written ? null : reading.toSeconds,
      ];
    });
  return {
    name: 'steady-points',
    columns: [
      column('label', 'none'),
      column('channel', 'none'),
      column('temperature', 'K'),
      column('air', 'K'),
      column('over-air', 'dK'),
      column('regime', 'none'),
      column('residual', 'dK'),
      column('temperature-rate', 'K/s'),
      column('still-to-come', 'dK'),
      byFlow ? column('fuel-flow', 'm3/s') : column('manifold-times-speed', '1'),
      column('indicated-airspeed', 'm/s'),
      column('cowl-exit-position', '1'),
      column('pressure-altitude', 'm'),
      column('dynamic-pressure', 'Pa'),
      column('thermostat-share-shut', '1'),
      column('door-share-left', '1'),
      column('from-seconds', 's'),
      column('to-seconds', 's'),
    ],
    rows,
  };
}

/** An exponent with what it is known to. */
export interface Exponent {
  quantity: string;
  name: TermName;
  value: number;
  doubt: ReturnType<typeof combineUncertainty>;
}

/** Exponents of the fits: repeatability from the scatter between points, calibration from each sensor shifted. */
export function exponentsOf({ quantity, fit, shifted }: ChannelAnswer): Exponent[] {
  if (!fit) return [];
  return fit.terms.map(({ name }, k) => {
    const value = fit.beta[k + 1] ?? Number.NaN;
    const u = fit.scatter.s * Math.sqrt(fit.inverse[k + 1]?.[k + 1] ?? 0);
    const sources: UncertaintySource[] = [
      { part: 'repeatability', u, nu: fit.scatter.nu },
      ...shifted.map((one) => ({
        part: 'calibration' as const,
        u: Math.abs((one.beta[k + 1] ?? value) - value),
        nu: one.nu,
      })),
    ];
    return { quantity, name, value, doubt: combineUncertainty(sources.filter((one) => one.u > 0)) };
  });
}

/** Exponents with the two parts of what they are known to. */
export function coefficientsTable(exponents: readonly Exponent[]): ResultTable {
  return {
    name: 'coefficients',
    columns: [
      column('channel', 'none'),
      column('of', 'none'),
      column('exponent', '1'),
      column('exponent-u95', '1'),
      column('repeatability', '1'),
      column('calibration', '1'),
    ],
    rows: exponents.map(({ quantity, name, value, doubt }) => [
      quantity,
      TERM_WORDS[name],
      value,
      doubt.u95,
      doubt.parts.repeatability ?? 0,
      doubt.parts.calibration ?? 0,
    ]),
  };
}

/** Margins of points and of conditions asked for, with the way back to the samples. */
export function marginsTable(margins: readonly Margin[]): ResultTable {
  return {
    name: 'margins',
    columns: [
      column('label', 'none'),
      column('channel', 'none'),
      column('temperature', 'K'),
      column('air', 'K'),
      column('hot-air', 'K'),
      column('corrected', 'K'),
      column('limit', 'K'),
      column('margin', 'dK'),
      column('u95', 'dK'),
      column('still-to-come', 'dK'),
      column('outcome', 'none'),
      column('from-seconds', 's'),
      column('to-seconds', 's'),
    ],
    rows: margins.map((one) => [
      one.label,
      one.quantity,
      one.temperature,
      one.air,
      one.hotAir,
      one.corrected,
      one.limit,
      one.margin,
      one.doubt?.u95 ?? null,
      one.toCome,
      one.comparison.outcome,
      one.reading && !one.reading.written ? one.reading.fromSeconds : null,
      one.reading && !one.reading.written ? one.reading.toSeconds : null,
    ]),
  };
}

/** Candidates for one more point, the best first. */
export function nextSegmentTable(candidates: readonly NextSegment[]): ResultTable | null {
  const [first] = candidates;
  if (!first) return null;
  const unit = {
    'fuel-flow': 'm3/s',
    'manifold-times-speed': '1',
    'dynamic-pressure': 'Pa',
    'cowl-exit-position': '1',
  };
  return {
    name: 'next-segment',
    columns: [
      column('channel', 'none'),
      ...first.setting.map(({ name }) => column(name, unit[name])),
      column('widest-prediction-now', 'dK'),
      column('widest-prediction-then', 'dK'),
    ],
    rows: candidates.map(({ quantity, setting, before, after }) => [
      quantity,
      ...setting.map((one) => one.value),
      before,
      after,
    ]),
  };
}
