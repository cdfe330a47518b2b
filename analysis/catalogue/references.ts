/** Every number of the airplane that a text of the catalogue may name, with what it is and how it is rounded. */
import type { Measure } from './measures.ts';

export interface Reference {
  readonly path: string;
  /** kind written in texts, as in `{{kias speeds.climb}}` */
  readonly kind: string;
  /** what is measured; 'setting' is a manifold pressure or an engine speed, as it was entered */
  readonly measure: Measure | 'setting';
  readonly meaning: string;
  /** a value not to be passed is rounded down when converted, a least value up */
  readonly side?: 'upper' | 'lower';
  /** printed behind the unit: the reference of an altitude */
  readonly behind?: string;
}

const r = (
  kind: string,
  path: string,
  meaning: string,
  more: { measure?: Reference['measure']; side?: 'upper' | 'lower'; behind?: string } = {},
): Reference => ({ path, kind, meaning, ...more, measure: more.measure ?? plainMeasure(kind) });

function plainMeasure(kind: string): Measure | 'setting' {
  switch (kind) {
    case 'amps':
    case 'flow':
    case 'force':
    case 'fuel':
    case 'g':
    case 'height':
    case 'kias':
    case 'kt':
    case 'ktas':
    case 'mac':
    case 'minutes':
    case 'rpm':
    case 'seconds':
    case 'setting':
    case 'temp':
    case 'tempdiff':
    case 'volts':
      return kind;
    default:
      throw new Error(`the reference kind ${kind} needs its measure named`);
  }
}

const UP = { side: 'upper' } as const;
const LOW = { side: 'lower' } as const;
const GROUND = { side: 'lower', behind: 'above ground' } as const;

export const REFERENCES: readonly Reference[] = [
  r('amps', 'cooling.fanCurrent', 'ground fan, highest steady current', UP),
  r('amps', 'gear.currentPeak', 'gear pump, highest current allowed', UP),
  r('amps', 'limits.battery.chargeCurrent', 'battery, highest charge current', UP),
  r('flow', 'engine.takeoffFuelFlow', 'fuel burn at takeoff power (measured once known)', LOW),
  r('force', 'plan.aileronCap', 'aileron force at which the imbalance card ends', UP),
  r('force', 'plan.stickForceCap', 'pitch force one hand can hold; the test ends there', UP),
  r('fuel', 'plan.turnBackFuel', 'fuel aboard at which the flight ends', LOW),
  r('g', 'derived.loadFactorCap', '0.8 of the positive limit load factor, unless the designer allows more', UP),
  r('g', 'derived.lowLoadFactorFloor', 'lowest load factor the engine maker allows, never under 0 g', LOW),
  r('g', 'limits.loadFactor.positive', 'designer’s positive limit load factor at the weight flown', UP),
  r('height', 'plan.aerobaticFloor', 'lowest height for aerobatics, at least the rule', GROUND),
  r('height', 'plan.bailOut', 'height to leave the airplane if not recovered', GROUND),
  r('height', 'plan.practiceCeiling', 'top of the climb cards (airspace, oxygen rule)', {
    side: 'upper',
    behind: 'pressure altitude',
  }),
  r('height', 'plan.speedFloor', 'lowest height for speed expansion', GROUND),
  r('height', 'plan.spinFloor', 'height to leave the airplane in a spin', GROUND),
  r('height', 'plan.stallFloor', 'height at which a stall series ends', GROUND),
  r('kias', 'derived.acceleratedStallEntry', '0.8 of the manoeuvring speed', UP),
  r('kias', 'derived.approach', '1.3 x landing stall; before the stalls, the first-flight reference', LOW),
  r('kias', 'derived.approachMinus5', 'approach speed less 5 kt, at height only', LOW),
  r('kias', 'derived.autopilotFloor', 'measured stall warning plus 5 kt', LOW),
  r('kias', 'derived.coolingClimbFast', 'climb speed plus 10 kt'),
  r('kias', 'derived.fiftyFoot', '1.2 x clean stall', LOW),
  r('kias', 'derived.firstFlightMaximum', '1.5 x predicted clean stall', UP),
  r('kias', 'derived.firstSlow', 'predicted landing stall plus 5 kt', LOW),
  r('kias', 'derived.gearFirstSpeed', '1.3 x clean stall, at least 5 kt above its warning', LOW),
  r('kias', 'derived.liftOff', 'lift-off speed, at least 1.1 x stall', LOW),
  r('kias', 'derived.speedCleared', 'highest speed accepted so far', UP),
  r('kias', 'derived.taxiCap', '0.8 x lowest predicted stall', UP),
  r(
    'kias',
    'plan.speedExpansionTarget',
    'speed at which speed expansion ends; never past the designer’s dive speed',
    UP,
  ),
  r('kias', 'speeds.bestAngle', 'best angle of climb; estimate until measured'),
  r('kias', 'speeds.bestGlide', 'best glide; estimate until measured'),
  r('kias', 'speeds.bestRate', 'best rate of climb; estimate until measured'),
  r('kias', 'speeds.climb', 'climb speed for the first flights, with cooling margin'),
  r('kias', 'speeds.flapsExtended', 'flap limit speed of the setting', UP),
  r('kias', 'speeds.gearEmergency', 'highest speed for emergency extension', UP),
  r('kias', 'speeds.gearExtended', 'highest speed with the gear down', UP),
  r('kias', 'speeds.gearOperation', 'highest speed with the gear moving', UP),
  r('kias', 'speeds.manoeuvring', 'manoeuvring speed at the weight flown', UP),
  r('kias', 'speeds.neverExceed', 'never-exceed speed, designer’s until set', UP),
  r('kias', 'speeds.normalOperating', 'highest structural cruise speed', UP),
  r('kt', 'plan.crosswindAim', 'crosswind component to be shown', UP),
  r('ktas', 'limits.flutterTrueAirspeed', 'true airspeed never to be passed, designer’s flutter evidence', UP),
  r('mac', 'plan.aftMargin', 'margin kept ahead of the neutral point', LOW),
  r('minutes', 'cooling.fanRunOn', 'fan run-on after shut-down'),
  r('minutes', 'gear.pumpRest', 'rest between pump runs', LOW),
  r('pressure', 'cooling.capPressure', 'opening pressure of the coolant cap', { ...UP, measure: 'coolant-pressure' }),
  r('pressure', 'cooling.testPressure', 'cold test pressure of the coolant loop', {
    ...UP,
    measure: 'coolant-pressure',
  }),
  r('pressure', 'fuel.tankTestPressure', 'tank test pressure', { ...UP, measure: 'tank-pressure' }),
  r('pressure', 'hydraulics.relief', 'relief valve pressure', { ...UP, measure: 'hydraulic-pressure' }),
  r('pressure', 'limits.fuel.pressureLow', 'lowest fuel pressure at the engine', { ...LOW, measure: 'fuel-pressure' }),
  r('pressure', 'limits.oil.pressureLow', 'lowest oil pressure for the power in use', {
    ...LOW,
    measure: 'oil-pressure',
  }),
  r('rpm', 'engine.checkSpeed', 'speed of the run-up check'),
  r('rpm', 'limits.engineSpeed.maximum', 'highest engine speed', UP),
  r('rpm', 'limits.engineSpeed.takeoff', 'highest engine speed at takeoff', UP),
  r('seconds', 'gear.timeLimit', 'travel time after which something is wrong', UP),
  r('seconds', 'hydraulics.pumpRunMaximum', 'longest pump run', UP),
  r('setting', 'plan.descentPower', 'manifold pressure or engine speed for a descent with power'),
  r('temp', 'cooling.thermostatOpen', 'thermostat fully open'),
  r('temp', 'cooling.thermostatStart', 'thermostat starts to open'),
  r('temp', 'derived.hotDay', 'air temperature of the hot day agreed for corrections, at sea level'),
  r('temp', 'limits.coolant.caution', 'coolant caution, out of the engine: every cooling card stops here', UP),
  r('temp', 'limits.coolant.hotRestart', 'highest coolant temperature for a restart', UP),
  r('temp', 'limits.cylinderHead.caution', 'cylinder head caution', UP),
  r('temp', 'limits.oil.caution', 'oil caution', UP),
  r('temp', 'limits.oil.takeoffMinimum', 'lowest oil temperature for takeoff power', LOW),
  r(
    'temp',
    'plan.lineUpTemperature',
    'highest coolant (or cylinder head) at line-up, from the taxi and cooling results',
    UP,
  ),
  r('tempdiff', 'plan.coolingMargin', 'corrected margin to the limit that a harder cooling case needs first', LOW),
  r('volts', 'derived.engineControlFloor', 'lowest engine-control feed plus 1 V', LOW),
  r('volts', 'limits.battery.minimum', 'lowest battery voltage its maker allows', LOW),
  r('volts', 'limits.bus.high', 'highest bus voltage', UP),
  r('volts', 'limits.bus.low', 'low-voltage warning', LOW),
  r('volts', 'limits.engineControl.minimum', 'lowest feed the engine control runs on', LOW),
];
