/** A flight packet as one HTML document: briefing, cards, emergency sheet, return sheet. */
import type { Packet, PacketPage, PacketPart, PacketSheet, Paper } from '../../analysis/cards/index.ts';
import {
  ENVELOPE_HEIGHT,
  fitText,
  hasNumber,
  linesIn,
  packetRows,
  packetSheets,
  pitchesOf,
  SHEETS,
  singleBoxWidth,
  TYPE_SCALES,
  textWidth,
  titleBlock,
  words,
} from '../../analysis/cards/index.ts';
import { pileOf } from '../cards/cards.view.ts';
import { lineParts } from '../cards/line.view.ts';
import { type PrintOptions, USUAL_OPTIONS } from '../cards/options.ts';
import { backView, type CardsDocument, type PiledSheet, paperDocument } from '../cards/paper-document.ts';
import { millimetres } from '../cards/readings.view.ts';
import { identityTexts } from '../cards/sheet.view.ts';
import { envelopeView } from './envelope.view.ts';

/**
 * The document of a packet.
 * @param packet briefing, cards and sheets, object
 * @param paper paper form, text
 * @param options the person's choices, object
 * @returns HTML that needs nothing from outside, with its counts
 */
export function packetDocument(packet: Packet, paper: Paper, options: PrintOptions = USUAL_OPTIONS): CardsDocument {
  const { briefing, cards, emergency } = packet;
  const page = (one: PacketPage, opens: boolean) => pagePile(one, opens, paper, options);
  const pile = [
    ...page(briefing, true),
    ...pileOf(cards, paper, options, false),
    ...page(emergency, false),
    ...page(packet.return, false),
  ];
  const { registration, outing, revision } = briefing.identity;
  return paperDocument(pile, `${registration} ${outing}, packet, ${revision}`, paper, options);
}

function pagePile(page: PacketPage, opens: boolean, paper: Paper, options: PrintOptions): PiledSheet[] {
  return packetSheets(page, paper, options.type).map((sheet) => ({
    front: pageView(page, sheet, opens && sheet.number === 1, paper, options),
    back: backView({ id: page.kind, title: page.title, identity: page.identity }, sheet.number, paper, options),
  }));
}

function pageView(page: PacketPage, sheet: PacketSheet, opensOuting: boolean, paper: Paper, options: PrintOptions) {
  const { content } = SHEETS[paper];
  const scale = TYPE_SCALES[options.type];
  const pitch = pitchesOf(options.type);
  const { registration, invented, revision, printed } = page.identity;
  const longTitle = textWidth(page.title, scale.title) > content;
  const title = longTitle ? fitText(page.title, scale.longTitle, content, 2) : page.title;
  const face = (points: number) => ({ words: points, numbers: points });
  const used = longTitle ? linesIn(words(title), face(scale.longTitle), content) * pitch.longTitle : pitch.title;
  const lines = Math.max(1, Math.floor((titleBlock(options.type) - 1.4 - used) / pitch.note));
  return {
    template: 'packet/_page',
    kind: page.kind,
    number: sheet.number,
    of: sheet.of,
    first: sheet.number === 1,
    registration,
    ...identityTexts(page, paper, options),
    invented,
    opensOuting,
    revision,
    printed,
    title,
    longTitle,
    aim: fitText(page.aim, scale.note, content, lines),
    parts: sheet.parts.map((part) => partView(part, content, options)),
  };
}

function partView(part: PacketPart, content: number, options: PrintOptions) {
  const { block, from, to, first } = part;
  const label = first || block.label === '' ? block.label : `${block.label}, continued`;
  switch (block.kind) {
    case 'facts':
    case 'drill':
      return {
        template: `packet/_${block.kind}`,
        label,
        rows: block.rows
          .slice(from, to)
          .map((row) => ({ name: row.name, text: lineParts(row.text), numbers: hasNumber(row.text) })),
      };
    case 'ticks':
      return {
        template: 'cards/_ticks',
        label,
        items: block.items.slice(from, to).map((line) => ({ line: lineParts(line) })),
      };
    case 'list':
      return {
        template: 'packet/_list',
        label,
        items: block.items.slice(from, to).map((line) => ({ line: lineParts(line) })),
      };
    case 'boxes': {
      const rows = packetRows(block, content, options.type).filter((row) => row.from >= from && row.to <= to);
      return {
        template: 'packet/_labelled-boxes',
        label,
        rows: rows.map((row) => ({
          height: millimetres(row.height),
          boxes: block.boxes.slice(row.from, row.to).map((box) => ({
            key: box.key,
            label: box.label,
            unit: box.unit,
            write: box.write,
            wide: box.write === 'words',
            size: box.write === 'words' ? '' : `width:${millimetres(singleBoxWidth(box, options.type))}mm`,
            text: '',
            mark: '',
            source: '',
          })),
        })),
      };
    }
    case 'lines':
      return { template: 'packet/_lines', label, lines: Array.from({ length: to - from }, () => ({})) };
    case 'envelope':
      return envelopeView(block.figure, content, ENVELOPE_HEIGHT);
  }
}
