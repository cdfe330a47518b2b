/**
 * The emergency sheet: this airplane's own numbers for each drill, from its description. The actions are common
 * practice, without a source: the airplane's own check-list governs, and the sheet says so.
 */
import type { Airplane } from '../airplane/index.ts';
import type { Known } from '../catalogue/index.ts';
import type { Card } from './card.ts';
import type { Line } from './line.ts';
import type { PacketBlock, PacketPage } from './packet-page.ts';
import { joined, numberOf } from './packet-words.ts';

interface Drill {
  name: string;
  text: Line;
}

/**
 * The emergency sheet of an airplane.
 * @param airplane the description, object
 * @param identity what stands under the clip, object
 * @param known accepted results, object
 * @returns the page, plain JSON
 */
export function emergencySheet(airplane: Airplane, identity: Card['identity'], known: Known = {}): PacketPage {
  const number = (path: string) => numberOf(path, airplane, known);
  const blocks: PacketBlock[] = [
    { kind: 'drill', label: '', rows: engineDrills(airplane, number) },
    ...(airplane.gear.retractable ? [{ kind: 'drill' as const, label: '', rows: gearDrills(number) }] : []),
    { kind: 'drill', label: '', rows: electricDrills(airplane, number) },
    { kind: 'drill', label: '', rows: otherDrills(airplane, number) },
    { kind: 'lines', label: 'Our own words, as agreed at the briefing', count: 1 },
  ];
  return {
    kind: 'emergency',
    title: 'Emergency',
    aim: 'Fly first. The numbers are this airplane’s own; the actions are common practice, no source: its check-list governs.',
    identity,
    blocks,
  };
}

type Numbered = (path: string) => Line;

function engineDrills(airplane: Airplane, number: Numbered): Drill[] {
  const { fuel, engine, cooling } = airplane;
  const feed = [
    fuel.sources > 1 ? 'other tank' : 'fuel on',
    fuel.electricPumps > 0 ? 'pump on' : '',
    engine.electronicControl ? 'lanes, feeds' : 'ignitions both',
    engine.carburettor ? 'heat on' : '',
  ].filter(Boolean);
  const hot = cooling.kind === 'liquid' ? 'limits.coolant.limit' : 'limits.cylinderHead.limit';
  const door = cooling.exitDoor || cooling.cowlFlap ? 'door open, ' : '';
  return [
    { name: 'Engine stops', text: joined(number('speeds.bestGlide'), ', field; ', feed.join(', '), '; once') },
    { name: '... low', text: joined('nose down, ', number('speeds.bestGlide'), ', ahead') },
    { name: 'Too hot', text: joined(`power back, ${door}nose down; never past `, limitLine(airplane, hot)) },
    { name: 'Oil low', text: joined('under ', number('limits.oil.pressureLow'), ': land at once') },
  ];
}

/** A limit itself is no reference of the catalogue's texts; it is read straight from the description. */
function limitLine(airplane: Airplane, path: 'limits.coolant.limit' | 'limits.cylinderHead.limit'): Line {
  const limit = path === 'limits.coolant.limit' ? airplane.limits.coolant.limit : airplane.limits.cylinderHead.limit;
  if (!limit) return [{ kind: 'missing', path, meaning: 'temperature limit of the engine', unit: '' }];
  const unit = { degC: '°C', degF: '°F' }[limit.unit] ?? limit.unit;
  return [{ kind: 'number', number: String(limit.value), unit, estimated: limit.status === 'estimated', path }];
}

function gearDrills(number: Numbered): Drill[] {
  return [
    { name: 'Gear not down', text: joined('below ', number('speeds.gearEmergency'), ', pump breaker out, release') },
    { name: '... not locked', text: joined('leave it, below ', number('speeds.gearExtended'), ', crew told') },
  ];
}

function electricDrills(airplane: Airplane, number: Numbered): Drill[] {
  const { electronicControl } = airplane.engine;
  const least = electronicControl ? 'derived.engineControlFloor' : 'limits.battery.minimum';
  return [
    { name: 'Generator off', text: joined('shed loads; down before ', number(least)) },
    { name: 'Low volts', text: joined('under ', number('limits.bus.low'), ': check-list, land') },
    ...(electronicControl
      ? [
          {
            name: 'Control feed',
            text: joined('needs ', number('limits.engineControl.minimum'), '; one feed untouched'),
          },
        ]
      : []),
  ];
}

function otherDrills(airplane: Airplane, number: Numbered): Drill[] {
  const exits = airplane.cabin.canopy === false ? 'doors' : 'canopy';
  const fed = airplane.engine.electronicControl ? 'engine control fed; ' : '';
  return [
    { name: 'Fire', text: joined('fuel off, heat and vents shut, down') },
    { name: 'Smoke', text: joined(`master off; ${fed}vent, land`) },
    ...(airplane.trim.electric
      ? [{ name: 'Trim runs', text: joined('hold, disconnect, breaker; ', number('derived.approach')) }]
      : []),
    { name: 'Getting out', text: joined(`${exits} by the check-list; fuel, master, harness`) },
    {
      name: 'Speeds',
      text: joined('approach ', number('derived.approach'), ', never past ', number('speeds.neverExceed')),
    },
  ];
}
