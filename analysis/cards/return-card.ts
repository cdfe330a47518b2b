/** The return sheet as a card, so that it is typed, kept, taken back and printed like the others. */
import type { Box, Card, ReadingTable } from './card.ts';
import { words } from './line.ts';
import type { PacketPage } from './packet-page.ts';

/** How the written return sheet of an outing is asked for, in place of a test. */
export const RETURN = /^return-(\d{1,4})$/;

/** lines for squawks on the entry page: more than the paper shows, since its sheet runs on */
const SQUAWKS = 6;

/**
 * A card with the boxes of a return sheet.
 * @param page the sheet, object
 * @param outing number of the outing, count
 * @returns the card, plain JSON
 */
export function returnCard(page: PacketPage, outing: number): Card {
  const boxes = page.blocks.flatMap((block) => (block.kind === 'boxes' ? block.boxes : []));
  return {
    format: 'proveout-card-1',
    id: `return-${outing}`,
    title: page.title,
    aim: page.aim,
    stage: 'sign-off',
    identity: page.identity,
    gates: [],
    strip: [],
    steps: [],
    tables: [squawkTable()],
    boxes: distinct(boxes),
    expectNote: '',
    ahead: [],
    stop: { items: [], action: [], band: '' },
    after: page.blocks.flatMap((block) => (block.kind === 'ticks' ? block.items : [])),
    log: [],
    missing: [],
    sources: [],
    exceeded: [],
  };
}

function squawkTable(): ReadingTable {
  return {
    key: 't1',
    layout: 'list',
    title: 'Squawks',
    head: { label: 'no.', unit: '' },
    columns: [
      {
        key: 'squawk',
        label: 'what, where, may it fly again before it is cleared',
        unit: '',
        unitId: null,
        quantity: null,
        write: 'words',
        digits: 0,
        expect: null,
        expectsByRow: false,
        perGroup: false,
      },
    ],
    groupHead: { label: '', unit: '', write: false, minute: false },
    groups: [],
    rows: Array.from({ length: SQUAWKS }, (_, i) => ({
      key: String(i + 1),
      head: words(String(i + 1)),
      group: null,
      cells: {},
    })),
    holds: {},
  };
}

/** Boxes of different blocks may share their words; their keys must not. */
function distinct(boxes: readonly Box[]): Box[] {
  return boxes.map((box, i) => {
    const before = boxes.slice(0, i).filter((one) => one.key === box.key).length;
    return before === 0 ? box : { ...box, key: `${box.key}-${before + 1}` };
  });
}
