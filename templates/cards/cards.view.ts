/**
 * Cards as one HTML document: the same for the preview on screen and for paper. What the sheets after the first repeat
 * (identity, title, stop frame, strip) is hidden from the tags of the PDF, as running heads are: it is read once a card.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Card, Paper, TypeSize } from '../../analysis/cards/index.ts';
import {
  MEASURES_MM,
  pitchesOf,
  SHEETS,
  type Sheet,
  sheetsOf,
  TYPE_SCALES,
  titleBlock,
} from '../../analysis/cards/index.ts';
import { render } from '../render.ts';
import { cardFonts } from '../style/card-fonts.ts';
import { impose, type Place } from './impose.ts';
import type { PrintOptions } from './options.ts';
import { USUAL_OPTIONS } from './options.ts';
import { sheetView } from './sheet.view.ts';

const PAPER_CSS = join(import.meta.dirname, '..', 'style', 'paper.css');

export interface CardsDocument {
  html: string;
  sheets: number;
  pages: number;
}

/**
 * The document of some cards.
 * @param cards in the order they are flown, list
 * @param paper paper form, text
 * @param options the person's choices, object
 * @returns HTML that needs nothing from outside
 */
export function cardsHtml(cards: readonly Card[], paper: Paper, options: PrintOptions = USUAL_OPTIONS): string {
  return cardsDocument(cards, paper, options).html;
}

/** The same, with its counts. */
export function cardsDocument(
  cards: readonly Card[],
  paper: Paper,
  options: PrintOptions = USUAL_OPTIONS,
): CardsDocument {
  const pile = cards.flatMap((card, i) =>
    sheetsOf(card, paper, options.type).map((sheet) => ({
      card,
      sheet,
      opens: sheet.number === 1 && card.identity.outing !== cards[i - 1]?.identity.outing,
    })),
  );
  const places = impose(pile.length, paper, options.backs);
  const sides = pile.flatMap((one) => (options.backs ? [one, one] : [one]));
  const sheets = sides.map(({ card, sheet, opens }, i) => {
    const place = places[i] ?? { row: 1, column: 1, back: false };
    const view = place.back ? backView(card, sheet) : sheetView(card, sheet, opens, paper, options);
    return { ...view, ...placeView(place, paper) };
  });
  const title = documentTitle(cards);
  const body = render('cards/cards', {
    title,
    style: '/*style*/',
    classes: `paper-${paper} type-${options.type} hand-${options.hand}${options.night ? ' night' : ''}`,
    variables: variablesOf(paper, options.type),
    twoUp: SHEETS[paper].perPage === 2,
    sheets,
  });
  const style = `${cardFonts(body)}\n${pageRule(paper)}\n${readFileSync(PAPER_CSS, 'utf8')}`;
  return {
    html: body.replace('/*style*/', () => style),
    sheets: pile.length,
    pages: Math.max(0, ...places.map((place) => place.row)),
  };
}

function documentTitle(cards: readonly Card[]): string {
  const first = cards[0];
  if (!first) return 'No cards';
  const { registration, revision } = first.identity;
  const outings = new Set(cards.map((card) => card.identity.outing));
  const what = cards.length === 1 ? first.title : outings.size === 1 ? first.identity.outing : `${cards.length} cards`;
  return `${registration} ${what}, ${revision}`;
}

function backView(card: Card, sheet: Sheet) {
  const { registration, airplane, place, revision, printed } = card.identity;
  return {
    template: 'cards/_back',
    card: card.id,
    registration,
    airplane,
    number: sheet.number,
    outingPlace: place,
    title: card.title,
    revision,
    printed,
  };
}

function placeView({ row, column }: Place, paper: Paper) {
  const cut = SHEETS[paper].perPage === 2 && column === 1 ? ' cut-right' : '';
  return { place: `grid-row:${row};grid-column:${column}`, side: `${column === 1 ? 'opens-page' : ''}${cut}` };
}

function pageRule(paper: Paper): string {
  const { width, height, perPage } = SHEETS[paper];
  return `@page{size:${mm(width * perPage)} ${mm(height)};margin:0}`;
}

function variablesOf(paper: Paper, type: TypeSize): string {
  const size = SHEETS[paper];
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const { clip, foot, boxHeight, boxThreeDigits, gap, stopBorder, stopPadding, stepNumber, stepGap, tick, tickGap } =
    MEASURES_MM;
  const variables: Record<string, string> = {
    'per-page': String(size.perPage),
    'sheet-width': mm(size.width),
    'sheet-height': mm(size.height),
    content: mm(size.content),
    outer: mm(size.width - size.content - size.binding),
    clip: mm(clip),
    'foot-margin': mm(foot),
    'title-block': mm(titleBlock(type)),
    'box-height': mm(boxHeight),
    'box-three': mm(boxThreeDigits),
    gap: mm(gap),
    'stop-border': mm(stopBorder),
    'stop-padding': mm(stopPadding),
    'step-number': mm(stepNumber),
    'step-gap': mm(stepGap),
    'tick-indent': mm(tick + tickGap),
    'strip-row': mm(pitch.small + pitch.body + 1.2),
    'identity-pitch': mm((clip - 3.4 - 0.6) / 2),
    small: `${scale.small}pt`,
    note: `${scale.note}pt`,
    body: `${scale.body}pt`,
    number: `${scale.number}pt`,
    title: `${scale.title}pt`,
    'long-title': `${scale.longTitle}pt`,
    'small-pitch': mm(pitch.small),
    'note-pitch': mm(pitch.note),
    'body-pitch': mm(pitch.body),
    'number-pitch': mm(pitch.number),
    'title-pitch': mm(pitch.title),
    'long-title-pitch': mm(pitch.longTitle),
  };
  return Object.entries(variables)
    .map(([name, value]) => `--${name}:${value}`)
    .join(';');
}

function mm(value: number): string {
  return `${Number(value.toFixed(3))}mm`;
}
