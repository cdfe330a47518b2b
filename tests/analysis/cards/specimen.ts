/** A card made by hand, for tests that need one of known content. */
import { type Card, cardSchema, words } from '../../../analysis/cards/index.ts';

export const NUMBER = (number: string, unit: string) => ({ kind: 'number' as const, number, unit, estimated: false });

const column = (key: string, label: string, unit: string, digits = 3) => ({
  key,
  label,
  unit,
  unitId: null,
  quantity: null,
  write: 'number' as const,
  digits,
  expect: null,
  expectsByRow: false,
  perGroup: false,
});

/** A card with so many gates, steps and rows. */
export function specimenCard(gates: number, steps: number, rows: number, columns = 3): Card {
  return cardSchema.parse({
    format: 'proveout-card-1',
    id: 'specimen',
    title: 'Specimen',
    aim: 'Show how a card is dealt.',
    stage: 'envelope',
    identity: {
      registration: '0X-OZL',
      airplane: 'Ouzel',
      invented: true,
      place: 'Flight 1, card 1 of 1',
      outing: 'Flight 1',
      revision: 'rev 1',
      printed: '4 May 2031',
    },
    gates: Array.from({ length: gates }, (_, i) =>
      words(`Gate ${i + 1} is a line of its own, long enough to fill the width`),
    ),
    strip: [{ item: 'flap', setting: words('up') }],
    steps: Array.from({ length: steps }, (_, i) => [...words(`Do step ${i + 1} at `), NUMBER('95', 'KIAS')]),
    tables: [
      {
        key: 't1',
        layout: 'repeats',
        title: '',
        head: { label: 'run', unit: '' },
        columns: Array.from({ length: columns }, (_, i) => column(`c${i + 1}`, `reading ${i + 1}`, '°C')),
        groups: [],
        groupHead: { label: '', unit: '', write: false, minute: false },
        holds: {},
        rows: Array.from({ length: rows }, (_, i) => ({
          key: `r${i + 1}`,
          head: words(`${i + 1}`),
          group: null,
          cells: {},
        })),
      },
    ],
    boxes: [],
    expectNote: '',
    ahead: [],
    stop: {
      items: [{ line: [...words('oil at '), NUMBER('115', '°C')], standing: false }],
      action: [words('land')],
      band: '',
    },
    after: [words('Configuration restored')],
    log: [],
    missing: [],
    sources: [],
    exceeded: [],
  } satisfies Card);
}
