/**
 * Measures: the kinds of number a card speaks of, and the unit in which this airplane's instruments show each.
 * Nothing here converts; it only chooses a unit of analysis/units.
 */
import type { Airplane } from '../airplane/index.ts';
import { unitOf } from '../units/index.ts';

export const MEASURES = [
  'amps',
  'angle',
  'angle-rate',
  'arm',
  'charge',
  'climb-rate',
  'coolant-pressure',
  'density',
  'distance',
  'far',
  'flow',
  'fluid',
  'force',
  'fuel',
  'fuel-pressure',
  'g',
  'height',
  'altitude',
  'hydraulic-pressure',
  'kias',
  'kt',
  'ktas',
  'mac',
  'manifold-pressure',
  'mass',
  'minutes',
  'oil-pressure',
  'altimeter-setting',
  'ratio',
  'rpm',
  'seconds',
  'slowing',
  'small',
  'speed',
  'tank-pressure',
  'temp',
  'tempdiff',
  'temprate',
  'torque',
  'velocity',
  'volts',
  'watts',
] as const;

export type Measure = (typeof MEASURES)[number];

export interface Shows {
  /** unit id of analysis/units */
  unit: string;
  /** printed after the number: the unit with the scale of a speed */
  symbol: string;
  /** decimals a converted number is printed with; whole where 0; 'two digits' for large round figures */
  decimals: number;
}

const INCHES = new Set(['in', 'ft']);

/**
 * The unit and symbol in which an airplane's instruments show a measure.
 * @param measure what kind of number, text
 * @param airplane the description, object
 * @param scale airspeed scale where the number has one, text
 * @returns unit id, printed symbol and decimals
 * @throws UnknownUnit when the description names a unit the list lacks
 * @source the airplane's own description, instruments.units
 */
export function shows(measure: Measure, airplane: Airplane, scale: 'IAS' | 'CAS' | 'TAS' = 'IAS'): Shows {
  const units = airplane.instruments.units;
  const inches = INCHES.has(units.arm);
  const fahrenheit = units.temperature === 'degF';
  const pounds = units.mass === 'lb';
  const plain = (unit: string, decimals: number): Shows => ({ unit, symbol: unitOf(unit).symbol, decimals });
  switch (measure) {
    case 'kias':
      return { unit: units.airspeed, symbol: speedSymbol(units.airspeed, scale), decimals: 0 };
    case 'ktas':
      return { unit: units.airspeed, symbol: speedSymbol(units.airspeed, 'TAS'), decimals: 0 };
    case 'speed':
      return plain(units.airspeed, 0);
    case 'slowing':
      return { unit: units.airspeed, symbol: `${unitOf(units.airspeed).symbol}/s`, decimals: 1 };
    case 'kt':
      return plain(units.wind, 0);
    case 'height':
    case 'altitude':
      return plain(units.altitude, 0);
    case 'climb-rate':
      return plain(units.verticalSpeed, units.verticalSpeed === 'm/s' ? 1 : 0);
    case 'distance':
      return plain(units.distance, 0);
    case 'far':
      return plain(units.distance === 'ft' || units.wind === 'kt' ? 'nmi' : 'km', 0);
    case 'small':
      return inches ? plain('in', 2) : plain('mm', 1);
    case 'arm':
      return plain(units.arm, units.arm === 'm' ? 3 : 1);
    case 'temp':
      return plain(units.temperature, 0);
    case 'tempdiff':
      return plain(fahrenheit ? 'dF' : units.temperature === 'K' ? 'dK' : 'dC', 0);
    case 'temprate':
      return plain(fahrenheit ? 'degF/min' : 'degC/min', 1);
    case 'oil-pressure':
      return pressure(units.oilPressure);
    case 'fuel-pressure':
      return pressure(units.fuelPressure);
    case 'coolant-pressure':
      return pressure(units.coolantPressure);
    case 'hydraulic-pressure':
      return pressure(units.hydraulicPressure);
    case 'tank-pressure':
      return pressure(units.tankPressure);
    case 'manifold-pressure':
      return pressure(units.manifoldPressure);
    case 'altimeter-setting':
      return pressure(units.altimeterSetting);
    case 'fuel':
      return plain(units.fuel, 0);
    case 'fluid':
      return plain(units.fuel === 'L' ? 'L' : 'qt', 1);
    case 'flow':
      return plain(units.fuelFlow, 1);
    case 'density':
      return plain(pounds ? 'lb/gal' : 'kg/L', 3);
    case 'mass':
      return plain(units.mass, 0);
    case 'force':
      return plain(units.force, 0);
    case 'torque':
      return plain(pounds ? 'lbf.ft' : 'N.m', 0);
    case 'g':
      return plain(units.acceleration, 1);
    case 'velocity':
      return inches ? plain('in/s', 2) : plain('mm/s', 0);
    case 'rpm':
      return plain('rpm', 0);
    case 'amps':
      return plain('A', 1);
    case 'volts':
      return plain('V', 1);
    case 'watts':
      return plain('W', 0);
    case 'charge':
      return plain('Ah', 1);
    case 'seconds':
      return plain('s', 0);
    case 'minutes':
      return plain('min', 0);
    case 'angle':
      return plain('deg', 0);
    case 'angle-rate':
      return plain('deg/s', 0);
    case 'ratio':
      return plain('%', 0);
    case 'mac':
      return { unit: '%', symbol: '% MAC', decimals: 1 };
  }
}

function pressure(unit: string): Shows {
  const decimals: Record<string, number> = { bar: 1, psi: 0, hPa: 0, kPa: 0, inHg: 1, inH2O: 1, mmHg: 0, Pa: 0 };
  return { unit, symbol: unitOf(unit).symbol, decimals: decimals[unit] ?? 1 };
}

/** A speed always says its scale: KIAS where the instrument shows knots, else the unit with the scale behind it. */
function speedSymbol(unit: string, scale: 'IAS' | 'CAS' | 'TAS'): string {
  return unit === 'kt' ? `K${scale}` : `${unitOf(unit).symbol} ${scale}`;
}
