/** A steady point: what was set, and what one temperature did there. */
import type { Regime } from '../../models/index.ts';
import type { StandardUncertainty } from '../../numbers/index.ts';
import type { HotPart } from './channels.ts';

/** What heats: fuel flow, m3/s; or, where no flow is known, manifold pressure times engine speed, Pa/s. */
export type PowerMeasure = 'fuel-flow' | 'manifold-times-speed';

export const POWER_WORDS: Readonly<Record<PowerMeasure, string>> = {
  'fuel-flow': 'fuel flow',
  'manifold-times-speed': 'manifold pressure times engine speed',
};

export interface Setting {
  /** in the unit of the measure; null where not known */
  power: number | null;
  measure: PowerMeasure;
  /** m/s; null where not known */
  ias: number | null;
  cas: number | null;
  /** standard uncertainty of cas, m/s */
  uCas: number;
  /** m of pressure altitude, or null */
  height: number | null;
  /** share of travel, 0..1, or null where there is none or it was not logged */
  door: number | null;
}

/** One temperature at one steady point. */
export interface SteadyReading {
  point: number;
  label: string;
  file: string;
  fromSeconds: number;
  toSeconds: number;
  byHand: boolean;
  /** from a card: that it was steady is the writer's word */
  written: boolean;
  /** glossary name with its index */
  quantity: string;
  part: HotPart;
  setting: Setting;
  temperature: number;
  /** outside air, static, K */
  air: number;
  /** temperature over air, K */
  excess: number;
  noise: StandardUncertainty;
  /** K/s, null where nobody saw it */
  rate: number | null;
  uRate: number;
  regime: Regime;
  /** share of the thermostat's range still shut, 0..1; null where nothing regulates or it is not known */
  thermostatLeft: number | null;
}

/** A slow part of the heat path (block, oil, duct) follows in about so long; common practice, no source; s. */
const SLOW_SECONDS = 600;

/**
 * What may still come at a point whose temperature was rising: one-sided, it can only get hotter.
 * @param reading a temperature at a steady point, object
 * @returns K, 0 or more
 */
export function stillToCome({ rate }: SteadyReading): number {
  return rate === null ? 0 : Math.max(0, rate) * SLOW_SECONDS;
}

/** Whether the temperature says what the cooling can do: nothing regulated it. */
export function isOpen({ regime }: SteadyReading): boolean {
  return regime === 'fully-open';
}

/** `cylinder-head-temperature#2` as `cylinder head temperature 2`. */
export function channelWords(quantity: string): string {
  return quantity.replaceAll('-', ' ').replace('#', ' ');
}
