import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Airplane, readAirplane } from '../../../analysis/airplane/index.ts';
import {
  PAPERS,
  type PacketPage,
  packetOf,
  packetSheets,
  plainText,
  selectionOf,
  TYPES,
} from '../../../analysis/cards/index.ts';
import { planProgram } from '../../../analysis/program/index.ts';

function airplane(name: string): Airplane {
  const { airplane: read, problems } = readAirplane(
    JSON.parse(readFileSync(`sample-tests/${name}/airplane.json`, 'utf8')),
  );
  if (!read) throw new Error(problems.map((one) => one.message).join('\n'));
  return read;
}

const ouzel = airplane('ouzel');
const program = planProgram(ouzel);
const printed = { revision: 'rev 7', printed: '4 May 2031' };

function packet(number: number, of = ouzel) {
  const found = packetOf({ airplane: of, program: planProgram(of), selection: { kind: 'flight', number }, ...printed });
  if (!found) throw new Error(`no flight ${number}`);
  return found;
}

const said = (page: PacketPage) =>
  page.blocks
    .flatMap((block) => {
      if (block.kind === 'facts' || block.kind === 'drill')
        return block.rows.map((row) => `${row.name}: ${plainText(row.text)}`);
      if (block.kind === 'ticks' || block.kind === 'list') return block.items.map(plainText);
      return [];
    })
    .join('\n');

describe('the briefing of a flight', () => {
  const { briefing, cards } = packet(5);

  test('names its cards in order', () => {
    const text = said(briefing);
    const at = cards.map((card) => text.indexOf(card.title));
    expect(at.every((place) => place >= 0)).toBe(true);
    expect([...at].sort((a, b) => a - b)).toEqual(at);
  });

  test('draws the loading that the program worked out, in the airplane’s units', () => {
    const outing = program.outings.find((one) => one.flight === 5);
    const figure = briefing.blocks.find((block) => block.kind === 'envelope')?.figure;
    // both in kg and m: the same numbers
    expect(figure?.points[0]?.mass).toBeCloseTo(outing?.loading?.takeoff?.mass ?? Number.NaN, 6);
    expect(figure?.points[1]?.arm).toBeCloseTo(outing?.loading?.landing?.arm ?? Number.NaN, 6);
    expect(figure?.corners).toHaveLength(ouzel.loading.envelope.length);
  });

  test('says the fuel at which the flight ends, and what must be left', () => {
    expect(said(briefing)).toMatch(/Bingo: turn for the field at 35 L/);
    expect(said(briefing)).toMatch(/At landing: at least \d+ L/);
  });

  test('every stop of its cards is among what would make us stop', () => {
    for (const item of cards.flatMap((card) => card.stop.items)) {
      expect(said(briefing).toLowerCase()).toContain(plainText(item.line).toLowerCase());
    }
  });

  test('an airplane without weights is told so, and gets no drawing', () => {
    const bare = { ...ouzel, loading: { ...ouzel.loading, empty: undefined } };
    const { briefing: page } = packet(5, bare);
    expect(page.blocks.some((block) => block.kind === 'envelope')).toBe(false);
    expect(said(page)).toMatch(/not worked out/);
  });
});

describe('the emergency sheet', () => {
  test('has the airplane’s own numbers, and only the drills it can need', () => {
    const text = said(packet(5).emergency);
    expect(text).toMatch(/85 KIAS est\./);
    expect(text).toMatch(/112 °C/);
    expect(text).toMatch(/Gear not down: below 100 KIAS/);
    const simple = said(packet(1, airplane('wrenlet')).emergency);
    expect(simple).not.toMatch(/Gear|lane|Trim runs|door open|canopy/);
  });

  test('a number that is missing is said to be missing', () => {
    const { bestGlide: _, ...speeds } = ouzel.speeds;
    expect(said(packet(5, { ...ouzel, speeds }).emergency)).toMatch(/\[missing\] KIAS/);
  });

  test('stands on one sheet', () => {
    for (const paper of PAPERS) expect(packetSheets(packet(5).emergency, paper, 'normal')).toHaveLength(1);
  });
});

test('every row of every page is printed once, on any paper at any type size', () => {
  for (const page of [packet(5).briefing, packet(5).emergency, packet(5).return]) {
    for (const paper of PAPERS) {
      for (const type of TYPES) {
        const parts = packetSheets(page, paper, type).flatMap((sheet) => sheet.parts);
        for (const block of page.blocks) {
          const spans = parts.filter((part) => part.block === block);
          const count = block.kind === 'facts' || block.kind === 'drill' ? block.rows.length : null;
          if (count !== null) expect(spans.reduce((sum, part) => sum + part.to - part.from, 0)).toBe(count);
          expect(spans.length).toBeGreaterThan(0);
        }
      }
    }
  }
});

test('a selection is read from its words', () => {
  expect(selectionOf('all')).toEqual({ kind: 'all' });
  expect(selectionOf('flight 6')).toEqual({ kind: 'flight', number: 6 });
  expect(selectionOf('stage envelope')).toEqual({ kind: 'stage', stage: 'envelope' });
  expect(selectionOf('card stall-clean')).toEqual({ kind: 'card', id: 'stall-clean' });
  for (const wrong of ['', 'flight', 'flight six', 'stage nowhere', 'flight -1', 'everything']) {
    expect(selectionOf(wrong)).toBeNull();
  }
});
