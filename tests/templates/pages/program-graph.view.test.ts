import { describe, expect, it } from 'vitest';
import { planProgram, programGraph, testsInOrder } from '../../../analysis/program/index.ts';
import { bandsOf } from '../../../templates/pages/graph-bands.ts';
import { GRAPH, layOutGraph } from '../../../templates/pages/graph-layout.ts';
import { type GraphQuery, programGraphPage, programGraphView } from '../../../templates/pages/program-graph.view.ts';
import { renderPage } from '../../../templates/pages/render-page.ts';
import { USUAL_UNITS } from '../../../templates/words/unit-shown.ts';
import { demo } from '../../analysis/demo-airplanes.ts';

const OUZEL = planProgram(demo('ouzel'));
const WRENLET = planProgram(demo('wrenlet'));
const CONTEXT = {
  book: { id: 'ouzel', name: 'Ouzel', registration: '0X-OZL', invented: true },
  units: USUAL_UNITS,
  zone: 'UTC',
};

const pageOf = (query: GraphQuery, program = OUZEL) => programGraphPage(program, [], query, CONTEXT);
const boxesOf = (view: ReturnType<typeof pageOf>) => view.drawing.strips.flatMap((strip) => strip.boxes);
const titled = (view: ReturnType<typeof pageOf>) => boxesOf(view).filter((box) => box.lines.length > 0);

describe('the program drawn', () => {
  it.each([
    ['Ouzel', OUZEL],
    ['Wrenlet', WRENLET],
  ])('shows each test of %s once, as a link, in the order of the program', (_, program) => {
    const boxes = boxesOf(pageOf({ titles: 'all' }, program));
    const order = testsInOrder(program).map((test) => test.id);
    expect(boxes.map((box) => box.id).sort()).toEqual([...order].sort());
    for (const strip of pageOf({}, program).drawing.strips) {
      const numbers = strip.boxes.map((box) => box.number);
      expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    }
  });

  it('writes every title out in full when asked', () => {
    const view = pageOf({ titles: 'all' });
    const written = new Map(boxesOf(view).map((box) => [box.id, box.lines.map((line) => line.text).join(' ')]));
    for (const test of testsInOrder(OUZEL)) expect(written.get(test.id)).toBe(test.title);
  });

  it('draws all gates as bars, each once', () => {
    const bars = pageOf({}).drawing.strips.flatMap((strip) => strip.bars.map((bar) => bar.text));
    expect(bars).toEqual(OUZEL.gates.map((gate) => `Gate ${gate.id}: ${gate.title}`));
  });

  it('parts a stage at the gate inside it: what the gate holds stands below its bar', () => {
    const bands = bandsOf(OUZEL, programGraph(OUZEL));
    const below = bands.find((band) => band.id === 'envelope-E')?.tests.map((test) => test.id);
    expect(below).toContain('speed-expansion');
    expect(bands.find((band) => band.id === 'envelope')?.tests.map((test) => test.id)).toContain('stall-clean');
  });

  it('titles what a filter takes, and the test chosen with its neighbours', () => {
    const cooling = titled(pageOf({ system: 'cooling' })).map((box) => box.id);
    const wanted = testsInOrder(OUZEL).filter((test) => test.system === 'cooling');
    expect(cooling.sort()).toEqual(wanted.map((test) => test.id).sort());
    expect(pageOf({ system: 'cooling' }).rows).toHaveLength(wanted.length);
    const view = pageOf({ test: 'stall-clean' });
    expect(titled(view).map((box) => box.id)).toEqual(
      expect.arrayContaining(['stall-clean', ...(programGraph(OUZEL).needs.get('stall-clean') ?? [])]),
    );
  });

  it('tells the chain by the kind of each box, and the chosen one in words', () => {
    const view = pageOf({ test: 'first-flight' });
    const kinds = new Map(boxesOf(view).map((box) => [box.id, box.kind]));
    expect(kinds.get('first-flight')).toBe('chosen');
    expect(kinds.get('taxi-slow')).toBe('before');
    expect(kinds.get('stall-clean')).toBe('after');
    expect(view.chosen?.gate?.text).toMatch(/^Gate C/);
    expect(view.chosen?.because).not.toBe('');
    expect(view.chosen?.why).not.toBe('');
  });

  it('chooses nothing for a name the program does not know', () => {
    const view = pageOf({ test: 'no-such-test', stage: 'no-such-stage' });
    expect(view.chosen).toBeNull();
    expect(view.rows).toEqual([]);
    expect(renderPage('program-graph', programGraphView, view)).toContain('0 of 142 chosen');
  });
});

describe('the layout', () => {
  it.each([{}, { titles: 'all' }, { system: 'fuel', test: 'unusable-fuel-ground' }])(
    'keeps boxes apart, inside its width, and large enough to touch: %o',
    (query) => {
      const boxes = boxesOf(pageOf(query)).map((box) => ({
        id: box.id,
        left: Number(box.x),
        right: Number(box.x) + Number(box.width),
        top: Number(box.y),
        bottom: Number(box.y) + Number(box.height),
      }));
      for (const [i, one] of boxes.entries()) {
        expect(Math.min(one.right - one.left, one.bottom - one.top)).toBeGreaterThanOrEqual(44);
        expect(one.left).toBeGreaterThanOrEqual(GRAPH.margin);
        expect(one.right).toBeLessThanOrEqual(GRAPH.width - GRAPH.margin);
        for (const other of boxes.slice(i + 1)) {
          const apart =
            one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top;
          expect(apart, `${one.id} and ${other.id}`).toBe(true);
        }
      }
    },
  );

  it('is parted only between boxes', () => {
    const item = (id: string, position: number) => ({ id, title: `Test ${id}`, titled: true, position });
    const { boxes, cuts } = layOutGraph([
      {
        id: 'one',
        title: 'One',
        gate: '',
        layers: [[item('a', 1), item('b', 2), item('c', 3), item('d', 4)], [item('e', 5)]],
      },
      { id: 'two', title: 'Two', gate: 'Gate', layers: [[item('f', 6)]] },
    ]);
    for (const cut of cuts) {
      for (const box of boxes.values()) expect(cut <= box.top || cut >= box.top + box.height).toBe(true);
    }
    expect(boxes.get('d')?.top).toBeGreaterThan(boxes.get('a')?.top ?? Infinity);
  });
});
