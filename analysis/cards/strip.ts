/** The configuration strip for one airplane: only what it has, in one order, with boxes for what is set at the briefing. */
import type { Airplane } from '../airplane/index.ts';
import type { Card } from './card.ts';
import { type Line, words } from './line.ts';
import { STRIPS } from './strips.ts';

const ITEMS: readonly { item: string; has: (a: Airplane) => boolean; label?: (a: Airplane) => string }[] = [
  { item: 'gear', has: (a) => a.gear.retractable },
  { item: 'flap', has: (a) => a.flaps !== false },
  {
    item: 'door',
    has: (a) => a.cooling.exitDoor || a.cooling.cowlFlap,
    label: (a) => (a.cooling.exitDoor ? 'door' : 'cowl flap'),
  },
  { item: 'fan', has: (a) => a.cooling.groundFan },
  { item: 'prop', has: (a) => a.propeller.kind === 'constant-speed' },
  { item: 'power', has: () => true },
  { item: 'trim', has: () => true },
  { item: 'tank', has: (a) => a.fuel.sources > 1 },
  { item: 'load', has: () => true },
  { item: 'nose', has: () => true },
];

/**
 * The strip of a test's card.
 * @param test id of the test, text
 * @param airplane the description, object
 * @returns cells in order; none for tests done without a configuration to hold
 */
export function stripFor(test: string, airplane: Airplane): Card['strip'] {
  const said = new Map(
    (STRIPS[test] ?? '').split(';').flatMap((part) => {
      const [item, ...setting] = part.trim().split(' ');
      return item ? [[item, setting.join(' ')] as const] : [];
    }),
  );
  return ITEMS.flatMap(({ item, has, label }) => {
    const setting = said.get(item);
    if (setting === undefined || !has(airplane)) return [];
    return [{ item: label ? label(airplane) : item, setting: settingLine(setting) }];
  });
}

/** Names of the items a strip may have, for the test of the data. */
export function stripItems(): string[] {
  return ITEMS.map((one) => one.item);
}

function settingLine(setting: string): Line {
  if (setting === '_') return [];
  const percent = /^(\d+) %$/.exec(setting)?.[1];
  return percent ? [{ kind: 'number', number: percent, unit: '%', estimated: false }] : words(setting);
}
