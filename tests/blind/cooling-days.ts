/** The days on which ground cooling is tried: airplanes, recorders, weather and mishaps a builder may bring. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import type { Day, Step } from './cooling-run.ts';

const C = (degrees: number) => toSi(degrees, 'degC');
const THERMOSTAT = { start: C(80), open: C(92) };

type Json = Record<string, Record<string, unknown>>;

/** A demo airplane with changes. */
export function airplaneWith(name: 'ouzel' | 'wrenlet', change: (json: Json) => void = () => {}): Airplane {
  const path = join(import.meta.dirname, '..', '..', 'sample-tests', name, 'airplane.json');
  const json = JSON.parse(readFileSync(path, 'utf8'));
  change(json);
  const { airplane, problems } = readAirplane(json, name);
  if (!airplane) throw new Error(problems.map((one) => one.message).join('; '));
  return airplane;
}

const WARM: Step[] = [
  { rpm: 1400, seconds: 240, excess: 55, tau: 500 },
  { rpm: 1800, seconds: 420, excess: 65, tau: 400 },
];
const FAN_OFF: Step = { rpm: 2500, seconds: 900, excess: 78, tau: 280 };
const FAN_ON: Step = { rpm: 2500, seconds: 900, excess: 74, tau: 250, fan: true };
const PLAIN: Day = { steps: [...WARM, FAN_OFF, FAN_ON], air: C(21), thermostat: THERMOSTAT };

export interface TrialDay {
  name: string;
  day: Day;
  airplane: Airplane;
  /** wanted share of equilibria inside, 0 to 1 */
  wanted: readonly [number, number];
  /** most that may be left without an equilibrium among fully open pieces of 12 min and more, 0 to 1 */
  withheld: number;
}

const ouzel = airplaneWith('ouzel');
const wrenlet = airplaneWith('wrenlet', (json) => {
  const accuracy = {
    'cylinder-head-temperature': { u95: 5, unit: 'dK', basis: 'drawn from this' },
    'outside-air-temperature': { u95: 2, unit: 'dK', basis: 'drawn from this' },
  };
  if (json.instruments) json.instruments.accuracy = accuracy;
});

const trial = (name: string, change: Partial<Day>, more: Partial<TrialDay> = {}): TrialDay => ({
  name,
  day: { ...PLAIN, ...change },
  airplane: ouzel,
  wanted: [0.9, 0.995],
  withheld: 0.2,
  ...more,
});

/** Days the model can represent: the interval must hold the truth as often as it says. */
export const HONEST_DAYS: readonly TrialDay[] = [
  trial('plain day, 1 Hz, 0.5 K steps', {}),
  trial('white noise only', { gust: 0 }),
  trial('gusts of 0.5 K over 10 s', { gust: 0.5, gustSeconds: 10 }, { withheld: 0.6 }),
  trial('gusts of 0.5 K over 25 s', { gust: 0.5, gustSeconds: 25 }, { withheld: 0.8 }),
  // quiet air on whole kelvins: the step decides, and is carried in full
  trial('1 K steps, quiet air', { step: 1, gust: 0.1, white: 0.05 }, { wanted: [0.9, 1] }),
  trial('whole degrees Fahrenheit', { unit: 'degF', step: 1 }),
  trial('5 Hz, 0.1 K steps', { rateHz: 5, step: 0.1, white: 0.3 }),
  trial('one row in 2 s', { rateHz: 0.5 }),
  trial('a tenth of the rows missing', { dropouts: 0.1 }),
  trial('engine speed with 60 rpm of noise and 0.8 % of wander', {
    rpmNoise: 60,
    rpmWander: 0.008,
    throttleSeconds: 8,
  }),
  trial('air warms by 3 K', { air: C(18), airRise: 4.5 }),
  trial('sensor lag 15 s, not known', { lag: 15 }),
  trial('no fan channel, door moved once', {
    steps: [...WARM, FAN_OFF, { ...FAN_OFF, excess: 83, tau: 290, exit: 0.5 }],
    without: ['cooling-fan-state'],
  }),
  trial('engine speed alone', {
    steps: [...WARM, FAN_OFF, { ...FAN_OFF, rpm: 2700, excess: 84, tau: 265 }],
    without: ['cooling-fan-state', 'cowl-exit-position'],
  }),
  trial('fan switched on and off within a hold', {
    steps: [...WARM, { ...FAN_OFF, seconds: 600, excess: 84 }, FAN_ON, { ...FAN_OFF, excess: 84 }],
  }),
  trial(
    'air-cooled, heads',
    {
      steps: [
        { rpm: 1000, seconds: 900, excess: 118, tau: 330 },
        { rpm: 1700, seconds: 900, excess: 166, tau: 240 },
        { rpm: 1200, seconds: 900, excess: 125, tau: 300 },
      ],
      air: C(17),
      thermostat: null,
      part: 'cylinder-head-temperature#1',
      sensorU95: 5,
      airU95: 2,
      without: ['cooling-fan-state', 'cowl-exit-position'],
    },
    { airplane: wrenlet },
  ),
];

/** Heat taken up four times more slowly by a quarter of the mass: no trace shows it, the one-sided part must. */
export const SLOW_NODE_DAY = trial('a slow quarter of the mass', { slow: { share: 0.25, times: 4 } });

/** Days on which there is nothing to give: no value may appear. */
export const SILENT_DAYS: readonly TrialDay[] = [
  trial('thermostat regulates throughout', {
    steps: [...WARM, { rpm: 2000, seconds: 1200, excess: 60, tau: 280 }],
    air: C(15),
  }),
  trial('thermostat cycles about its opening', {
    steps: [...WARM, { rpm: 2200, seconds: 1200, excess: 60, tau: 200 }],
    hysteresis: 8,
  }),
  trial('thermostat cycles where the description says it is open', {
    steps: [...WARM, { rpm: 2200, seconds: 1200, excess: 60, tau: 150 }],
    thermostat: { start: C(90), open: C(106) },
    hysteresis: 8,
  }),
  trial('cut before one time constant', {
    steps: [...WARM, { rpm: 2500, seconds: 300, excess: 95, tau: 300 }],
  }),
  trial('fan switched and not logged', {
    steps: [...WARM, { ...FAN_OFF, seconds: 600, excess: 88 }, { ...FAN_ON, seconds: 700 }],
    without: ['cooling-fan-state'],
  }),
];

/** Settles so near its limit that a wrong "shown" would be a wrong go. */
export const BOUNDARY_DAY = trial('settles at the caution temperature', {
  steps: [...WARM, { ...FAN_OFF, seconds: 1500, excess: 84 }],
});
