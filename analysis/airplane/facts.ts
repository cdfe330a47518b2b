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

type Read = (airplane: Airplane) => FactValue;

/** Something fitted or not: `has a ground cooling fan`, `has no ground cooling fan`. */
const fitted = (path: string, thing: string, read: Read, more: { name?: string; lacks?: string } = {}): Fact => ({
  name: more.name ?? path,
  path,
  has: `has ${thing}`,
  lacks: more.lacks ?? `has no ${thing.replace(/^an? /, '')}`,
  read,
});

/** Something there are several of: `has 2 batteries`, `has one battery`, `has no batteries`. */
const counted = (name: string, path: string, one: string, several: string, read: Read): Fact => ({
  name,
  path,
  has: `has ${several}`,
  lacks: `has no ${several}`,
  says: (value) => (value === 0 ? `has no ${several}` : value === 1 ? `has one ${one}` : `has ${value} ${several}`),
  read,
});

/** One kind of several: the words of each. */
const oneOf = (
  name: string,
  path: string,
  lacks: string,
  words: Readonly<Record<string, string>>,
  read: Read,
): Fact => ({
  name,
  path,
  has: 'has another kind',
  lacks,
  says: (value) => words[String(value)] ?? lacks,
  read,
});

/** What is planned: `is to be spun`, `is not to be spun`. */
const planned = (path: string, doing: string, read: Read): Fact => ({
  name: path,
  path,
  has: `is to ${doing}`,
  lacks: `is not to ${doing}`,
  read,
});

export const FACTS: readonly Fact[] = [
  oneOf(
    'cooling.kind',
    'cooling.kind',
    'has another kind of cooling',
    { liquid: 'is liquid-cooled', air: 'is air-cooled' },
    (a) => a.cooling.kind,
  ),
  fitted('cooling.exitDoor', 'a cooling exit door', (a) => a.cooling.exitDoor),
  fitted('cooling.alternateDoorControl', 'a second way to move the exit door', (a) => a.cooling.alternateDoorControl),
  fitted('cooling.groundFan', 'a ground cooling fan', (a) => a.cooling.groundFan),
  fitted('cooling.cowlFlap', 'cowl flaps', (a) => a.cooling.cowlFlap),
  fitted('engine.electronicControl', 'electronic engine control', (a) => a.engine.electronicControl),
  fitted('engine.mixtureControl', 'a mixture control', (a) => a.engine.mixtureControl),
  fitted('engine.carburettor', 'a carburettor', (a) => a.engine.carburettor),
  fitted('engine.newOrRebuilt', 'a new or rebuilt engine', (a) => a.engine.newOrRebuilt, {
    lacks: 'has an engine already run in',
  }),
  oneOf(
    'propeller',
    'propeller.kind',
    'has another kind of propeller',
    {
      'constant-speed': 'has a constant-speed propeller',
      fixed: 'has a fixed-pitch propeller',
      'ground-adjustable': 'has a ground-adjustable propeller',
    },
    (a) => a.propeller.kind,
  ),
  fitted('gear.retractable', 'retractable gear', (a) => a.gear.retractable, { lacks: 'has fixed gear' }),
  oneOf(
    'gear.layout',
    'gear.layout',
    'has another kind of gear',
    { tail: 'has a tail wheel', nose: 'has a nose wheel' },
    (a) => a.gear.layout,
  ),
  fitted('gear.emergencyExtension', 'an emergency gear extension', (a) => a.gear.emergencyExtension),
  fitted('gear.positionSwitches', 'gear position switches', (a) => a.gear.positionSwitches),
  fitted('hydraulics', 'hydraulics', (a) => a.hydraulics !== false),
  fitted('flaps', 'flaps', (a) => a.flaps !== false),
  counted('fuel.sources', 'fuel.sources', 'fuel feed to select', 'fuel feeds to select', (a) => a.fuel.sources),
  fitted('fuel.poweredTransfer', 'powered fuel transfer', (a) => a.fuel.poweredTransfer),
  fitted('fuel.wingTanksSeparate', 'separate wing tanks', (a) => a.fuel.wingTanksSeparate),
  fitted('fuel.flowMeter', 'a fuel flow meter', (a) => a.fuel.flowMeter),
  fitted('fuel.quantityGauge', 'a fuel quantity gauge', (a) => a.fuel.quantityGauge),
  fitted('fuel.pressureGauge', 'a fuel pressure gauge', (a) => a.fuel.pressureGauge),
  counted(
    'fuel.electricPumps',
    'fuel.electricPumps',
    'electric fuel pump',
    'electric fuel pumps',
    (a) => a.fuel.electricPumps,
  ),
  counted('batteries', 'electrical.batteries', 'battery', 'batteries', (a) => a.electrical.batteries.length),
  fitted('electrical.backupSupply', 'a backup supply', (a) => a.electrical.backupSupply, { name: 'backupSupply' }),
  fitted('electrical.groundSupplyPlug', 'a ground supply plug', (a) => a.electrical.groundSupplyPlug, {
    name: 'groundSupplyPlug',
  }),
  fitted('electrical.generator', 'a generator', (a) => a.electrical.generator !== false, { name: 'generator' }),
  fitted('trim.electric', 'electric trim', (a) => a.trim.electric, { name: 'electricTrim' }),
  fitted('autopilot', 'an autopilot', (a) => a.autopilot !== false),
  fitted('cabin.smoke', 'a smoke system', (a) => a.cabin.smoke, { name: 'smoke' }),
  counted('radios', 'avionics.radios', 'radio', 'radios', (a) => a.avionics.radios),
  oneOf(
    'transponder',
    'avionics.transponder',
    'has no transponder',
    { single: 'has a transponder with one antenna', diversity: 'has a transponder with two antennas' },
    (a) => a.avionics.transponder,
  ),
  fitted('avionics.elt', 'an emergency locator transmitter', (a) => a.avionics.elt, { name: 'elt' }),
  fitted('avionics.compass', 'a compass or magnetometer', (a) => a.avionics.compass, { name: 'compass' }),
  fitted('avionics.pitotHeat', 'pitot heat', (a) => a.avionics.pitotHeat, { name: 'pitotHeat' }),
  fitted('avionics.alternateStatic', 'an alternate static source', (a) => a.avionics.alternateStatic, {
    name: 'alternateStatic',
  }),
  oneOf(
    'cabinHeat',
    'cabin.heat',
    'has no cabin heat',
    {
      coolant: 'has cabin heat from the coolant',
      exhaust: 'has cabin heat from the exhaust',
      electric: 'has electric cabin heat',
    },
    (a) => a.cabin.heat,
  ),
  oneOf(
    'canopy',
    'cabin.canopy',
    'has no canopy',
    { slider: 'has a sliding canopy', hinged: 'has a hinged canopy' },
    (a) => a.cabin.canopy,
  ),
  planned('plan.spins', 'be spun', (a) => a.plan.spins),
  planned('plan.aerobatics', 'fly aerobatics', (a) => a.plan.aerobatics),
  planned('plan.night', 'fly at night', (a) => a.plan.night),
  planned('plan.ifr', 'fly by instruments', (a) => a.plan.ifr),
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
