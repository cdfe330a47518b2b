/** A turned table of a sheet, ready to print. */
import type { Card, SheetPart } from '../../analysis/cards/index.ts';
import { boxKey, hasBox, MEASURES_MM } from '../../analysis/cards/index.ts';
import { lineParts } from './line.view.ts';
import { groupBoxes, measuredView, millimetres } from './readings.view.ts';

/**
 * A turned table part of a sheet.
 * @param card the card, object
 * @param part which table and blocks, object
 * @returns view of cards/_turned-table
 */
export function turnedView(card: Card, part: Extract<SheetPart, { kind: 'turned' }>) {
  const table = card.tables[part.table];
  if (!table) throw new RangeError(`card ${card.id} has no table ${part.table}`);
  const { turned } = part;
  const [label, expect, run] = [turned.label, turned.expect, turned.run].map(millimetres);
  return {
    template: 'cards/_turned-table',
    title: table.title,
    note: part.first && part.table === 0 ? card.expectNote : '',
    expected: turned.expect > 0,
    grouped: table.groups.length > 0,
    minutes: table.groupHead.minute,
    groupHeight: millimetres(turned.groupHeight),
    minuteHeight: millimetres(MEASURES_MM.boxHeight + MEASURES_MM.line),
    headHeight: millimetres(turned.headHeight),
    groupHead: table.groupHead,
    head: table.head,
    blocks: turned.blocks.map(({ from, to }) => {
      const rows = table.rows.slice(from, to);
      const opening = rows.filter((row, i) => i === 0 || rows[i - 1]?.group !== row.group);
      const width = turned.label + turned.expect + rows.length * turned.run;
      return {
        width: millimetres(width),
        widths: [label, ...(turned.expect > 0 ? [expect] : []), ...rows.map(() => run)],
        groups: opening.map((row) => ({
          span: rows.filter((one) => one.group === row.group).length,
          ...groupBoxes(table, row),
          head: lineParts(table.groups.find((group) => group.key === row.group)?.head ?? []),
        })),
        runs: rows.map((row) => ({ head: lineParts(row.head) })),
        readings: table.columns.map((column, c) => ({
          height: millimetres(turned.rowHeights[c] ?? 0),
          label: column.label,
          unit: column.unit,
          expect: column.expect?.text ?? '',
          expectHeight: millimetres(turned.expectHeights[c] ?? 0),
          byRun: column.expectsByRow ? rows.map((row) => row.cells[column.key]?.expect?.text ?? '') : [],
          // the label stands beside both, the expectation and the reading
          span: column.expectsByRow ? '2' : '',
          cells: rows.flatMap((row, i) => {
            const alike = rows.filter((one) => column.perGroup && one.group !== null && one.group === row.group);
            if (alike.length > 0 && rows[i - 1]?.group === row.group) return [];
            // a group goes on after a cut: what was read once for it stands before the cut
            const own = hasBox(table, row, column);
            return [
              {
                kind: `read write-${column.write}`,
                key: own ? boxKey(table.key, row.key, column.key) : '',
                span: alike.length > 1 ? String(alike.length) : '',
                ...measuredView(own ? (row.cells[column.key]?.measured ?? null) : null),
              },
            ];
          }),
        })),
      };
    }),
  };
}
