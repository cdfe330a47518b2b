/** Which fields of the description are shown for an airplane: those of things it has. */

/**
 * Fields that only some airplanes have, each with what must hold for it to be shown. Asked of the description as it
 * stands in the form, so that ticking a box brings its fields.
 */
const APPLIES: readonly { under: string; when: { path: string; is: unknown } }[] = [
  { under: 'engine.lanes', when: { path: 'engine.electronicControl', is: true } },
  { under: 'limits.engineControl', when: { path: 'engine.electronicControl', is: true } },
  { under: 'cooling.coolant', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'cooling.capPressure', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'cooling.testPressure', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'cooling.thermostatStart', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'cooling.thermostatOpen', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'cooling.sensorLag', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'limits.coolant', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'plan.stopMargin.coolant', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'instruments.units.coolantPressure', when: { path: 'cooling.kind', is: 'liquid' } },
  { under: 'cooling.cowlFlap', when: { path: 'cooling.kind', is: 'air' } },
  { under: 'limits.cylinderHead', when: { path: 'cooling.kind', is: 'air' } },
  { under: 'plan.stopMargin.cylinderHead', when: { path: 'cooling.kind', is: 'air' } },
  { under: 'cooling.alternateDoorControl', when: { path: 'cooling.exitDoor', is: true } },
  { under: 'cooling.fanCurrent', when: { path: 'cooling.groundFan', is: true } },
  { under: 'cooling.fanRunOn', when: { path: 'cooling.groundFan', is: true } },
  ...[
    'emergencyExtension',
    'positionSwitches',
    'legs',
    'transitUp',
    'transitDown',
    'timeLimit',
    'currentTypical',
    'currentPeak',
    'pumpRest',
  ].map((key) => ({ under: `gear.${key}`, when: { path: 'gear.retractable', is: true } })),
  ...['gearOperation', 'gearExtended', 'gearEmergency'].map((key) => ({
    under: `speeds.${key}`,
    when: { path: 'gear.retractable', is: true },
  })),
  { under: 'propeller.electric', when: { path: 'propeller.kind', is: 'constant-speed' } },
  { under: 'plan.aerobaticFloor', when: { path: 'plan.aerobatics', is: true } },
  { under: 'plan.spinFloor', when: { path: 'plan.spins', is: true } },
  { under: 'electrical.groundSupplyCurrent', when: { path: 'electrical.groundSupplyPlug', is: true } },
];

/** Fields hidden where something is not fitted at all. */
const NEEDS_FITTED: readonly { under: string; fitted: string }[] = [
  { under: 'speeds.flapsExtended', fitted: 'flaps' },
  { under: 'instruments.units.hydraulicPressure', fitted: 'hydraulics' },
];

/**
 * Does a field apply to this airplane?
 * @param path field path, text
 * @param valueAt looks up another field of the same description
 */
export function appliesTo(path: string, valueAt: (path: string) => unknown): boolean {
  const under = (prefix: string) => path === prefix || path.startsWith(`${prefix}.`);
  return (
    APPLIES.every((rule) => !under(rule.under) || valueAt(rule.when.path) === rule.when.is) &&
    NEEDS_FITTED.every((rule) => !under(rule.under) || ![undefined, false].includes(valueAt(rule.fitted) as undefined))
  );
}

/** Paths the rules speak of; a test holds them against the schema. */
export const RULED_PATHS: readonly string[] = [
  ...APPLIES.flatMap((rule) => [rule.under, rule.when.path]),
  ...NEEDS_FITTED.flatMap((rule) => [rule.under, rule.fitted]),
];
