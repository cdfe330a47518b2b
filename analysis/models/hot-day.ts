/** The hot day of the cooling rules, and temperatures corrected to it. */
import { OutOfRange } from '../remarks/index.ts';
import { differenceToSi, show, toSi } from '../units/index.ts';

export type HotDayStandard = '14cfr23' | 'cs22';

interface HotDay {
  words: string;
  /** K */
  seaLevel: number;
  /** K per m of pressure altitude */
  lapse: number;
  /** the lapse stops here, K */
  floor: number;
}

export const HOT_DAYS: Readonly<Record<HotDayStandard, HotDay>> = {
  '14cfr23': {
    words: '100 °F at sea level less 3.6 °F per 1000 ft (14 CFR 23.1043)',
    seaLevel: toSi(100, 'degF'),
    lapse: differenceToSi(3.6, 'dF') / toSi(1000, 'ft'),
    floor: toSi(-69.7, 'degF'),
  },
  cs22: {
    words: '38 °C at sea level less 6.5 K per 1000 m (CS 22.1047)',
    seaLevel: toSi(38, 'degC'),
    lapse: 6.5 / 1000,
    floor: 0,
  },
};

/**
 * Air temperature of the hot day.
 * @param standard which rule, name
 * @param Hp pressure altitude, m, -1000 to 20 000
 * @returns K
 * @throws OutOfRange outside those altitudes
 * @source [14cfr23-1043] (b), floor -69.7 F; [cs22-1047] (d)
 */
export function hotDayAir(standard: HotDayStandard, Hp: number): number {
  if (!(Hp >= -1000 && Hp <= 20_000)) throw new OutOfRange('pressure altitude', Hp, '-1000 to 20 000 m');
  const { seaLevel, lapse, floor } = HOT_DAYS[standard];
  return Math.max(floor, seaLevel - lapse * Hp);
}

export type CooledPart = 'coolant' | 'oil' | 'cylinder-head' | 'cylinder-barrel';

/** Share of the air's difference that is added. */
export const HOT_DAY_FACTOR: Readonly<Record<CooledPart, number>> = {
  coolant: 1,
  oil: 1,
  'cylinder-head': 1,
  'cylinder-barrel': 0.7,
};

/**
 * A temperature corrected to the hot day, literally as the rule says: on a day hotter than it the correction is
 * negative, which a caller shows and does not credit.
 * @param measured highest temperature seen, K
 * @param part what was measured, name
 * @param air outside air when the highest value was first reached, K
 * @param hot air of the hot day at that pressure altitude, K
 * @returns T_corr = T + k (T_hot - T_air), K
 * @source [14cfr23-1043] (c) and (d)
 */
export function correctToHotDay(measured: number, part: CooledPart, air: number, hot: number): number {
  return measured + HOT_DAY_FACTOR[part] * (hot - air);
}

/**
 * Hottest air in which a limit is not passed, by the same one-to-one rule.
 * @param limit temperature not to be passed, K
 * @param measured temperature seen, K
 * @param air outside air then, K
 * @returns K
 * @source limiting ambient temperature, limit - measured + ambient, as used for vehicles [sae-j1393]
 */
export function limitingAir(limit: number, measured: number, air: number): number {
  return limit - measured + air;
}

/**
 * Whether a temperature counts as stabilised for certification. It is not equilibrium: see remainingRise.
 * @param rate of temperature, K/s
 * @returns true below 2 F per minute, either way
 * @source [14cfr25-1045] (a)
 */
export function isStabilised(rate: number): boolean {
  return Math.abs(rate) < toSi(2, 'degF/min') - 1e-12;
}

/** A hot day as air over pressure altitude, with the words a result states it by. */
export interface HotDayLaw {
  /** air at a pressure altitude, K; throws OutOfRange as hotDayAir */
  at(Hp: number): number;
  words: string;
}

/**
 * The hot day a climb or a flight is corrected to: a rule's own, or a hotter day stated at one height that lapses as the
 * rule does.
 * @param standard which rule, name
 * @param stated air a person stated and the pressure altitude it is meant for, K and m; null for the rule itself
 * @returns air over pressure altitude, and its words
 * @source [14cfr23-1043] (b), [cs22-1047] (d)
 */
export function hotDayLaw(standard: HotDayStandard, stated: { air: number; height: number } | null = null): HotDayLaw {
  const { words } = HOT_DAYS[standard];
  if (stated === null) return { at: (Hp) => hotDayAir(standard, Hp), words };
  const over = stated.air - hotDayAir(standard, stated.height);
  const air = show(stated.air, 'degC', { decimals: 1 }).text;
  const height = show(stated.height, 'm', { decimals: 0 }).text;
  return {
    at: (Hp) => hotDayAir(standard, Hp) + over,
    words: `${air} at ${height} pressure altitude as stated, with the lapse of: ${words}`,
  };
}
