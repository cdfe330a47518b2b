/** The return sheet: times, what was used, highest temperatures, squawks, and the logs put away. */
import type { Airplane } from '../airplane/index.ts';
import { shows } from '../catalogue/index.ts';
import type { Card } from './card.ts';
import { words } from './line.ts';
import type { PacketPage } from './packet-page.ts';
import { emptyBox } from './packet-words.ts';

/**
 * The return sheet of an outing.
 * @param airplane the description, object
 * @param flown true for a flight
 * @param identity what stands under the clip, object
 * @returns the page, plain JSON
 */
export function returnSheet(airplane: Airplane, flown: boolean, identity: Card['identity']): PacketPage {
  const fuel = shows('fuel', airplane).symbol;
  const fluid = shows('fluid', airplane).symbol;
  const temp = shows('temp', airplane).symbol;
  const liquid = airplane.cooling.kind === 'liquid';
  const times = flown
    ? ['engine start', 'takeoff', 'landing', 'engine stop'].map((label) => emptyBox(label, 'clock'))
    : ['engine start', 'engine stop'].map((label) => emptyBox(label, 'clock'));
  const counts = flown ? [emptyBox('landings', 'number', 'count'), emptyBox('time on condition', 'number', 'min')] : [];
  const used = [
    emptyBox('fuel at start', 'number', fuel),
    emptyBox('fuel at stop', 'number', fuel),
    emptyBox('oil added', 'number', fluid),
    ...(liquid ? [emptyBox('coolant added', 'number', fluid)] : []),
    ...(airplane.hydraulics !== false ? [emptyBox('hydraulic fluid added', 'number', fluid)] : []),
  ];
  const highest = [
    emptyBox(liquid ? 'coolant' : 'hottest cylinder head', 'number', temp),
    emptyBox('oil', 'number', temp),
    ...(airplane.gear.retractable || flown ? [emptyBox('brakes, by hand', 'words')] : []),
  ];
  const recorders = airplane.recorders.map((recorder) => words(`Log of the ${recorder.name} copied and named`));
  return {
    kind: 'return',
    title: 'Return',
    aim: 'Written before the engine is cold.',
    identity,
    blocks: [
      { kind: 'boxes', label: 'Times', boxes: [...times, ...counts] },
      { kind: 'boxes', label: 'Used and added', boxes: used },
      { kind: 'boxes', label: 'Highest seen', boxes: highest },
      {
        kind: 'ticks',
        label: 'Before leaving the airplane',
        items: [
          ...recorders,
          words('Leaks, marks and smells looked for'),
          words('Cards signed'),
          words('Crew told we are down'),
        ],
      },
      { kind: 'boxes', label: '', boxes: [emptyBox('written by', 'words')] },
      { kind: 'lines', label: 'Squawks, one a line: what, where, may it fly again before it is cleared', count: 2 },
    ],
  };
}
