/** The hot day at a height, and a temperature brought to it. */
import type { Airplane } from '../../airplane/index.ts';
import { correctToHotDay, HOT_DAYS, hotDayAir } from '../../models/index.ts';
import type { HotPart } from './channels.ts';
import type { FlightOptions } from './input.ts';

export interface HotDay {
  /** K at a pressure altitude, m */
  air(height: number): number;
  words: string;
}

/**
 * The hot day that margins are taken for.
 * @param airplane the description: its own hot day and field, or undefined
 * @param options what a person stated, object
 * @returns air over height, with its words
 * @source standard days [14cfr23-1043] [cs22-1047]; a day stated at the field falls with height as the standard one
 */
export function hotDayOf(airplane: Airplane | undefined, options: FlightOptions): HotDay {
  const standard = options.hotDay ?? airplane?.plan.hotDay ?? '14cfr23';
  const own = options.hotDayAir ?? airplane?.plan.hotDayAir;
  if (!own) return { air: (height) => hotDayAir(standard, height), words: HOT_DAYS[standard].words };
  const field = airplane?.place.elevation.si ?? 0;
  return {
    air: (height) => own.si + hotDayAir(standard, height) - hotDayAir(standard, field),
    words: 'the hot day stated by the builder, falling with height as the standard one',
  };
}

/** The one-to-one rule and thinner air err either way by this share of the temperature over air. */
export const RULE_DOUBT = 0.02;

export interface OnHotDay {
  hotAir: number;
  corrected: number;
  /** true where the test day was hotter and its correction is not credited */
  notCredited: boolean;
}

/**
 * A temperature brought to the hot day; a test day hotter than it is not credited.
 * @param T temperature, K
 * @param part what was measured, name
 * @param air outside air then, static, K
 * @param hotAir of the hot day at that height, K
 * @returns corrected temperature, K
 * @source [14cfr23-1043] (c)
 */
export function onHotDay(T: number, part: HotPart, air: number, hotAir: number): OnHotDay {
  const hotter = hotAir > air;
  return { hotAir, corrected: hotter ? correctToHotDay(T, part, air, hotAir) : T, notCredited: !hotter };
}
