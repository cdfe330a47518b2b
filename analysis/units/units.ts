/**
 * Every unit the project knows, with the only conversion factors in the house.
 *
 * A unit belongs to one dimension; `si = value * factor + offset`. Spellings are what recorder files and people
 * write; matching ignores case except where case tells units apart (exactSpellings).
 */

export type Dimension =
  | 'temperature'
  | 'temperature-difference'
  | 'temperature-rate'
  | 'pressure'
  | 'speed'
  | 'length'
  | 'area'
  | 'volume'
  | 'volume-flow'
  | 'mass'
  | 'mass-flow'
  | 'density'
  | 'time'
  | 'frequency'
  | 'angle'
  | 'angle-rate'
  | 'acceleration'
  | 'current'
  | 'voltage'
  | 'charge'
  | 'power'
  | 'energy'
  | 'force'
  | 'moment'
  | 'torque'
  | 'ratio'
  | 'count'
  | 'none';

export interface Unit {
  readonly id: string;
  readonly dimension: Dimension;
  /** si = value * factor + offset */
  readonly factor: number;
  readonly offset: number;
  /** how it is printed after a number */
  readonly symbol: string;
  /** how it is written in files, lower case */
  readonly spellings: readonly string[];
  /** true for the SI unit of its dimension, the one JSON carries */
  readonly si?: boolean;
}

// Exact by definition unless said: international foot, inch, nautical mile and pound (1959 agreement), standard
// gravity (3rd CGPM), inch of mercury at 0 degC (conventional), US liquid gallon (231 cubic inches).
const FOOT = 0.3048;
const INCH = 0.0254;
const NAUTICAL_MILE = 1852;
const STATUTE_MILE = 1609.344;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const LITRE = 1e-3;
const US_GALLON = 231 * INCH ** 3;
const US_QUART = US_GALLON / 4;
const IMP_GALLON = 4.54609e-3;
const HOUR = 3600;
const MINUTE = 60;
const INCH_OF_MERCURY = 3386.389;
const INCH_OF_WATER = 249.08891;
const ICE_POINT = 273.15;
const RANKINE = 5 / 9;
const TURN = 2 * Math.PI;
const POUND_FORCE = POUND * GRAVITY;

const u = (
  id: string,
  dimension: Dimension,
  factor: number,
  symbol: string,
  spellings: string[] = [],
  more: { offset?: number; si?: boolean } = {},
): Unit => ({
  id,
  dimension,
  factor,
  offset: more.offset ?? 0,
  symbol,
  spellings: [...new Set([id.toLowerCase(), symbol.toLowerCase(), ...spellings])],
  ...(more.si ? { si: true } : {}),
});

export const UNITS = [
  u('K', 'temperature', 1, 'K', ['kelvin', 'degk'], { si: true }),
  u('degC', 'temperature', 1, '°C', ['c', 'deg c', 'degc', 'celsius', 'º c', 'ºc', '° c', 'degrees c', 'deg_c'], {
    offset: ICE_POINT,
  }),
  u('degF', 'temperature', RANKINE, '°F', ['f', 'deg f', 'degf', 'fahrenheit', 'ºf', '° f', 'degrees f', 'deg_f'], {
    offset: ICE_POINT - 32 * RANKINE,
  }),

  u('dK', 'temperature-difference', 1, 'K', [], { si: true }),
  u('dC', 'temperature-difference', 1, '°C', []),
  u('dF', 'temperature-difference', RANKINE, '°F', []),

  u('K/s', 'temperature-rate', 1, 'K/s', [], { si: true }),
  u('K/min', 'temperature-rate', 1 / MINUTE, 'K/min'),
  u('degC/min', 'temperature-rate', 1 / MINUTE, '°C/min', ['c/min']),
  u('degF/min', 'temperature-rate', RANKINE / MINUTE, '°F/min', ['f/min']),

  u('Pa', 'pressure', 1, 'Pa', ['pascal', 'pascals'], { si: true }),
  u('hPa', 'pressure', 100, 'hPa', ['mb', 'mbar', 'millibar', 'millibars', 'hpa']),
  u('kPa', 'pressure', 1000, 'kPa'),
  u('bar', 'pressure', 1e5, 'bar', ['bars']),
  u('psi', 'pressure', POUND_FORCE / INCH ** 2, 'psi', ['lb/in2', 'lbs/in2', 'psig', 'lbf/in2']),
  u('inHg', 'pressure', INCH_OF_MERCURY, 'inHg', ['in hg', 'in.hg', 'in. hg', '"hg', 'inches hg', 'in-hg']),
  u('inH2O', 'pressure', INCH_OF_WATER, 'inH₂O', ['inh2o', 'in h2o', 'inwc']),
  u('mmHg', 'pressure', INCH_OF_MERCURY / 25.4, 'mmHg', ['mm hg', 'torr']),

  u('m/s', 'speed', 1, 'm/s', ['mps', 'm s-1', 'metres per second', 'meters per second'], { si: true }),
  u('kt', 'speed', NAUTICAL_MILE / HOUR, 'kt', ['kts', 'knot', 'knots', 'kn', 'kias', 'kcas', 'ktas', 'nm/h']),
  u('mph', 'speed', STATUTE_MILE / HOUR, 'mph', ['mi/h', 'miles/h']),
  u('km/h', 'speed', 1000 / HOUR, 'km/h', ['kph', 'kmh', 'km/hr']),
  u('ft/min', 'speed', FOOT / MINUTE, 'ft/min', ['fpm', 'feet/min', 'ft per min', 'feet per minute']),
  u('ft/s', 'speed', FOOT, 'ft/s', ['fps', 'ft/sec']),
  u('in/s', 'speed', INCH, 'in/s', ['ips', 'in/sec']),
  u('mm/s', 'speed', 1e-3, 'mm/s', ['mm/sec']),

  u('m', 'length', 1, 'm', ['metre', 'metres', 'meter', 'meters', 'mtr'], { si: true }),
  u('mm', 'length', 1e-3, 'mm', ['millimetre', 'millimeter']),
  u('cm', 'length', 1e-2, 'cm'),
  u('km', 'length', 1000, 'km'),
  u('ft', 'length', FOOT, 'ft', ['feet', 'foot']),
  u('in', 'length', INCH, 'in', ['inch', 'inches', '"']),
  u('nmi', 'length', NAUTICAL_MILE, 'NM', ['nm', 'nautical miles']),
  u('mi', 'length', STATUTE_MILE, 'mi', ['statute miles', 'sm']),

  u('m2', 'area', 1, 'm²', ['m^2', 'sq m'], { si: true }),
  u('ft2', 'area', FOOT ** 2, 'ft²', ['ft^2', 'sq ft']),

  u('m3', 'volume', 1, 'm³', ['m^3'], { si: true }),
  u('L', 'volume', LITRE, 'L', ['l', 'liter', 'litre', 'liters', 'litres', 'ltr']),
  u('gal', 'volume', US_GALLON, 'gal', ['gals', 'gallon', 'gallons', 'us gal', 'usg', 'gal us']),
  u('qt', 'volume', US_QUART, 'qt', ['qts', 'quart', 'quarts', 'us qt']),
  u('impgal', 'volume', IMP_GALLON, 'imp gal', ['imp gallon', 'imp gallons', 'igal']),

  u('m3/s', 'volume-flow', 1, 'm³/s', ['m^3/s'], { si: true }),
  u('L/h', 'volume-flow', LITRE / HOUR, 'L/h', ['lph', 'l/hr', 'liters/hour', 'litres/hour', 'ltr/h', 'l/hour']),
  u('L/min', 'volume-flow', LITRE / MINUTE, 'L/min', ['lpm']),
  u('gal/h', 'volume-flow', US_GALLON / HOUR, 'gal/h', [
    'gph',
    'gal/hr',
    'gallons/hour',
    'us gal/h',
    'usg/h',
    'gals/hr',
  ]),
  u('impgal/h', 'volume-flow', IMP_GALLON / HOUR, 'imp gal/h', ['imp gph']),

  u('kg', 'mass', 1, 'kg', ['kilogram', 'kilograms', 'kgs'], { si: true }),
  u('g', 'mass', 1e-3, 'g', ['gram', 'grams']),
  u('lb', 'mass', POUND, 'lb', ['lbs', 'pound', 'pounds', 'lbm']),

  u('kg/s', 'mass-flow', 1, 'kg/s', [], { si: true }),
  u('kg/h', 'mass-flow', 1 / HOUR, 'kg/h'),
  u('lb/h', 'mass-flow', POUND / HOUR, 'lb/h', ['pph', 'lbs/hr', 'lb/hr']),

  u('kg/m3', 'density', 1, 'kg/m³', ['kg/m^3'], { si: true }),
  u('kg/L', 'density', 1 / LITRE, 'kg/L'),
  u('lb/gal', 'density', POUND / US_GALLON, 'lb/gal'),

  u('s', 'time', 1, 's', ['sec', 'secs', 'second', 'seconds'], { si: true }),
  u('ms', 'time', 1e-3, 'ms', ['msec', 'millisecond', 'milliseconds']),
  u('us', 'time', 1e-6, 'µs', ['usec', 'microseconds']),
  u('min', 'time', MINUTE, 'min', ['mins', 'minute', 'minutes']),
  u('h', 'time', HOUR, 'h', ['hr', 'hrs', 'hour', 'hours']),

  u('1/s', 'frequency', 1, '1/s', ['hz', 'rev/s', 'rps'], { si: true }),
  u('rpm', 'frequency', 1 / MINUTE, 'rpm', ['rev/min', '1/min', 'r/min', 'u/min']),

  u('rad', 'angle', 1, 'rad', ['radian', 'radians'], { si: true }),
  u('deg', 'angle', TURN / 360, '°', ['degree', 'degrees', 'º', 'deg true', 'deg mag', 'degt', 'degm']),

  u('rad/s', 'angle-rate', 1, 'rad/s', ['radians/s'], { si: true }),
  u('deg/s', 'angle-rate', TURN / 360, '°/s', ['dps', 'degrees/s', 'deg/sec', '°/sec']),

  u('m/s2', 'acceleration', 1, 'm/s²', ['m/s^2', 'm/s/s'], { si: true }),
  u('g0', 'acceleration', GRAVITY, 'g', ['gee', 'gees', 'gs']),
  u('kt/s', 'acceleration', NAUTICAL_MILE / HOUR, 'kt/s', ['kts/s', 'knots/s']),

  u('A', 'current', 1, 'A', ['amp', 'amps', 'ampere', 'amperes'], { si: true }),
  u('mA', 'current', 1e-3, 'mA', ['milliamps']),
  u('V', 'voltage', 1, 'V', ['volt', 'volts', 'vdc'], { si: true }),
  u('mV', 'voltage', 1e-3, 'mV', ['millivolts']),
  u('C', 'charge', 1, 'A s', ['coulomb', 'as', 'amp seconds'], { si: true }),
  u('Ah', 'charge', HOUR, 'A h', ['amp hours', 'a h']),

  u('W', 'power', 1, 'W', ['watt', 'watts'], { si: true }),
  u('kW', 'power', 1000, 'kW', ['kilowatt']),
  u('hp', 'power', 550 * FOOT * POUND_FORCE, 'hp', ['bhp', 'horsepower']),
  u('J', 'energy', 1, 'J', [], { si: true }),
  u('Wh', 'energy', HOUR, 'W h'),

  u('N', 'force', 1, 'N', ['newton', 'newtons'], { si: true }),
  u('daN', 'force', 10, 'daN'),
  u('lbf', 'force', POUND_FORCE, 'lbf', ['pounds force']),
  u('kgf', 'force', GRAVITY, 'kgf', ['kg force']),
  u('kg.m', 'moment', 1, 'kg·m', ['kg m', 'kgm'], { si: true }),
  u('lb.in', 'moment', POUND * INCH, 'lb·in', ['lb in', 'in-lb', 'inlb']),
  u('N.m', 'torque', 1, 'N·m', ['nm torque', 'n m'], { si: true }),
  u('lbf.ft', 'torque', POUND_FORCE * FOOT, 'lbf·ft', ['ft-lb', 'lb-ft']),

  u('1', 'ratio', 1, '', ['fraction', 'ratio'], { si: true }),
  u('%', 'ratio', 0.01, '%', ['pct', 'percent', 'per cent']),
  u('ppm', 'ratio', 1e-6, 'ppm', ['parts per million']),
  u('count', 'count', 1, '', ['number', 'counts', '#'], { si: true }),
  u('none', 'none', 1, '', ['text', 'flag', 'bool', 'on/off'], { si: true }),
] as const satisfies readonly Unit[];
