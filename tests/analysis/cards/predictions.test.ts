/** From an accepted result to the bands on the next card; what is not measured is said, what is designed is marked. */
import { describe, expect, test } from 'vitest';
import {
  type BoxReading,
  type Card,
  cardsOfProgram,
  changedSince,
  fillCard,
  pointsOfCard,
} from '../../../analysis/cards/index.ts';
import { type AcceptedResult, testOf } from '../../../analysis/catalogue/index.ts';
import { planProgram } from '../../../analysis/program/index.ts';
import { reductionOf } from '../../../analysis/reductions/index.ts';
import { demoAirplane } from '../../print/demo-cards.ts';
import { box, CALM_DAY, cardPoints, KNOT } from '../reductions/airspeed/card.ts';

const ouzel = demoAirplane('ouzel');
const program = planProgram(ouzel);

function cardsOf(id: string, results: readonly AcceptedResult[]): Card {
  const selection = { kind: 'card', id } as const;
  const cards = cardsOfProgram({
    airplane: ouzel,
    program,
    selection,
    revision: 'rev 7',
    printed: '',
    known: { results },
  });
  const card = cards.at(-1);
  if (!card) throw new Error(`no card ${id}`);
  return card;
}

/** A hold of half an hour as a first-order rise to 101 °C, all of it above the thermostat, written on the card of the fan hold and reduced. */
const truth = (minute: number) => 101 - 6 * Math.exp(-minute / 8);
function heldResult(): AcceptedResult {
  const found = testOf('ground-cooling-fan-hold');
  if (!found) throw new Error('no such test');
  const place = { outing: '', place: '', revision: '', printed: '' };
  const blank = fillCard({ test: found, airplane: ouzel, place });
  const readings: BoxReading[] = [
    ['engine-speed-held', 1400],
    ['outside-air-start', 18],
    ['outside-air-end', 18],
    ...[0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30].map(
      (minute, i) => [`t1.${i + 1}-${minute}.coolant-out`, Number(truth(minute).toFixed(1))] as const,
    ),
  ].map(([key, value]) => ({ key: String(key), text: String(value), value: Number(value), source: '' }));
  const [set] = pointsOfCard(blank, readings, 'cooling-ground', ouzel);
  const points = { kind: 'cooling-ground', points: set?.points.map((one) => one.point) };
  const result = reductionOf('cooling-ground')?.reduce({ points, airplane: ouzel });
  if (!result) throw new Error('no reduction');
  return { kind: 'cooling-ground', result, name: 'result 2' };
}

describe('a ground run', () => {
  const card = cardsOf('ground-cooling-fan-hold', [heldResult()]);

  test('is predicted at the minutes of its table, with bands that hold the truth it was reduced from', () => {
    const rows = card.tables[0]?.rows ?? [];
    const expected = rows.map((row) => row.cells['coolant-out']?.expect ?? null);
    // the start is where the run is begun, not predicted
    expect(expected[0]).toBeNull();
    for (const [i, minute] of [3, 6, 9, 12, 15, 18, 21, 24, 27, 30].entries()) {
      const band = expected[i + 1];
      expect(band?.low, `${minute} min`).toBeLessThan(truth(minute));
      expect(band?.high, `${minute} min`).toBeGreaterThan(truth(minute));
    }
    expect(card.expectNote).toBe(
      'Expect: result 2, fan on: at 1400 rpm from 97 °C in air of 18 °C. No prediction: after 10 min idle: fan off: its door and fan were not held long enough before',
    );
    expect(card.stop.band).toMatch(/outside the band twice/);
  });

  test('and minute by minute, to be watched', () => {
    const [ahead] = card.ahead;
    expect(ahead?.title).toBe('fan on: min and coolant °C, minute by minute');
    expect(ahead?.rows.map((row) => row.head)).toEqual(Array.from({ length: 30 }, (_, i) => String(i + 1)));
    expect(ahead?.rows.every((row) => /^[\d.]+ (±|to) [\d.]+$/.test(row.text))).toBe(true);
  });

  test('never held is a first measurement; held in another way is said', () => {
    expect(cardsOf('ground-cooling-fan-hold', []).expectNote).toMatch(/first measurement/);
    // the warm-up runs with the fan off, which was never held
    expect(cardsOf('coolant-warm-up-thermostat', [heldResult()]).expectNote).toMatch(/no prediction: .*not held/);
  });
});

describe('an airspeed calibration', () => {
  const legs = [65, 80, 97, 114, 132, 150].flatMap((kias, s) => box(kias * KNOT, [20, 110, 200, 290], s * 8));
  const result = reductionOf('airspeed')?.reduce({ points: cardPoints(legs), airplane: ouzel });
  if (!result) throw new Error('no reduction');

  test('stands in a line, readings to calibrated airspeeds, with bands that hold the truth', () => {
    const { expectNote } = cardsOf('airspeed-calibration-full', [{ kind: 'airspeed', result, name: 'result 3' }]);
    const said = [...expectNote.matchAll(/(\d+) KIAS is ([\d.]+) ± ([\d.]+) KCAS/g)].map((one) =>
      one.slice(1).map(Number),
    );
    expect(said.length).toBeGreaterThanOrEqual(3);
    for (const [kias = 0, kcas = 0, half = 0] of said) {
      const calibrated = kias + CALM_DAY.correction(kias * KNOT) / KNOT;
      // the band, and half a knot each of the two printed whole; Ouzel's probe reads static air as warmed: 1 kt at 150
      expect(Math.abs(calibrated - kcas)).toBeLessThan(half + 1.5);
    }
  });

  test('a refused result predicts nothing', () => {
    const refused = { ...result, status: 'refused' as const };
    const card = cardsOf('airspeed-calibration-full', [{ kind: 'airspeed', result: refused }]);
    expect(card.expectNote).toMatch(/first measurement/);
  });
});

describe('figures of the design', () => {
  test('stand beside what will measure them, marked, and nothing is held against them', () => {
    const card = cardsOf('stall-clean', []);
    const lowest = card.tables[0]?.columns.find((column) => column.label === 'lowest speed');
    expect(lowest?.expect).toMatchObject({ text: '58 est.', low: null, high: null });
    expect(card.expectNote).toBe('Expect: est. is a design figure, not measured');
    expect(card.stop.band).toBe('');
  });

  test('give way once they are measured', () => {
    const { stallClean } = ouzel.speeds;
    if (!stallClean) throw new Error('no such speed');
    const airplane = {
      ...ouzel,
      speeds: { ...ouzel.speeds, stallClean: { ...stallClean, status: 'measured' as const } },
    };
    const selection = { kind: 'card', id: 'stall-clean' } as const;
    const [card] = cardsOfProgram({ airplane, program, selection, revision: '', printed: '' });
    expect(card?.tables[0]?.columns.every((column) => column.expect === null)).toBe(true);
  });
});

test('a printed card is told from one that would be printed now by its numbers, not by its day', () => {
  const before = cardsOf('ground-cooling-fan-hold', []);
  const after = cardsOf('ground-cooling-fan-hold', [heldResult()]);
  expect(changedSince(before, { ...before, identity: { ...before.identity, printed: 'today' } })).toEqual([]);
  expect(changedSince(before, after)).toEqual(['the prediction has changed']);
  const hotter = { ...before, stop: { ...before.stop, items: before.stop.items.slice(1) } };
  expect(changedSince(before, hotter)).toEqual(['the stop numbers have changed']);
});
