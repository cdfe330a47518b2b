/** A pile of sheets as one HTML document on a paper form: the same for the preview on screen and for paper. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Card, Paper, TypeSize } from '../../analysis/cards/index.ts';
import {
  fitText,
  MEASURES_MM,
  pitchesOf,
  SHEETS,
  TYPE_SCALES,
  textWidth,
  titleBlock,
} from '../../analysis/cards/index.ts';
import { render } from '../render.ts';
import { cardFonts } from '../style/card-fonts.ts';
import { impose, type Place } from './impose.ts';
import type { PrintOptions } from './options.ts';
import { identityTexts } from './sheet.view.ts';

const PAPER_CSS = join(import.meta.dirname, '..', 'style', 'paper.css');

/** One sheet of the pile: the view of its front, and what stands on its back. */
export interface PiledSheet {
  front: { template: string } & Record<string, unknown>;
  back: BackView;
}

export interface BackView {
  card: string;
  number: number;
  registration: string;
  airplane: string;
  about: string;
  revision: string;
  printed: string;
}

/**
 * What stands on the back of a sheet: whose it is, and room for notes.
 * @param of what the sheet belongs to, object
 * @param number of the sheet, count
 * @returns view of cards/_back, without its place
 */
export function backView(
  of: { id: string; title: string; identity: Card['identity'] },
  number: number,
  paper: Paper,
  options: PrintOptions,
): BackView {
  const { registration, place, revision, printed } = of.identity;
  const { small } = TYPE_SCALES[options.type];
  const { content } = SHEETS[paper];
  const right = textWidth(`${revision} · ${printed}`, small) + 6;
  return {
    card: of.id,
    number,
    registration,
    airplane: identityTexts({ identity: { ...of.identity, invented: false } }, paper, options).airplane,
    about: fitText(`${place} · ${of.title}`, small, content - right),
    revision,
    printed,
  };
}

export interface CardsDocument {
  html: string;
  sheets: number;
  pages: number;
}

/**
 * The document of a pile.
 * @param pile sheets in the order they are read
 * @param title of the document, text
 * @param paper paper form, text
 * @param options the person's choices, object
 * @returns HTML that needs nothing from outside, with its counts
 */
export function paperDocument(
  pile: readonly PiledSheet[],
  title: string,
  paper: Paper,
  options: PrintOptions,
): CardsDocument {
  const places = impose(pile.length, paper, options.backs);
  const sides = pile.flatMap(({ front, back }) =>
    options.backs ? [front, { template: 'cards/_back', ...back }] : [front],
  );
  const sheets = sides.map((view, i) => ({
    ...view,
    ...placeView(places[i] ?? { row: 1, column: 1, back: false }, paper),
  }));
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
