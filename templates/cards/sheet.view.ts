/** One sheet of a card, ready to print. */
import type { Card, Paper, Sheet, SheetPart } from '../../analysis/cards/index.ts';
import {
  AHEAD_COLUMNS,
  fitText,
  hasNumber,
  headlineOf,
  plainText,
  SHEETS,
  settingKey,
  stopTexts,
  TYPE_SCALES,
  textWidth,
} from '../../analysis/cards/index.ts';
import { lineParts } from './line.view.ts';
import type { PrintOptions } from './options.ts';
import { boxesView, logView, MARKS, tableView } from './readings.view.ts';
import { turnedView } from './turned.view.ts';

/**
 * The view of one sheet.
 * @param card the card, object
 * @param sheet which sheet and what stands on it, object
 * @param opensOuting true on the first sheet of an outing, which opens the PDF's outline there
 * @returns view of cards/_sheet, without its place on the page
 */
export function sheetView(card: Card, sheet: Sheet, opensOuting: boolean, paper: Paper, options: PrintOptions) {
  const { identity } = card;
  const headline = headlineOf(card, SHEETS[paper].content, options.type);
  const first = sheet.number === 1;
  const { numbers, text, action } = stopTexts(card, first);
  return {
    template: 'cards/_sheet',
    card: card.id,
    number: sheet.number,
    of: sheet.of,
    first,
    registration: identity.registration,
    invented: identity.invented,
    opensOuting,
    revision: identity.revision,
    printed: identity.printed,
    ...identityTexts(card, paper, options),
    title: headline.title,
    longTitle: headline.long,
    aim: headline.aim,
    strip: card.strip.map((cell) => ({
      item: cell.item,
      set: plainText(cell.setting),
      key: first && cell.setting.length === 0 ? settingKey(cell.item) : '',
    })),
    stop: {
      numbers: numbers.map((line) => ({ line: lineParts(line) })),
      text: lineParts(text),
      acts: action.length > 0,
      action: lineParts(action.slice(1)),
      actionNumbers: hasNumber(action),
    },
    parts: sheet.parts.map((part) => partView(card, part, paper, options)),
    foot: { last: sheet.number === sheet.of, next: sheet.number + 1, of: sheet.of },
  };
}

/** Name and place as they fit beside the sheet number and the revision. */
export function identityTexts({ identity }: Pick<Card, 'identity'>, paper: Paper, options: PrintOptions) {
  const { content } = SHEETS[paper];
  const { small } = TYPE_SCALES[options.type];
  const { registration, airplane, invented, place, revision, printed } = identity;
  const mark = invented ? textWidth(' invented', small) + 3 : 0;
  const right = Math.max(textWidth('sheet 10 of 10', small), textWidth(`${revision} · ${printed}`, small)) + 5;
  return {
    airplane: fitText(airplane, small, content - right - textWidth(`${registration} `, small) - mark),
    outingPlace: fitText(place, small, content - right),
  };
}

function partView(card: Card, part: SheetPart, paper: Paper, options: PrintOptions) {
  switch (part.kind) {
    case 'aim':
      return { template: 'cards/_aim', text: part.text };
    case 'missing':
      return { template: 'cards/_missing', text: card.missing.map((one) => one.meaning).join(' · ') };
    case 'gates':
      return ticksView(
        part.from === 0 ? 'Before: tick each' : 'Before, continued',
        card.gates.slice(part.from, part.to),
      );
    case 'after':
      return ticksView(part.from === 0 ? 'After' : 'After, continued', card.after.slice(part.from, part.to));
    case 'steps':
      return {
        template: 'cards/_steps',
        before: String(part.from),
        steps: card.steps.slice(part.from, part.to).map((line) => ({
          numbers: hasNumber(line),
          line: lineParts(line),
        })),
      };
    case 'table':
      return tableView(card, part, options);
    case 'turned':
      return turnedView(card, part);
    case 'boxes':
      return boxesView(card, part.from, part.to, SHEETS[paper].content, options);
    case 'ahead':
      return aheadView(card, part.ahead);
    case 'log':
      return logView(card, options);
    case 'sources':
      return { template: 'cards/_sources', sources: sourceLines(card).slice(part.from, part.to) };
  }
}

/** What left its band, with its mark; then where each value comes from, by number. */
function sourceLines(card: Card): { n: string; text: string }[] {
  return [
    ...card.exceeded.map(({ way, text }) => ({ n: MARKS[way], text })),
    ...card.sources.map((text, i) => ({ n: String(i + 1), text })),
  ];
}

/** Minutes ahead, running down in columns side by side. */
function aheadView(card: Card, index: number) {
  const ahead = card.ahead[index];
  if (!ahead) throw new RangeError(`card ${card.id} has no minutes ${index}`);
  const { title, rows } = ahead;
  const each = Math.ceil(rows.length / AHEAD_COLUMNS);
  return {
    template: 'cards/_ahead',
    title,
    columns: Array.from({ length: Math.ceil(rows.length / each) }, (_, c) => rows.slice(c * each, (c + 1) * each)),
  };
}

function ticksView(label: string, lines: Card['gates']) {
  return { template: 'cards/_ticks', label, items: lines.map((line) => ({ line: lineParts(line) })) };
}
