/** Random airplanes for the simulation of the order: every fact of the catalogue's conditions drawn anew, seeded. */
import { type Airplane, readAirplane } from '../../../analysis/airplane/index.ts';

/** A small seeded generator of its own (mulberry32), so that the order is tested apart from analysis/numbers. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A normal draw from a seeded generator (Box and Muller). */
export function gaussian(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** An airplane with systems drawn at random; numbers stay those of the base, so that only the configuration varies. */
export function randomAirplane(base: unknown, random: () => number): Airplane {
  const chance = (share = 0.5) => random() < share;
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  const liquid = chance();
  const retractable = chance();
  const draft = structuredClone(base);
  if (!isRecord(draft)) throw new Error('the base airplane is not an object');
  const at = (name: string) => {
    const part = draft[name];
    if (!isRecord(part)) throw new Error(`the base airplane lacks ${name}`);
    return part;
  };
  Object.assign(at('cooling'), {
    kind: liquid ? 'liquid' : 'air',
    exitDoor: chance(),
    alternateDoorControl: chance(),
    groundFan: chance(),
    cowlFlap: chance(),
  });
  Object.assign(at('engine'), {
    electronicControl: chance(),
    mixtureControl: chance(),
    carburettor: chance(),
    newOrRebuilt: chance(),
  });
  Object.assign(at('propeller'), { kind: pick(['constant-speed', 'fixed', 'ground-adjustable']) });
  Object.assign(at('gear'), {
    retractable,
    layout: pick(['nose', 'tail']),
    emergencyExtension: chance(0.8),
    positionSwitches: chance(0.8),
  });
  if (chance()) draft.hydraulics = false;
  if (chance(0.4)) draft.flaps = false;
  Object.assign(at('fuel'), {
    sources: pick([1, 1, 2, 3]),
    poweredTransfer: chance(),
    wingTanksSeparate: chance(),
    flowMeter: chance(),
    quantityGauge: chance(),
    pressureGauge: chance(),
    electricPumps: pick([0, 1, 2]),
  });
  const electrical = at('electrical');
  const batteries = electrical.batteries;
  if (!Array.isArray(batteries)) throw new Error('the base airplane lacks batteries');
  electrical.batteries = batteries.slice(0, pick([0, 1, 1, 2]) ?? 1);
  Object.assign(electrical, { backupSupply: chance(), groundSupplyPlug: chance() });
  if (chance(0.3)) electrical.generator = false;
  Object.assign(at('trim'), { electric: chance() });
  if (chance()) draft.autopilot = false;
  Object.assign(at('avionics'), {
    radios: pick([0, 1, 2]),
    transponder: pick([false, 'single', 'diversity']),
    elt: chance(),
    compass: chance(0.8),
    pitotHeat: chance(),
    alternateStatic: chance(),
  });
  Object.assign(at('cabin'), {
    canopy: pick([false, 'slider', 'hinged']),
    heat: pick([false, 'coolant', 'exhaust', 'electric']),
    smoke: chance(0.2),
  });
  Object.assign(at('plan'), {
    spins: chance(0.2),
    aerobatics: chance(0.2),
    night: chance(0.2),
    ifr: chance(0.3),
  });
  const read = readAirplane(draft);
  if (!read.airplane) throw new Error(read.problems.map((one) => one.message).join('\n'));
  return read.airplane;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
