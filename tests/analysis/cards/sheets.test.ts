import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Card, PAPERS, type Sheet, sheetsOf, TYPES } from '../../../analysis/cards/index.ts';
import { specimenCard } from './specimen.ts';

/** Which items of a kind stand on which sheet, in order. */
function dealt(sheets: Sheet[], kind: 'gates' | 'steps'): number[] {
  return sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) =>
      part.kind === kind ? Array.from({ length: part.to - part.from }, (_, i) => part.from + i) : [],
    ),
  );
}

/** Each box of each table, once a time it is printed. */
function boxes(card: Card, sheets: Sheet[]): string[] {
  return sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) => {
      const table = part.kind === 'table' || part.kind === 'turned' ? card.tables[part.table] : undefined;
      if (!table) return [];
      if (part.kind === 'turned') {
        const spans = part.turned.blocks.flatMap((block) => table.rows.slice(block.from, block.to));
        return spans.flatMap((row) => table.columns.map((column) => `${row.key}.${column.key}`));
      }
      if (part.kind !== 'table') return [];
      return table.rows
        .slice(part.from, part.to)
        .flatMap((row) => part.placed.columns.map(({ column }) => `${row.key}.${table.columns[column]?.key}`));
    }),
  );
}

const counts = fc.record({
  gates: fc.integer({ min: 0, max: 25 }),
  steps: fc.integer({ min: 1, max: 9 }),
  rows: fc.integer({ min: 1, max: 40 }),
  columns: fc.integer({ min: 1, max: 12 }),
});

describe('a card dealt onto sheets', () => {
  test('nothing is lost and nothing printed twice, on any paper at any type size', () => {
    fc.assert(
      fc.property(counts, fc.constantFrom(...PAPERS), fc.constantFrom(...TYPES), (n, paper, type) => {
        const card = specimenCard(n.gates, n.steps, n.rows, n.columns);
        const sheets = sheetsOf(card, paper, type);
        expect(dealt(sheets, 'gates')).toEqual(card.gates.map((_, i) => i));
        expect(dealt(sheets, 'steps')).toEqual(card.steps.map((_, i) => i));
        const printed = boxes(card, sheets);
        expect(new Set(printed).size).toBe(printed.length);
        expect(printed).toHaveLength(n.rows * n.columns);
        expect(sheets.map((sheet) => sheet.number)).toEqual(sheets.map((_, i) => i + 1));
        expect(sheets.every((sheet) => sheet.of === sheets.length && sheet.parts.length > 0)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  test('a short card is one sheet', () => {
    expect(sheetsOf(specimenCard(3, 3, 3), 'half-letter', 'normal')).toHaveLength(1);
  });

  test('larger type takes as many sheets or more, never fewer', () => {
    const card = specimenCard(12, 9, 12);
    for (const paper of PAPERS) {
      expect(sheetsOf(card, paper, 'large').length).toBeGreaterThanOrEqual(sheetsOf(card, paper, 'normal').length);
    }
  });

  test('steps stay on one sheet where that costs no more sheets', () => {
    const sheets = sheetsOf(specimenCard(14, 6, 4), 'half-letter', 'normal');
    expect(sheets.filter((sheet) => sheet.parts.some((part) => part.kind === 'steps'))).toHaveLength(1);
  });

  test('readings of one run are not parted over tables: a wide table is turned', () => {
    const sheets = sheetsOf(specimenCard(0, 1, 8, 8), 'half-letter', 'normal');
    expect(sheets.flatMap((sheet) => sheet.parts).some((part) => part.kind === 'turned')).toBe(true);
  });

  test('a narrow long table stands in blocks side by side', () => {
    const parts = sheetsOf(specimenCard(0, 1, 18, 1), 'half-letter', 'normal').flatMap((sheet) => sheet.parts);
    expect(parts.some((part) => part.kind === 'table' && part.placed.blocks > 1)).toBe(true);
  });
});
