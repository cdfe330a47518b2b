/** An equilibrium on the hot day, and what is left to the limit. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { correctToHotDay, HOT_DAYS, hotDayAir } from '../../models/index.ts';
import {
  type Combined,
  combineUncertainty,
  propagateByShift,
  type Scatter,
  type UncertaintySource,
} from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { show } from '../../units/index.ts';
import type { CoolingOptions } from './input.ts';
import type { Measured } from './measure.ts';

export interface HotReference {
  /** K */
  air: number;
  /** pressure altitude it holds for, m */
  height: number;
  words: string;
}

/**
 * The hot day of this field.
 * @param airplane the description, or undefined
 * @param options what a person stated, object
 * @param logged mean pressure altitude of the log, m, or null
 * @returns its air and words, with a remark where the altitude was assumed
 * @throws OutOfRange when the altitude is beyond any airplane's
 */
export function hotReference(
  airplane: Airplane | undefined,
  options: CoolingOptions,
  logged: number | null,
): { reference: HotReference; flags: Flag[] } {
  const stated = options.pressureAltitude?.si ?? logged ?? airplane?.place.elevation.si;
  const height = stated ?? 0;
  const flags =
    stated === undefined
      ? [
          flag(
            'assumed-value',
            'the field’s altitude is not known: the hot day is that of sea level. Enter the place on the Airplane page',
          ),
        ]
      : [];
  const own = options.hotDayAir ?? airplane?.plan.hotDayAir;
  if (own) return { reference: { air: own.si, height, words: 'the hot day stated by the builder' }, flags };
  const standard = options.hotDay ?? airplane?.plan.hotDay ?? '14cfr23';
  return { reference: { air: hotDayAir(standard, height), height, words: HOT_DAYS[standard].words }, flags };
}

export interface HotDayAnswer {
  /** T_corr, K */
  corrected: number;
  /** null without a limit */
  margin: number | null;
  doubt: Combined;
  /** U95 plus the slow part: how far the corrected temperature may lie above */
  upper: number;
  flags: Flag[];
}

/** The one-to-one rule and thinner air err either way by this share of the temperature over air. */
const RULE_DOUBT = 0.02;

/**
 * Equilibrium corrected to the hot day.
 * @param measured a point with an equilibrium, object
 * @param reference the hot day, object
 * @param limit K, or null
 * @param repeat scatter of one run, object
 * @param airplane the description, or undefined
 * @returns corrected temperature and margin, or null without an equilibrium or an air temperature
 * @source T_corr = T + (T_hot - T_air) [14cfr23-1043]; doubt of the rule 2 % of T - T_air [practice]
 */
export function onHotDay(
  measured: Measured,
  reference: HotReference,
  limit: number | null,
  repeat: Scatter,
  airplane: Airplane | undefined,
): HotDayAnswer | null {
  const { equilibrium, outside, hot } = measured;
  if (equilibrium === null || outside === null) return null;
  const hotter = reference.air > outside;
  const correctedAt = (shift: Readonly<Record<string, number>>) => {
    const air = outside + (shift.air ?? 0);
    const T = equilibrium + (shift.hot ?? 0);
    return hotter ? correctToHotDay(T, hot.part, air, reference.air) : T;
  };
  const sensor = accuracyOf(airplane, hot.quantity);
  const probe = accuracyOf(airplane, 'outside-air-temperature');
  const { bySensor } = propagateByShift({ hot: sensor.u, air: probe.u }, correctedAt);
  const sources: UncertaintySource[] = [
    ...measured.sources.filter((source) => source.part !== 'calibration'),
    { part: 'calibration', u: Math.abs(bySensor.hot ?? 0), nu: sensor.nu },
    { part: 'calibration', u: Math.abs(bySensor.air ?? 0), nu: probe.nu },
    { part: 'repeatability', u: repeat.s, nu: repeat.nu },
  ];
  if (hotter) sources.push({ part: 'fit', u: RULE_DOUBT * (equilibrium - outside), nu: Number.POSITIVE_INFINITY });
  const doubt = combineUncertainty(sources.filter((source) => source.u > 0));
  const corrected = correctedAt({});
  const words = (si: number) => show(si, 'degC', { decimals: 1 }).text;
  const flags = hotter
    ? []
    : [
        flag(
          'correction-not-credited',
          `${measured.point.label}: the air was ${words(outside)}, hotter than ${words(reference.air)} of the hot day; the correction of ${show(reference.air - outside, 'dK', { decimals: 1 }).text} is shown and not credited`,
        ),
      ];
  return {
    corrected,
    margin: limit === null ? null : limit - corrected,
    doubt,
    upper: doubt.u95 + measured.allowance,
    flags,
  };
}
