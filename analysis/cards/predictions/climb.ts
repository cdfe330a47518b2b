/** Climbs flown again: the rate at each level of a check climb, and at the speeds flown before. */
import { shows } from '../../catalogue/index.ts';
import { fromSi, toSi } from '../../units/index.ts';
import type { PredictedReading } from '../expectation.ts';
import { plainText } from '../line.ts';
import type { CardPredictor } from './predictions-for.ts';
import { numberIn, recordsOf } from './result-rows.ts';
import { showInterval } from './show-interval.ts';

/** speeds said in a line, as shares of the range flown */
const SHARES = [0.2, 0.5, 0.8];

/**
 * Predict rates of climb, on a standard day and at the standard mass.
 * @param ask prediction of the result, function
 * @param about card, airplane, the result and its name
 * @returns rates of the levels between the bands flown, and lines for speeds flown
 */
export const predictClimbCard: CardPredictor = (ask, { card, airplane, result, name }) => {
  const { airspeed, altitude, verticalSpeed } = airplane.instruments.units;
  const best = result.quantities.find((one) => one.name === 'best-rate-speed' && one.value !== null)?.value ?? null;
  const symbol = shows('kias', airplane).symbol.replace('IAS', 'CAS');
  const said = (cas: number) =>
    `${showInterval({ value: cas, low: null, high: null, unit: 'm/s' }, airspeed).number} ${symbol}`;
  const refusals: string[] = [];
  const rateAt = (cas: number, height: number) => {
    const answer = ask({
      'calibrated-airspeed': { value: cas, unit: 'm/s' },
      'density-altitude': { value: height, unit: 'm' },
    });
    const rate = answer.quantities.find((one) => one.name === 'rate-standard');
    if (answer.status === 'refused' || !rate) refusals.push(answer.reason ?? 'not predicted');
    return rate;
  };
  const levels = card.tables.find(
    (table) => table.layout === 'levels' && table.columns.some((one) => one.quantity === 'vertical-speed'),
  );
  if (levels && best !== null) {
    const unit = /ft/.test(levels.head.unit) ? 'ft' : 'm';
    const readings = levels.rows.flatMap((row): PredictedReading[] => {
      const head = plainText(row.head);
      const rate = rateAt(best, toSi(Number(head), unit));
      if (!rate) return [];
      const { value, low, high } = rate;
      return [{ quantity: 'vertical-speed', row: head, value, low, high, unit: 'm/s', basis: name }];
    });
    const speed = said(best);
    return {
      readings,
      note: `${name}: at ${speed}, standard day and mass`,
      refusals: readings.length > 0 ? [] : refusals.slice(0, 1),
    };
  }
  const curve = recordsOf(result, 'climb-curve');
  const band = numberIn(curve[0], 'band');
  const inBand = curve.filter((row) => numberIn(row, 'band') === band);
  const height = numberIn(curve[0], 'density-altitude');
  // inside the speeds flown: at their very ends nothing is predicted
  const texts = SHARES.map((share) => inBand[Math.round(share * (inBand.length - 1))]).flatMap((row) => {
    const cas = numberIn(row, 'calibrated-airspeed');
    const rate = cas === null || height === null ? undefined : rateAt(cas, height);
    if (cas === null || !rate) return [];
    return [`${said(cas)} ${showInterval(rate, verticalSpeed).text}`];
  });
  const at =
    height === null ? '' : ` at ${Math.round(fromSi(height, altitude) / 100) * 100} ${altitude} density altitude`;
  const lines = texts.length > 0 ? [`${name}, standard mass${at}: ${texts.join(', ')}`] : [];
  return { readings: [], note: name, lines, refusals: lines.length > 0 ? [] : refusals.slice(0, 1) };
};
