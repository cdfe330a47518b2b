/** An airspeed calibration flown again: what each speed flown before should turn out to be. */

import { shows } from '../../catalogue/index.ts';
import type { CardPredictor } from './predictions-for.ts';
import { numberIn, recordsOf } from './result-rows.ts';
import { showInterval } from './show-interval.ts';

/** lines a card has room for */
const MOST = 4;

/**
 * Predict calibrated airspeeds: no box of the card reads them, so they stand in a line above it.
 * @param ask prediction of the result, function
 * @param about card, airplane, the result and its name
 * @returns lines for the speeds flown before, or why there are none
 */
export const predictAirspeedCard: CardPredictor = (ask, { card, airplane, result, name }) => {
  const unit = airplane.instruments.units.airspeed;
  const { symbol } = shows('kias', airplane);
  if (!card.tables.some((table) => table.layout === 'legs')) return { readings: [], note: name };
  const flown = recordsOf(result, 'position-error');
  const every = Math.max(1, Math.ceil(flown.length / MOST));
  const refusals: string[] = [];
  const texts = flown
    .filter((_, i) => i % every === 0)
    .flatMap((row) => {
      const ias = numberIn(row, 'indicated-airspeed');
      if (ias === null) return [];
      const flaps = typeof row.flaps === 'string' ? { flaps: row.flaps } : {};
      const answer = ask({ 'indicated-airspeed': { value: ias, unit: 'm/s' }, ...flaps });
      const cas = answer.quantities.find((one) => one.name === 'calibrated-airspeed');
      if (answer.status === 'refused' || !cas) {
        refusals.push(answer.reason ?? 'not predicted');
        return [];
      }
      const reading = showInterval({ value: ias, low: null, high: null, unit: 'm/s' }, unit).number;
      const expected = showInterval(cas, unit);
      return [`${reading} ${symbol} is ${expected.number} ± ${expected.half} ${symbol.replace('IAS', 'CAS')}`];
    });
  return { readings: [], note: name, lines: texts.length > 0 ? [`${name}: ${texts.join(', ')}`] : [], refusals };
};
