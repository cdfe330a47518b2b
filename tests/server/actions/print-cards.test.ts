import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readAirplane } from '../../../analysis/airplane/index.ts';
import { previewCards, printCards } from '../../../server/actions/print-cards.ts';

const { airplane } = readAirplane(JSON.parse(readFileSync('sample-tests/wrenlet/airplane.json', 'utf8')));
if (!airplane) throw new Error('the demo airplane does not fit its schema');

const base = { airplane, revision: 3, paper: 'a5' as const, day: new Date('2031-05-04T12:00:00Z') };

describe('cards of a program', () => {
  test('all of them: every part of every outing, with outing and place on each', async () => {
    const { cards, html, sheets, pages } = await previewCards({ ...base, selection: { kind: 'all' } });
    expect(cards.length).toBeGreaterThan(100);
    expect(html.match(/<article/g)).toHaveLength(sheets);
    expect(pages).toBe(sheets);
    expect(cards[0]?.identity).toMatchObject({ revision: 'rev 3', printed: '4 May 2031', outing: 'Shop day 1' });
  });

  test('one flight, one stage, one card', async () => {
    const flight = await previewCards({ ...base, selection: { kind: 'flight', number: 1 } });
    expect(flight.cards.map((card) => card.id)).toEqual(['first-flight']);
    const stage = await previewCards({ ...base, selection: { kind: 'stage', stage: 'taxi' } });
    expect(new Set(stage.cards.map((card) => card.stage))).toEqual(new Set(['taxi']));
    const card = await previewCards({ ...base, selection: { kind: 'card', id: 'stall-clean' } });
    expect(card.cards).toHaveLength(1);
  });

  test('a packet holds the briefing, the cards and both sheets', async () => {
    const { html, cards } = await previewCards({ ...base, selection: { kind: 'flight', number: 1 }, packet: true });
    expect(cards.map((card) => card.id)).toEqual(['first-flight']);
    for (const page of ['briefing', 'emergency', 'return']) expect(html).toContain(`data-page="${page}"`);
  });

  test('what is not there is said in words', async () => {
    const wrong = [
      { selection: { kind: 'card', id: 'gear-swing-normal' } as const, says: /no card for the test gear-swing-normal/ },
      { selection: { kind: 'flight', number: 99 } as const, says: /no card for flight 99/ },
      { selection: { kind: 'all' } as const, packet: true, says: /of one flight or one outing/ },
    ];
    for (const { says, ...input } of wrong) await expect(previewCards({ ...base, ...input })).rejects.toThrow(says);
  });

  test('a cancelled print is not started', async () => {
    const stop = new AbortController();
    stop.abort(new Error('cancelled'));
    const unused = { printHtml: () => Promise.reject(new Error('printed')), close: async () => undefined };
    const printing = printCards({ ...base, selection: { kind: 'flight', number: 1 } }, { signal: stop.signal }, unused);
    await expect(printing).rejects.toThrow('cancelled');
  });
});
