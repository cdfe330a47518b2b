/**
 * Pages that go round the cards of a flight: briefing, emergency sheet, return sheet. Each is a list of blocks, dealt
 * onto sheets by the same arithmetic as the cards.
 */
import type { Box, Card } from './card.ts';
import { deal, type Section } from './deal.ts';
import { type Line, words } from './line.ts';
import { linesIn } from './measure-text.ts';
import { boxRows, tickedRows } from './part-heights.ts';
import { MEASURES_MM, type Paper, pitchesOf, SHEETS, TYPE_SCALES, type TypeSize, titleBlock } from './sheet-size.ts';

/** A loading drawn in its envelope, in the airplane's own units. */
export interface EnvelopeFigure {
  massUnit: string;
  armUnit: string;
  corners: { mass: number; arm: number }[];
  points: { name: string; mass: number; massU95: number; arm: number; armU95: number }[];
}

export type PacketBlock =
  /** name and words, one row each */
  | { kind: 'facts'; label: string; rows: { name: string; text: Line }[] }
  /** the same, in letters read in flight and numbers to fly */
  | { kind: 'drill'; label: string; rows: { name: string; text: Line }[] }
  | { kind: 'ticks' | 'list'; label: string; items: Line[] }
  | { kind: 'boxes'; label: string; boxes: Box[] }
  /** empty lines to write on, at least so many; as the last block they fill the sheet */
  | { kind: 'lines'; label: string; count: number }
  | { kind: 'envelope'; label: string; figure: EnvelopeFigure };

export interface PacketPage {
  kind: 'briefing' | 'emergency' | 'return';
  title: string;
  aim: string;
  identity: Card['identity'];
  blocks: PacketBlock[];
}

export interface PacketPart {
  block: PacketBlock;
  from: number;
  to: number;
  /** false where the block goes on from the sheet before */
  first: boolean;
}

export interface PacketSheet {
  number: number;
  of: number;
  parts: PacketPart[];
}

/** share of the width that names take; the style sheet has the same */
export const NAME_SHARE = 0.24;
export const ENVELOPE_HEIGHT = 62;
export const LINE_HEIGHT = 8.6;
const ROW_GAP = 0.9;
const BULLET = 3.4;
const SPARE = 0.6;

/**
 * The sheets of a page.
 * @param page the page, object
 * @param paper paper form, text
 * @param type type size, text
 * @returns at least one sheet
 */
export function packetSheets(page: PacketPage, paper: Paper, type: TypeSize): PacketSheet[] {
  const { content, height } = SHEETS[paper];
  const { clip, foot } = MEASURES_MM;
  const room = height - clip - titleBlock(type) - foot - SPARE;
  const sections = page.blocks.map((block) => sectionOf(block, content, type)).filter((one) => one.rows.length > 0);
  const sheets = deal([sections], () => room);
  fillLastLines(sheets.at(-1) ?? [], room, content, type);
  return sheets.map((parts, i) => ({ number: i + 1, of: sheets.length, parts }));
}

/** Lines that come last take what is left of their sheet. */
function fillLastLines(parts: PacketPart[], room: number, content: number, type: TypeSize): void {
  const last = parts.at(-1);
  if (last?.block.kind !== 'lines') return;
  const used = parts.reduce((sum, part) => {
    const { header, rows } = sectionOf(part.block, content, type);
    const spans = packetRows(part.block, content, type);
    return sum + header + rows.filter((_, i) => isIn(spans[i], part)).reduce((all, row) => all + row.height, 0);
  }, 0);
  last.to += Math.max(0, Math.floor((room - used) / LINE_HEIGHT));
}

function isIn(span: { from: number; to: number } | undefined, part: PacketPart): boolean {
  return span !== undefined && span.from >= part.from && span.to <= part.to;
}

/** Rows of a block, each with the span of its items and its height. */
export function packetRows(
  block: PacketBlock,
  content: number,
  type: TypeSize,
): { from: number; to: number; height: number }[] {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const one = (i: number, height: number) => ({ from: i, to: i + 1, height });
  switch (block.kind) {
    case 'facts': {
      const face = { words: scale.note, numbers: scale.note };
      return block.rows.map((row, i) => {
        const name = linesIn(words(row.name), face, content * NAME_SHARE - 2);
        const text = linesIn(row.text, face, content * (1 - NAME_SHARE));
        return one(i, Math.max(name, text) * pitch.note + ROW_GAP);
      });
    }
    case 'drill': {
      const face = { words: scale.body, numbers: scale.number };
      return block.rows.map((row, i) => {
        const name = linesIn(words(row.name), { words: scale.body, numbers: scale.body }, content * NAME_SHARE - 2);
        const text = linesIn(row.text, face, content * (1 - NAME_SHARE));
        const high = row.text.some((token) => token.kind !== 'text') ? pitch.number : pitch.body;
        return one(i, Math.max(name, text) * high + ROW_GAP);
      });
    }
    case 'ticks':
      return tickedRows(block.items, content, type);
    case 'list': {
      const face = { words: scale.note, numbers: scale.note };
      return block.items.map((item, i) => one(i, linesIn(item, face, content - BULLET) * pitch.note + ROW_GAP));
    }
    case 'boxes':
      return boxRows(block.boxes, content, type);
    case 'lines':
      return Array.from({ length: block.count }, (_, i) => one(i, LINE_HEIGHT));
    case 'envelope':
      return [one(0, ENVELOPE_HEIGHT)];
  }
}

function sectionOf(block: PacketBlock, content: number, type: TypeSize): Section<PacketPart> {
  const rows = packetRows(block, content, type);
  const { small } = TYPE_SCALES[type];
  const lines = linesIn(words(`${block.label}, continued`), { words: small, numbers: small }, content);
  return {
    header: MEASURES_MM.gap + (block.label === '' ? 0 : lines * pitchesOf(type).small + 0.4),
    least: 1,
    rows: rows.map(({ height }) => ({
      height,
      keep: false,
      part: (from, to, first) => ({ block, from: rows[from]?.from ?? 0, to: rows[to - 1]?.to ?? 0, first }),
    })),
  };
}
