/** Pairs of figures that stand in an order: a caution before its limit, a floor below its ceiling, one speed below another. */
import type { Airplane } from './configuration.ts';
import type { CrossCheck } from './cross-check.ts';

type Figure = { si: number } | undefined;

/** Two figures in order; `why` completes the sentence. */
const inOrder = (
  low: string,
  high: string,
  read: (airplane: Airplane) => [Figure, Figure],
  why: string,
): CrossCheck => ({
  paths: [low, high],
  says: (airplane) => {
    const [one, other] = read(airplane);
    return one && other && one.si > other.si ? `${low} is above ${high}: ${why}.` : null;
  },
});

const speeds = (low: keyof Airplane['speeds'], high: keyof Airplane['speeds'], why: string): CrossCheck =>
  inOrder(`speeds.${low}`, `speeds.${high}`, (a) => [a.speeds[low], a.speeds[high]], why);

export const orderChecks: readonly CrossCheck[] = [
  speeds('stallLanding', 'stallClean', 'flaps should not raise the stall speed'),
  speeds('bestAngle', 'bestRate', 'the best angle is flown slower than the best rate'),
  speeds('gearOperation', 'gearExtended', 'the gear may move only where it may be down'),
  speeds('gearEmergency', 'gearExtended', 'emergency extension ends with the gear down'),
  speeds('manoeuvring', 'normalOperating', 'the manoeuvring speed need not be above the structural cruise speed'),
  speeds('normalOperating', 'neverExceed', 'the structural cruise speed lies below the red line'),
  speeds('flapsExtended', 'neverExceed', 'a flap limit lies below the red line'),
  inOrder(
    'plan.speedExpansionTarget',
    'speeds.neverExceed',
    (a) => [a.plan.speedExpansionTarget, a.speeds.neverExceed],
    'the expansion may not end past the designer’s red line without a new one from the designer',
  ),
  inOrder(
    'limits.coolant.caution',
    'limits.coolant.limit',
    (a) => [a.limits.coolant.caution, a.limits.coolant.limit],
    'a caution comes before its limit',
  ),
  inOrder(
    'limits.oil.caution',
    'limits.oil.limit',
    (a) => [a.limits.oil.caution, a.limits.oil.limit],
    'a caution comes before its limit',
  ),
  inOrder(
    'limits.cylinderHead.caution',
    'limits.cylinderHead.limit',
    (a) => [a.limits.cylinderHead.caution, a.limits.cylinderHead.limit],
    'a caution comes before its limit',
  ),
  inOrder(
    'limits.coolant.hotRestart',
    'limits.coolant.limit',
    (a) => [a.limits.coolant.hotRestart, a.limits.coolant.limit],
    'a hot restart is tried below the limit',
  ),
  inOrder(
    'cooling.thermostatStart',
    'cooling.thermostatOpen',
    (a) => [a.cooling.thermostatStart, a.cooling.thermostatOpen],
    'a thermostat starts before it is fully open',
  ),
  inOrder(
    'cooling.thermostatOpen',
    'limits.coolant.caution',
    (a) => [a.cooling.thermostatOpen, a.limits.coolant.caution],
    'the thermostat must be fully open before the caution',
  ),
  inOrder(
    'limits.oil.takeoffMinimum',
    'limits.oil.caution',
    (a) => [a.limits.oil.takeoffMinimum, a.limits.oil.caution],
    'oil cannot be warm enough and too hot at once',
  ),
  inOrder(
    'limits.oil.pressureLow',
    'limits.oil.pressureHigh',
    (a) => [a.limits.oil.pressureLow, a.limits.oil.pressureHigh],
    'the lowest pressure lies below the highest',
  ),
  inOrder(
    'limits.bus.low',
    'limits.bus.high',
    (a) => [a.limits.bus.low, a.limits.bus.high],
    'the low-voltage warning lies below the highest voltage',
  ),
  inOrder(
    'limits.battery.minimum',
    'limits.bus.low',
    (a) => [a.limits.battery.minimum, a.limits.bus.low],
    'the warning must come before the battery is spent',
  ),
  inOrder(
    'limits.engineControl.minimum',
    'limits.bus.low',
    (a) => [a.limits.engineControl.minimum, a.limits.bus.low],
    'the warning must come before the engine control stops',
  ),
  inOrder(
    'engine.idleSpeed',
    'engine.checkSpeed',
    (a) => [a.engine.idleSpeed, a.engine.checkSpeed],
    'the run-up is above idle',
  ),
  inOrder(
    'engine.checkSpeed',
    'limits.engineSpeed.takeoff',
    (a) => [a.engine.checkSpeed, a.limits.engineSpeed.takeoff],
    'the run-up is below take-off speed',
  ),
  inOrder(
    'limits.engineSpeed.takeoff',
    'limits.engineSpeed.maximum',
    (a) => [a.limits.engineSpeed.takeoff, a.limits.engineSpeed.maximum],
    'take-off speed is not above the highest',
  ),
  inOrder(
    'cooling.capPressure',
    'cooling.testPressure',
    (a) => [a.cooling.capPressure, a.cooling.testPressure],
    'the loop is tested above the pressure its cap holds',
  ),
  inOrder(
    'plan.bailOut',
    'plan.stallFloor',
    (a) => [a.plan.bailOut, a.plan.stallFloor],
    'a stall series ends above the height to leave the airplane',
  ),
  inOrder(
    'plan.stallFloor',
    'plan.practiceCeiling',
    (a) => [a.plan.stallFloor, a.plan.practiceCeiling],
    'there must be room between floor and ceiling',
  ),
  inOrder(
    'limits.mass.landing',
    'limits.mass.maximum',
    (a) => [a.limits.mass.landing, a.limits.mass.maximum],
    'landing mass is not above take-off mass',
  ),
];
