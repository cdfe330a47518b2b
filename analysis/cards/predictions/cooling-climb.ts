/** A cooling climb flown again in the same air: the peak of each temperature. */
import type { CardPredictor } from './predictions-for.ts';
import { numberIn, recordsOf } from './result-rows.ts';
import { showInterval } from './show-interval.ts';

/** The channels' names as a pilot says them. */
const SAID: Readonly<Record<string, string>> = {
  'coolant-temperature': 'coolant',
  'oil-temperature': 'oil',
  'cylinder-head-temperature': 'cylinder head',
};

/**
 * Predict the peaks: no box of a level reads them, so they stand in a line.
 * @param ask prediction of the result, function
 * @param about card, airplane, the result and its name
 * @returns a line with each peak in the air of the measured climb, or why there is none
 */
export const predictCoolingClimbCard: CardPredictor = (ask, { airplane, result, name }) => {
  const unit = airplane.instruments.units.temperature;
  const peaks = recordsOf(result, 'peaks');
  const air = peaks.map((row) => numberIn(row, 'air')).find((one) => one !== null) ?? null;
  const height = peaks.map((row) => numberIn(row, 'pressure-altitude')).find((one) => one !== null) ?? null;
  if (air === null) return { readings: [], note: name, refusals: ['no peak of the measured climbs has its air'] };
  const answer = ask({
    'outside-air-temperature': { value: air, unit: 'K' },
    ...(height === null ? {} : { 'pressure-altitude': { value: height, unit: 'm' } }),
  });
  if (answer.status === 'refused') return { readings: [], note: name, refusals: [answer.reason ?? 'not predicted'] };
  const texts = answer.quantities.flatMap((one) => {
    const [base = '', index] = one.name.split('#');
    const said = SAID[base];
    return said ? [`${said}${index ? ` ${index}` : ''} ${showInterval(one, unit).text}`] : [];
  });
  const inAir = showInterval({ value: air, low: null, high: null, unit: 'K' }, unit).text;
  return {
    readings: [],
    note: name,
    lines: texts.length > 0 ? [`${name}, peaks where the air is ${inAir}: ${texts.join(', ')}`] : [],
  };
};
