/**
 * How well each channel is known: the airplane's own figure where one is on record, else a default that is flagged
 * as assumed wherever it is used.
 */
import { baseName, differenceToSi, quantityOf, unitOf } from '../units/index.ts';
import type { Airplane } from './configuration.ts';

export interface Accuracy {
  /** standard uncertainty of an offset common to all readings, SI difference */
  u: number;
  /** standard uncertainty of a gain, share of the reading */
  gain: number;
  /** degrees of freedom of both */
  nu: number;
  /** true when it is a default nobody measured */
  assumed: boolean;
  basis: string;
}

/** U95 half-widths: `offset` in `unit`, `gain` a share of the reading. A track has none: it follows from ground speed. */
interface Default {
  quantities: readonly string[];
  offset: number;
  unit: string;
  gain?: number;
  words: string;
}

// All common practice, no source.
export const DEFAULT_ACCURACY: readonly Default[] = [
  { quantities: ['indicated-airspeed', 'calibrated-airspeed'], offset: 1, unit: 'm/s', words: '1.0 m/s' },
  // 150 Pa at sea level is about 40 ft.
  {
    quantities: ['pressure-altitude', 'indicated-altitude', 'reported-altitude'],
    offset: 40,
    unit: 'ft',
    gain: 0.005,
    words: '40 ft and 0.5 % of a change',
  },
  { quantities: ['outside-air-temperature', 'inlet-air-temperature'], offset: 2, unit: 'dK', words: '2 K' },
  {
    quantities: ['coolant-temperature', 'coolant-temperature-in', 'oil-temperature', 'fuel-temperature'],
    offset: 3,
    unit: 'dK',
    words: '3 K',
  },
  { quantities: ['cylinder-head-temperature'], offset: 5, unit: 'dK', words: '5 K' },
  { quantities: ['exhaust-gas-temperature'], offset: 10, unit: 'dK', words: '10 K' },
  { quantities: ['engine-speed', 'propeller-speed'], offset: 0, unit: 'rpm', gain: 0.005, words: '0.5 %' },
  { quantities: ['manifold-pressure', 'altimeter-setting'], offset: 10, unit: 'hPa', words: '10 hPa' },
  { quantities: ['fuel-flow', 'fuel-used'], offset: 0, unit: 'L/h', gain: 0.05, words: '5 %' },
  { quantities: ['bus-voltage'], offset: 0.2, unit: 'V', words: '0.2 V' },
  {
    quantities: ['bus-current', 'battery-current', 'gear-current'],
    offset: 0.5,
    unit: 'A',
    gain: 0.03,
    words: '3 % and 0.5 A',
  },
  {
    quantities: ['cowl-exit-position', 'pitch-trim-position', 'pedal-position'],
    offset: 0.03,
    unit: '1',
    words: '3 % of travel',
  },
  { quantities: ['elevator-position', 'flap-position'], offset: 0.5, unit: 'deg', words: '0.5°' },
  { quantities: ['ground-speed'], offset: 0.1, unit: 'm/s', words: '0.1 m/s' },
  { quantities: ['gps-altitude'], offset: 10, unit: 'm', words: '10 m' },
  {
    quantities: ['normal-acceleration', 'lateral-acceleration', 'longitudinal-acceleration'],
    offset: 0.03,
    unit: 'g0',
    words: '0.03 g',
  },
  { quantities: ['pitch-rate', 'roll-rate', 'yaw-rate'], offset: 0.5, unit: 'deg/s', words: '0.5°/s' },
  { quantities: ['heading-magnetic'], offset: 5, unit: 'deg', words: '5°' },
];

/** A U95 half-width taken as normal is worth this many degrees of freedom. */
const HALF_WIDTH_NU = 50;

/**
 * Accuracy of a channel.
 * @param airplane the description, or undefined when none was given, object
 * @param quantity glossary name, index ignored, text
 * @returns standard uncertainties in SI, degrees of freedom, whether assumed, and on what it rests
 * @source half-widths as normal with nu 50, stated maximum errors as rectangular [jcgm-100] 4.3; defaults [practice]
 */
export function accuracyOf(airplane: Airplane | undefined, quantity: string): Accuracy {
  const name = baseName(quantity);
  const stated = airplane?.instruments.accuracy[name];
  if (stated) {
    const rectangular = stated.distribution === 'rectangular';
    const u = differenceToSi(stated.u95, stated.unit) / (rectangular ? Math.sqrt(3) : 2);
    const isGain = unitOf(stated.unit).dimension === 'ratio' && quantityOf(name)?.dimension !== 'ratio';
    return {
      u: isGain ? 0 : u,
      gain: isGain ? u : 0,
      nu: rectangular ? Number.POSITIVE_INFINITY : HALF_WIDTH_NU,
      assumed: false,
      basis: stated.basis,
    };
  }
  const row = DEFAULT_ACCURACY.find((one) => one.quantities.includes(name));
  if (!row) return { u: 0, gain: 0, nu: HALF_WIDTH_NU, assumed: true, basis: 'no figure on record; none assumed' };
  return {
    u: differenceToSi(row.offset, row.unit) / 2,
    gain: (row.gain ?? 0) / 2,
    nu: HALF_WIDTH_NU,
    assumed: true,
    basis: `${row.words} (95 %) assumed; common practice, no source`,
  };
}
