/**
 * Facts: the airplane seen as the catalogue asks about it. Each fact has the name conditions use, the words a reason
 * is printed in, and the configuration path it comes from, so that a change can be traced to the tests it touches.
 */
import type { Airplane } from './configuration.ts';

export type FactValue = boolean | number | string;

export interface Fact {
  name: string;
  /** configuration path the fact is read from */
  path: string;
  /** completes "because the airplane ..." / "the airplane ... not" */
  has: string;
  lacks: string;
  /** words for a value, where the fact is more than yes or no: completes "because the airplane ..." */
  says?(value: FactValue): string;
  read(airplane: Airplane): FactValue;
}

const fact = (
  name: string,
  path: string,
  has: string,
  lacks: string,
  read: (a: Airplane) => FactValue,
  says?: (value: FactValue) => string,
): Fact => ({ name, path, has, lacks, read, ...(says ? { says } : {}) });

/** `has 2 batteries`, `has a battery`, `has no battery` */
const count = (one: string, several: string) => (value: FactValue) =>
  value === 0 ? `has no ${several}` : value === 1 ? `has one ${one}` : `has ${value} ${several}`;

const named =
  (words: Readonly<Record<string, string>>, otherwise: string) =>
  (value: FactValue): string =>
    words[String(value)] ?? otherwise;

export const FACTS: readonly Fact[] = [
  fact(
    'cooling.kind',
    'cooling.kind',
    'has this kind of cooling',
    'has another kind of cooling',
    (a) => a.cooling.kind,
    named({ liquid: 'is liquid-cooled', air: 'is air-cooled' }, 'has another kind of cooling'),
  ),
  fact(
    'cooling.exitDoor',
    'cooling.exitDoor',
    'has a cooling exit door',
    'has no cooling exit door',
    (a) => a.cooling.exitDoor,
  ),
  fact(
    'cooling.alternateDoorControl',
    'cooling.alternateDoorControl',
    'has a second way to move the exit door',
    'has no second way to move the exit door',
    (a) => a.cooling.alternateDoorControl,
  ),
  fact(
    'cooling.groundFan',
    'cooling.groundFan',
    'has a ground cooling fan',
    'has no ground cooling fan',
    (a) => a.cooling.groundFan,
  ),
  fact('cooling.cowlFlap', 'cooling.cowlFlap', 'has cowl flaps', 'has no cowl flaps', (a) => a.cooling.cowlFlap),
  fact(
    'engine.electronicControl',
    'engine.electronicControl',
    'has electronic engine control',
    'has no electronic engine control',
    (a) => a.engine.electronicControl,
  ),
  fact(
    'engine.mixtureControl',
    'engine.mixtureControl',
    'has a mixture control',
    'has no mixture control',
    (a) => a.engine.mixtureControl,
  ),
  fact(
    'engine.carburettor',
    'engine.carburettor',
    'has a carburettor',
    'has no carburettor',
    (a) => a.engine.carburettor,
  ),
  fact(
    'engine.newOrRebuilt',
    'engine.newOrRebuilt',
    'has a new or rebuilt engine',
    'has an engine already run in',
    (a) => a.engine.newOrRebuilt,
  ),
  fact(
    'propeller',
    'propeller.kind',
    'has this kind of propeller',
    'has another kind of propeller',
    (a) => a.propeller.kind,
    named(
      {
        'constant-speed': 'has a constant-speed propeller',
        fixed: 'has a fixed-pitch propeller',
        'ground-adjustable': 'has a ground-adjustable propeller',
      },
      'has another kind of propeller',
    ),
  ),
  fact('gear.retractable', 'gear.retractable', 'has retractable gear', 'has fixed gear', (a) => a.gear.retractable),
  fact(
    'gear.layout',
    'gear.layout',
    'has this kind of gear',
    'has another kind of gear',
    (a) => a.gear.layout,
    named({ tail: 'has a tail wheel', nose: 'has a nose wheel' }, 'has another kind of gear'),
  ),
  fact(
    'gear.emergencyExtension',
    'gear.emergencyExtension',
    'has an emergency gear extension',
    'has no emergency gear extension',
    (a) => a.gear.emergencyExtension,
  ),
  fact(
    'gear.positionSwitches',
    'gear.positionSwitches',
    'has gear position switches',
    'has no gear position switches',
    (a) => a.gear.positionSwitches,
  ),
  fact('hydraulics', 'hydraulics', 'has hydraulics', 'has no hydraulics', (a) => a.hydraulics !== false),
  fact('flaps', 'flaps', 'has flaps', 'has no flaps', (a) => a.flaps !== false),
  fact(
    'fuel.sources',
    'fuel.sources',
    'has this many fuel feeds to select',
    'has fewer fuel feeds to select',
    (a) => a.fuel.sources,
    count('fuel feed to select', 'fuel feeds to select'),
  ),
  fact(
    'fuel.poweredTransfer',
    'fuel.poweredTransfer',
    'has a tank with powered transfer',
    'has no powered fuel transfer',
    (a) => a.fuel.poweredTransfer,
  ),
  fact(
    'fuel.wingTanksSeparate',
    'fuel.wingTanksSeparate',
    'has separate wing tanks',
    'has no separate wing tanks',
    (a) => a.fuel.wingTanksSeparate,
  ),
  fact('fuel.flowMeter', 'fuel.flowMeter', 'has a fuel flow meter', 'has no fuel flow meter', (a) => a.fuel.flowMeter),
  fact(
    'fuel.quantityGauge',
    'fuel.quantityGauge',
    'has fuel quantity gauges',
    'has no fuel quantity gauge',
    (a) => a.fuel.quantityGauge,
  ),
  fact(
    'fuel.pressureGauge',
    'fuel.pressureGauge',
    'has a fuel pressure gauge',
    'has no fuel pressure gauge',
    (a) => a.fuel.pressureGauge,
  ),
  fact(
    'fuel.electricPumps',
    'fuel.electricPumps',
    'has electric fuel pumps',
    'has no electric fuel pump',
    (a) => a.fuel.electricPumps,
    count('electric fuel pump', 'electric fuel pumps'),
  ),
  fact(
    'batteries',
    'electrical.batteries',
    'has this many batteries',
    'has fewer batteries',
    (a) => a.electrical.batteries.length,
    count('battery', 'batteries'),
  ),
  fact(
    'backupSupply',
    'electrical.backupSupply',
    'has a backup supply',
    'has no backup supply',
    (a) => a.electrical.backupSupply,
  ),
  fact(
    'groundSupplyPlug',
    'electrical.groundSupplyPlug',
    'has a ground supply plug',
    'has no ground supply plug',
    (a) => a.electrical.groundSupplyPlug,
  ),
  fact(
    'generator',
    'electrical.generator',
    'has a generator',
    'has no generator',
    (a) => a.electrical.generator !== false,
  ),
  fact('electricTrim', 'trim.electric', 'has electric trim', 'has no electric trim', (a) => a.trim.electric),
  fact('autopilot', 'autopilot', 'has an autopilot', 'has no autopilot', (a) => a.autopilot !== false),
  fact('smoke', 'cabin.smoke', 'has a smoke system', 'has no smoke system', (a) => a.cabin.smoke),
  fact('radios', 'avionics.radios', 'has a radio', 'has no radio', (a) => a.avionics.radios, count('radio', 'radios')),
  fact(
    'transponder',
    'avionics.transponder',
    'has a transponder',
    'has no transponder',
    (a) => a.avionics.transponder,
    named(
      { single: 'has a transponder with one antenna', diversity: 'has a transponder with two antennas' },
      'has no transponder',
    ),
  ),
  fact(
    'elt',
    'avionics.elt',
    'has an emergency locator transmitter',
    'has no emergency locator transmitter',
    (a) => a.avionics.elt,
  ),
  fact(
    'compass',
    'avionics.compass',
    'has a compass or magnetometer',
    'has no compass or magnetometer',
    (a) => a.avionics.compass,
  ),
  fact('pitotHeat', 'avionics.pitotHeat', 'has pitot heat', 'has no pitot heat', (a) => a.avionics.pitotHeat),
  fact(
    'alternateStatic',
    'avionics.alternateStatic',
    'has an alternate static source',
    'has no alternate static source',
    (a) => a.avionics.alternateStatic,
  ),
  fact(
    'cabinHeat',
    'cabin.heat',
    'has cabin heat',
    'has no cabin heat',
    (a) => a.cabin.heat,
    named(
      {
        coolant: 'has cabin heat from the coolant',
        exhaust: 'has cabin heat from the exhaust',
        electric: 'has electric cabin heat',
      },
      'has no cabin heat',
    ),
  ),
  fact(
    'canopy',
    'cabin.canopy',
    'has a canopy',
    'has no canopy',
    (a) => a.cabin.canopy,
    named({ slider: 'has a sliding canopy', hinged: 'has a hinged canopy' }, 'has no canopy'),
  ),
  fact('plan.spins', 'plan.spins', 'is to be spun', 'is not to be spun', (a) => a.plan.spins),
  fact(
    'plan.aerobatics',
    'plan.aerobatics',
    'is to fly aerobatics',
    'is not to fly aerobatics',
    (a) => a.plan.aerobatics,
  ),
  fact('plan.night', 'plan.night', 'is to fly at night', 'is not to fly at night', (a) => a.plan.night),
  fact('plan.ifr', 'plan.ifr', 'is to fly by instruments', 'is not to fly by instruments', (a) => a.plan.ifr),
];

export type FactName = string;

/**
 * All facts of an airplane, by name.
 * @param airplane the description, object
 * @returns name to value
 */
export function factsOf(airplane: Airplane): Map<FactName, FactValue> {
  return new Map(FACTS.map((one) => [one.name, one.read(airplane)]));
}
