/** Which unit a number is shown in: the one the airplane's own instrument has, found from its name and dimension. */
import { type Airplane, airplaneSchema } from '../../analysis/airplane/index.ts';
import { quantityOf, unitOf } from '../../analysis/units/index.ts';

export type InstrumentUnits = Airplane['instruments']['units'];

/** What an airplane's file gets when it says nothing. */
export const USUAL_UNITS: InstrumentUnits = airplaneSchema.shape.instruments.parse({}).units;

const PRESSURES: Record<string, keyof InstrumentUnits> = {
  'oil-pressure': 'oilPressure',
  'fuel-pressure': 'fuelPressure',
  'manifold-pressure': 'manifoldPressure',
  'coolant-pressure': 'coolantPressure',
  'hydraulic-pressure': 'hydraulicPressure',
  'altimeter-setting': 'altimeterSetting',
};

/**
 * The unit id to show a value in.
 * @param name quantity or column name, text
 * @param siUnit unit id it is stored in, text
 * @param units the airplane's instrument units, object
 * @returns a unit id of the same dimension
 * @throws UnknownUnit when the unit id is unknown
 */
export function unitShown(name: string, siUnit: string, units: InstrumentUnits): string {
  const { dimension } = unitOf(siUnit);
  switch (dimension) {
    case 'temperature':
      return units.temperature;
    case 'temperature-difference':
      return { degC: 'dC', degF: 'dF' }[units.temperature] ?? 'dK';
    case 'temperature-rate':
      return { degC: 'degC/min', degF: 'degF/min' }[units.temperature] ?? 'K/min';
    case 'pressure':
      return units[pressureOf(name)];
    case 'speed':
      return speedUnit(name, units);
    case 'length':
      return lengthUnit(name, units);
    case 'volume':
      return units.fuel;
    case 'volume-flow':
      return units.fuelFlow;
    case 'mass':
      return units.mass;
    case 'force':
      return units.force;
    case 'acceleration':
      return units.acceleration;
    case 'angle':
      return 'deg';
    case 'angle-rate':
      return 'deg/s';
    case 'charge':
      return 'Ah';
    case 'frequency':
      return /speed|idle|rpm/.test(name) ? 'rpm' : siUnit;
    case 'ratio':
      if (name.endsWith('exponent')) return '1';
      return /position|exit|door|share|fraction|never|percent/.test(name) ? '%' : '1';
    case 'time':
      return timeUnit(name);
    default:
      return quantityOf(name)?.tradeUnits.find((id) => unitOf(id).dimension === dimension) ?? siUnit;
  }
}

function pressureOf(name: string): keyof InstrumentUnits {
  return Object.entries(PRESSURES).find(([part]) => name.includes(part))?.[1] ?? 'altimeterSetting';
}

function speedUnit(name: string, units: InstrumentUnits): string {
  if (name.startsWith('vibration')) return 'm/s';
  if (name.includes('wind') && !name.includes('gradient')) return units.wind;
  const vertical = /vertical|rate-(observed|standard|tapeline)|best-rate$|climb-rate|rate-of|sink|descent|updraught/;
  return vertical.test(name) ? units.verticalSpeed : units.airspeed;
}

function lengthUnit(name: string, units: InstrumentUnits): string {
  if (/altitude|altimeter|height|ceiling|elevation|floor|bail-out|^bottom$|^top$/.test(name)) return units.altitude;
  return /arm|centre-of-gravity/.test(name) ? units.arm : units.distance;
}

/** Heating times are minutes on a card; periods, transits and marks are seconds. */
function timeUnit(name: string): string {
  return /time-to|time-constant|longest|endurance|duration/.test(name) ? 'min' : 's';
}
