/**
 * The glossary: every quantity the project measures, with its one name.
 *
 * Channels of a log, readings of a card, tables, JSON and Help all print from this list. `plausible` is the range,
 * in SI, outside which a reading of a light airplane is a fault of the sensor or of the unit, not of the airplane
 * (common practice, no source); `frozenOk` marks quantities that may honestly stand still for a whole flight.
 */
import type { Dimension } from './units.ts';

export interface Quantity {
  readonly name: string;
  readonly symbol: string;
  readonly dimension: Dimension;
  /** true where an airplane may have several, told apart as name#1, name#2 */
  readonly indexed?: boolean;
  /** units that instruments show, the usual one first */
  readonly tradeUnits: readonly string[];
  readonly plausible: readonly [number, number];
  readonly frozenOk?: boolean;
  readonly meaning: string;
}

const TEMPERATURE = ['degC', 'degF', 'K'];
const PRESSURE_ENGINE = ['bar', 'psi', 'kPa', 'hPa'];
const SPEED = ['kt', 'mph', 'km/h', 'm/s'];
const HEIGHT = ['ft', 'm'];
const ANGLE = ['deg', 'rad'];
const FULL_TURNS = [-2 * Math.PI, 2 * Math.PI] as const;
const HALF_TURNS = [-Math.PI, Math.PI] as const;
const QUARTER_TURNS = [-Math.PI / 2, Math.PI / 2] as const;

const list = [
  q('coolant-temperature', 'T_c', 'temperature', TEMPERATURE, [233, 423], 'Coolant where it leaves the engine.'),
  q(
    'coolant-temperature-in',
    'T_c,in',
    'temperature',
    TEMPERATURE,
    [233, 423],
    'Coolant where it returns to the engine.',
  ),
  q('oil-temperature', 'T_oil', 'temperature', TEMPERATURE, [233, 443], 'Oil at the sensor the engine maker names.'),
  q('oil-pressure', 'p_oil', 'pressure', PRESSURE_ENGINE, [0, 1.2e6], 'Oil pressure, above ambient.'),
  q('cylinder-head-temperature', 'CHT', 'temperature', TEMPERATURE, [233, 573], 'Cylinder head, at the sensor.', {
    indexed: true,
  }),
  q('exhaust-gas-temperature', 'EGT', 'temperature', TEMPERATURE, [233, 1273], 'Exhaust gas, at the sensor.', {
    indexed: true,
  }),
  q(
    'outside-air-temperature',
    'OAT',
    'temperature',
    TEMPERATURE,
    [218, 330],
    'Air as the probe reads it; recovery is corrected by the reductions.',
  ),
  q(
    'inlet-air-temperature',
    'T_inlet',
    'temperature',
    TEMPERATURE,
    [218, 363],
    'Air where it enters the radiator or the engine.',
  ),
  q('fuel-temperature', 'T_f', 'temperature', TEMPERATURE, [233, 343], 'Fuel at the sensor.'),
  q('coolant-pressure', 'p_c', 'pressure', PRESSURE_ENGINE, [0, 5e5], 'Coolant pressure, above ambient.'),
  q('engine-speed', 'n', 'frequency', ['rpm'], [0, 133], 'Crankshaft revolutions.', { frozenOk: true }),
  q('propeller-speed', 'n_p', 'frequency', ['rpm'], [0, 60], 'Propeller revolutions.', { frozenOk: true }),
  q(
    'manifold-pressure',
    'MP',
    'pressure',
    ['inHg', 'hPa', 'bar', 'kPa'],
    [1e4, 2.5e5],
    'Absolute pressure in the inlet manifold.',
  ),
  q('fuel-flow', 'FF', 'volume-flow', ['L/h', 'gal/h'], [0, 3e-4], 'Fuel to the engine.', { frozenOk: true }),
  q('fuel-pressure', 'p_f', 'pressure', PRESSURE_ENGINE, [0, 6e5], 'Fuel pressure at the engine, above ambient.'),
  q('fuel-quantity', 'V_f', 'volume', ['L', 'gal'], [0, 0.6], 'Fuel in a tank.', { indexed: true, frozenOk: true }),
  q('fuel-used', 'V_used', 'volume', ['L', 'gal'], [0, 1], 'Fuel burnt since the totaliser was set.', {
    frozenOk: true,
  }),
  q('bus-voltage', 'U', 'voltage', ['V'], [0, 36], 'Voltage of a bus.', { indexed: true, frozenOk: true }),
  q('bus-current', 'I', 'current', ['A'], [-300, 300], 'Current of a bus.', { indexed: true, frozenOk: true }),
  q('battery-current', 'I_b', 'current', ['A'], [-400, 400], 'Battery current, charging positive.', {
    indexed: true,
    frozenOk: true,
  }),
  q('cowl-exit-position', 'x_exit', 'ratio', ['%', '1'], [-0.05, 1.05], 'Radiator or cowl exit, 0 closed to 1 open.', {
    frozenOk: true,
  }),
  q('cooling-fan-state', 'fan', 'none', ['none'], [0, 1], 'Cooling fan, 0 off, 1 on.', { frozenOk: true }),
  q('gear-position', 'gear', 'none', ['none'], [-1, 16], 'A gear position switch, 0 open, 1 made.', {
    indexed: true,
    frozenOk: true,
  }),
  q('gear-current', 'I_gear', 'current', ['A'], [-5, 300], 'Current of the gear pump or motor.', { frozenOk: true }),
  q('hydraulic-pressure', 'p_h', 'pressure', ['bar', 'psi'], [0, 3.5e7], 'Hydraulic system pressure, above ambient.', {
    frozenOk: true,
  }),
  q('flap-position', 'delta_f', 'angle', ANGLE, [-0.3, 1.2], 'Flap deflection, down positive.', { frozenOk: true }),
  q('elevator-position', 'delta_e', 'angle', ANGLE, [-0.8, 0.8], 'Elevator deflection, trailing edge down positive.'),
  q('pitch-trim-position', 'trim', 'ratio', ['%', '1'], [-1.05, 1.05], 'Pitch trim as the indicator shows it.', {
    frozenOk: true,
  }),
  q('indicated-airspeed', 'IAS', 'speed', SPEED, [0, 180], 'Airspeed as the instrument shows it.', { frozenOk: true }),
  q(
    'calibrated-airspeed',
    'CAS',
    'speed',
    SPEED,
    [0, 180],
    'Indicated airspeed corrected for instrument and position error.',
  ),
  q('true-airspeed', 'TAS', 'speed', SPEED, [0, 220], 'Speed through the air.'),
  q(
    'pressure-altitude',
    'Hp',
    'length',
    HEIGHT,
    [-700, 12000],
    'Altitude in the standard atmosphere at the static pressure sensed.',
    { frozenOk: true },
  ),
  q(
    'indicated-altitude',
    'H_i',
    'length',
    HEIGHT,
    [-700, 12000],
    'Altitude as the altimeter shows it with its setting.',
    { frozenOk: true },
  ),
  q('altimeter-setting', 'QNH', 'pressure', ['hPa', 'inHg'], [8.5e4, 1.1e5], 'Altimeter setting.', { frozenOk: true }),
  q('vertical-speed', 'VSI', 'speed', ['ft/min', 'm/s'], [-50, 50], 'Vertical speed as the instrument shows it.', {
    frozenOk: true,
  }),
  q('latitude', 'lat', 'angle', ANGLE, QUARTER_TURNS, 'Latitude, north positive.', { frozenOk: true }),
  q('longitude', 'lon', 'angle', ANGLE, HALF_TURNS, 'Longitude, east positive.', { frozenOk: true }),
  q(
    'gps-altitude',
    'h_GPS',
    'length',
    ['m', 'ft'],
    [-700, 12000],
    'Height from satellites; above sea level or ellipsoid as the receiver gives it.',
  ),
  q('ground-speed', 'Vg', 'speed', SPEED, [0, 250], 'Speed over the ground from satellites.', { frozenOk: true }),
  q('track-true', 'track', 'angle', ANGLE, FULL_TURNS, 'Direction of movement over the ground, from true north.', {
    frozenOk: true,
  }),
  q('heading-magnetic', 'hdg', 'angle', ANGLE, FULL_TURNS, 'Direction of the nose, from magnetic north.', {
    frozenOk: true,
  }),
  q('wind-speed', 'W', 'speed', SPEED, [0, 80], 'Wind speed.'),
  q('wind-direction', 'W_dir', 'angle', ANGLE, FULL_TURNS, 'Direction the wind comes from, from true north.'),
  q('pitch-angle', 'theta', 'angle', ANGLE, QUARTER_TURNS, 'Pitch attitude, nose up positive.'),
  q('roll-angle', 'phi', 'angle', ANGLE, HALF_TURNS, 'Bank, right wing down positive.'),
  q('yaw-rate', 'r', 'angle-rate', ['deg/s', 'rad/s'], [-4, 4], 'Rate of yaw, nose right positive.'),
  q('pitch-rate', 'q', 'angle-rate', ['deg/s', 'rad/s'], [-4, 4], 'Rate of pitch, nose up positive.'),
  q('roll-rate', 'p', 'angle-rate', ['deg/s', 'rad/s'], [-7, 7], 'Rate of roll, right positive.'),
  q(
    'normal-acceleration',
    'nz',
    'acceleration',
    ['g0', 'm/s2'],
    [-60, 90],
    'Load factor along the airplane’s vertical, 1 g in level flight.',
  ),
  q('lateral-acceleration', 'ny', 'acceleration', ['g0', 'm/s2'], [-30, 30], 'Sideways acceleration, right positive.'),
  q('longitudinal-acceleration', 'nx', 'acceleration', ['g0', 'm/s2'], [-30, 30], 'Forward acceleration.'),
  q('angle-of-attack', 'alpha', 'angle', ANGLE, [-1, 1], 'Angle of attack as the vane or system gives it.'),
  q('stick-force', 'F_s', 'force', ['N', 'lbf', 'daN'], [-500, 500], 'Force at the grip, pull positive.'),
  q('pedal-position', 'delta_p', 'ratio', ['%', '1'], [-1.05, 1.05], 'Rudder pedal travel, right forward positive.'),
  q('event-mark', 'event', 'none', ['none'], [-1e9, 1e9], 'Pilot’s event mark.', { frozenOk: true }),
  q('fix-quality', 'fix', 'none', ['none'], [0, 99], 'Satellite fix quality or count of satellites.', {
    frozenOk: true,
  }),
  q('weight-on-wheels', 'WoW', 'none', ['none'], [0, 1], 'Squat switch, 1 on the ground.', { frozenOk: true }),
  q('transfer-valve-state', 'valve', 'none', ['none'], [0, 1], 'Fuel transfer valve or pump, 1 on.', {
    frozenOk: true,
  }),
  q('engine-control-lane', 'lane', 'none', ['none'], [0, 8], 'Engine control lane in command.', { frozenOk: true }),
  q('engine-control-fault', 'fault', 'none', ['none'], [0, 65535], 'Engine control fault word.', { frozenOk: true }),
  q(
    'engine-control-temperature',
    'T_ecu',
    'temperature',
    TEMPERATURE,
    [233, 398],
    'Temperature of the engine control unit.',
  ),
  q(
    'carbon-monoxide',
    'CO',
    'ratio',
    ['ppm'],
    [0, 0.01],
    'Carbon monoxide, parts of air (1e-6 is one part per million).',
    { frozenOk: true },
  ),
  q('vibration', 'v_vib', 'speed', ['m/s'], [0, 0.2], 'Vibration velocity, peak.', { indexed: true }),
  q('autopilot-mode', 'AP', 'none', ['none'], [0, 65535], 'Autopilot mode word.', { frozenOk: true }),
  q('localizer-deviation', 'loc', 'ratio', ['1'], [-3, 3], 'Localizer deviation, full scale 1.', { frozenOk: true }),
  q('glideslope-deviation', 'gs', 'ratio', ['1'], [-3, 3], 'Glideslope deviation, full scale 1.', { frozenOk: true }),
  q('reported-altitude', 'H_rep', 'length', HEIGHT, [-700, 12000], 'Pressure altitude the transponder reports.', {
    frozenOk: true,
  }),
] as const satisfies readonly Quantity[];

export const QUANTITIES: readonly Quantity[] = list;

function q<const N extends string>(
  name: N,
  symbol: string,
  dimension: Dimension,
  tradeUnits: readonly string[],
  plausible: readonly [number, number],
  meaning: string,
  more: { indexed?: boolean; frozenOk?: boolean } = {},
): Quantity & { readonly name: N } {
  return { name, symbol, dimension, tradeUnits, plausible, meaning, ...more };
}

const BY_NAME = new Map<string, Quantity>(QUANTITIES.map((quantity) => [quantity.name, quantity]));

/**
 * The glossary entry behind a channel name; an index is ignored (`cylinder-head-temperature#3`).
 * @param name quantity name, text
 * @returns the entry, or undefined when the glossary has no such quantity
 */
export function quantityOf(name: string): Quantity | undefined {
  return BY_NAME.get(baseName(name));
}

/** A quantity name without its index. */
export function baseName(name: string): string {
  const cut = name.indexOf('#');
  return cut < 0 ? name : name.slice(0, cut);
}
