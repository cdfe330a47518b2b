/** Height of each part of a card on a sheet, mm: the same numbers the style sheet draws with. */
import type { Ahead, Box, Card, ReadingTable, Row } from './card.ts';
import type { PlacedColumns } from './column-widths.ts';
import { hasNumber, type Line, words } from './line.ts';
import { linesIn, lineWidth, measuredWidth, textWidth } from './measure-text.ts';
import { boxWidth, MEASURES_MM, pitchesOf, TYPE_SCALES, type TypeSize } from './sheet-size.ts';

const { gap, tick, tickGap, stopBorder, stopPadding, boxHeight, line, stepNumber, stepGap } = MEASURES_MM;

/** space between ticked items in a row, and between rows */
const ITEM_GAP = 4;
const ITEM_ROW_GAP = 1.3;
const STOP_GAP = 4.5;
/** said instead of the standing items on the sheets after the first */
const AS_ON_FIRST = 'the rest as on sheet 1';
const RULE = 1.6;
const HEAD_PADDING = 2.4;

export const FOOT_HEIGHT = 10.4;

/**
 * The stop frame: number items in rows, words run on, then the action.
 * @param card the card, object
 * @param content width, mm
 * @param type type size, text
 * @param first true on the card's first sheet, where the standing items are
 * @returns mm
 */
export function stopHeight(card: Card, content: number, type: TypeSize, first: boolean): number {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const inner = content - 2 * (stopBorder + stopPadding);
  const face = { words: scale.body, numbers: scale.number };
  const { numbers, text, action } = stopTexts(card, first);
  const rows = flowRows(
    numbers.map((item) => lineWidth(item, face)),
    inner,
    STOP_GAP,
  );
  const numberLines = rows.reduce((sum, row) => {
    const only = row.length === 1 ? numbers[row[0] ?? 0] : undefined;
    return sum + (only ? linesIn(only, face, inner) : 1);
  }, 0);
  const textLines = text.length === 0 ? 0 : linesIn(text, face, inner);
  const actionLines = action.length === 0 ? 0 : linesIn(action, face, inner);
  return (
    2 * (stopBorder + stopPadding) +
    1.2 +
    numberLines * pitch.number +
    textLines * pitch.body +
    (actionLines === 0 ? 0 : RULE + actionLines * (hasNumber(action) ? pitch.number : pitch.body))
  );
}

/** What stands in the stop frame: items with numbers, the rest run together, the action. */
export function stopTexts(card: Card, first: boolean): { numbers: Line[]; text: Line; action: Line } {
  const plain = card.stop.items.filter((item) => !hasNumber(item.line));
  const said = plain.filter((item) => first || !item.standing).map((item) => item.line);
  if (card.stop.band !== '') said.push(words(card.stop.band));
  if (!first && plain.some((item) => item.standing)) said.push(words(AS_ON_FIRST));
  return {
    numbers: card.stop.items.map((item) => item.line).filter(hasNumber),
    text: said.flatMap((item, i) => (i === 0 ? item : [...words(' · '), ...item])),
    action: card.stop.action.flatMap((item, i) =>
      i === 0 ? [...words('THEN '), ...item] : [...words(' · '), ...item],
    ),
  };
}

/** Ticked items, several in a row where they fit. */
export function tickedRows(
  items: Line[],
  content: number,
  type: TypeSize,
): { from: number; to: number; height: number }[] {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type).note;
  const face = { words: scale.note, numbers: scale.note };
  const indent = tick + tickGap;
  const rows = flowRows(
    items.map((item) => indent + lineWidth(item, face)),
    content,
    ITEM_GAP,
  );
  return rows.map((row) => {
    const from = row[0] ?? 0;
    const lines = row.length === 1 ? linesIn(items[from] ?? [], face, content - indent) : 1;
    return { from, to: (row.at(-1) ?? 0) + 1, height: Math.max(tick, lines * pitch) + ITEM_ROW_GAP };
  });
}

/** The configuration strip: cells as wide as what they hold, in as many rows as needed. */
export function stripRows(card: Card, content: number, type: TypeSize): number[][] {
  return flowRows(
    card.strip.map((cell) => stripCellWidth(cell, type)),
    content,
    0,
  );
}

/** Width of one cell of the strip, mm: what it holds, or a box to write in. */
export function stripCellWidth(cell: Card['strip'][number], type: TypeSize): number {
  const scale = TYPE_SCALES[type];
  const face = { words: scale.body, numbers: scale.body };
  const inside = cell.setting.length === 0 ? boxWidth(3) : lineWidth(cell.setting, face);
  return Math.max(textWidth(cell.item, scale.small), inside) + 2;
}

/** Height of the strip with the space under it, mm; nothing where there is none. */
export function stripHeight(card: Card, content: number, type: TypeSize): number {
  if (card.strip.length === 0) return 0;
  const pitch = pitchesOf(type);
  return stripRows(card, content, type).length * (pitch.small + pitch.body + 1.2) + gap;
}

/** Height of one step with the space under it, mm. */
export function stepHeight(step: Line, content: number, type: TypeSize): number {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const face = { words: scale.body, numbers: scale.number };
  const lines = linesIn(step, face, content - stepNumber);
  return lines * (hasNumber(step) ? pitch.number : pitch.body) + stepGap;
}

/** Rows are as high as their boxes, or as their heads need; a group's rows together as high as its head. */
export function rowHeight(table: ReadingTable, row: Row, placed: PlacedColumns, type: TypeSize): number {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type).body;
  const face = { words: scale.body, numbers: scale.body };
  const own = linesIn(row.head, face, placed.head - HEAD_PADDING) * pitch + 0.8;
  const group = table.groups.find((one) => one.key === row.group);
  const rows = table.rows.filter((one) => one.group === row.group).length;
  const shared = group ? (linesIn(group.head, face, placed.group - HEAD_PADDING) * pitch + 0.8) / rows : 0;
  return Math.max(boxHeight, own, shared) + line;
}

/** Rows of labelled boxes: two in a row, words over the whole width. */
export function boxRows(boxes: Box[], content: number, type: TypeSize): { from: number; to: number; height: number }[] {
  const rows: { from: number; to: number; height: number }[] = [];
  boxes.forEach((box, i) => {
    const last = rows.at(-1);
    const before = boxes[i - 1];
    const joins = last && last.to - last.from === 1 && before && before.write !== 'words' && box.write !== 'words';
    const height = boxRowHeight(box, content, type);
    if (joins) {
      last.to = i + 1;
      last.height = Math.max(last.height, height);
    } else rows.push({ from: i, to: i + 1, height });
  });
  return rows;
}

function boxRowHeight(box: Box, content: number, type: TypeSize): number {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const label = boxLabelWidth(box, content, type);
  const face = { words: scale.note, numbers: scale.note };
  const lines = linesIn(words(box.label), face, label) + (box.expect ? 1 : 0);
  return Math.max(boxHeight, lines * pitch.note) + 1.4;
}

/** Room for the label of a box, mm. */
export function boxLabelWidth(box: Box, content: number, type: TypeSize): number {
  const scale = TYPE_SCALES[type];
  if (box.write === 'words') return content * 0.32;
  const unit = box.unit === '' ? 0 : textWidth(box.unit, scale.small) + 1.6;
  return (content - 4) / 2 - singleBoxWidth(box, type) - unit - 2;
}

/** Width of a single box, mm: for its digits, or for what was written into it. */
export function singleBoxWidth(box: Box, type: TypeSize): number {
  return Math.max(boxWidth(box.write === 'clock' ? 4 : box.digits), measuredWidth(box.measured, TYPE_SCALES[type]) + 2);
}

/** Items one after the other, a new row where the next does not fit. */
export function flowRows(widths: number[], room: number, between: number): number[][] {
  const rows: number[][] = [];
  let used = 0;
  widths.forEach((width, i) => {
    const row = rows.at(-1);
    if (row && used + between + width <= room) {
      row.push(i);
      used += between + width;
    } else {
      rows.push([i]);
      used = width;
    }
  });
  return rows;
}

/** Columns in which the minutes ahead run down, and what a line of them takes beside its letters, mm. */
export const AHEAD_COLUMNS = 3;

/** Height of a table of minutes ahead, mm: its title, then its lines in columns side by side. */
export function aheadHeight(ahead: Ahead, content: number, type: TypeSize): number {
  const { note } = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const title = linesIn(words(ahead.title), { words: note, numbers: note }, content) * pitch.note + 0.8;
  return title + Math.ceil(ahead.rows.length / AHEAD_COLUMNS) * pitch.body + 0.8;
}
