/** The drawing of a program's graph as strips of SVG: boxes, lines between them, bars, each ready to print. */
import * as z from 'zod';
import type { Program, ProgramGraph, ProgramTest } from '../../analysis/program/index.ts';
import { count } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { type Band, bandsOf } from './graph-bands.ts';
import { type Box, GRAPH, layOutGraph, type PlacedBand, widthOf } from './graph-layout.ts';
import { type GraphChoice, LINE_KINDS, linesOf, show } from './graph-lines.ts';

const px = z.string();

export const graphDrawingPart = z.strictObject({
  width: z.int(),
  strips: z.array(
    z.strictObject({
      view: z.string(),
      height: px,
      grounds: z.array(z.strictObject({ y: px, height: px, width: px })),
      lines: z.array(
        z.strictObject({
          kind: z.enum(LINE_KINDS),
          path: z.string(),
          tip: z.string(),
        }),
      ),
      bars: z.array(z.strictObject({ y: px, text: z.string(), textY: px, from: px, href: z.string(), hitY: px })),
      heads: z.array(
        z.strictObject({
          id: z.string(),
          y: px,
          hitY: px,
          title: z.string(),
          about: z.string(),
          href: z.string(),
        }),
      ),
      boxes: z.array(
        z.strictObject({
          id: z.string(),
          href: z.string(),
          label: z.string(),
          kind: z.enum(['chosen', 'before', 'after', 'beside', 'plain']),
          isChosen: z.boolean(),
          /** ids the arrow keys lead to */
          up: z.string(),
          down: z.string(),
          x: px,
          y: px,
          width: px,
          height: px,
          number: z.int(),
          numberX: px,
          numberY: px,
          shape: outcomePart,
          shapeX: px,
          shapeY: px,
          textX: px,
          lines: z.array(z.strictObject({ y: px, text: z.string() })),
        }),
      ),
    }),
  ),
});
export type GraphDrawing = z.infer<typeof graphDrawingPart>;
type Strip = GraphDrawing['strips'][number];

/**
 * The drawing.
 * @param program the program
 * @param graph its graph
 * @param choice what is titled and what is chosen
 * @returns strips from top to bottom
 */
export function graphDrawing(program: Program, graph: ProgramGraph, choice: GraphChoice): GraphDrawing {
  const bands = bandsOf(program, graph);
  const titles = new Map(bands.flatMap(({ tests }) => tests.map((test) => [test.id, test] as const)));
  const layout = layOutGraph(
    bands.map(({ id, title, layers, gate }) => ({
      id,
      title,
      gate: gate ? `Gate ${gate.id}: ${gate.title}` : '',
      layers: layers.map((layer) => layer.map(item)),
    })),
  );
  function item(id: string) {
    const test = titles.get(id);
    return { id, title: test?.title ?? id, titled: choice.titled.has(id), position: test?.position ?? 0 };
  }
  const lines = linesOf(graph, layout, choice, titles);
  const tests = [...titles.values()].sort((a, b) => a.position - b.position);
  return {
    width: GRAPH.width,
    strips: layout.cuts.slice(0, -1).map((from, i): Strip => {
      const to = layout.cuts[i + 1] ?? layout.height;
      const within = (y: number) => y >= from && y < to;
      const placed = layout.bands.filter((band) => band.top < to && band.top + band.height > from);
      return {
        view: `0 ${show(from)} ${GRAPH.width} ${show(to - from)}`,
        height: show(to - from),
        grounds: placed.map((band) => ({
          y: show(band.top + 1),
          height: show(band.height - 2),
          width: show(GRAPH.width - 2),
        })),
        lines: lines
          .filter((line) => line.top < to && line.bottom > from)
          .map(({ kind, path, tip }) => ({ kind, path, tip })),
        bars: placed.flatMap((band) => {
          const gate = bands.find((one) => one.id === band.id)?.gate;
          if (band.bar === null || !gate || !within(band.bar)) return [];
          return [barOf(band.bar, `Gate ${gate.id}: ${gate.title}`, choice.gateHref(gate.id))];
        }),
        heads: placed
          .filter((band) => within(band.top))
          .map((band) =>
            headOf(
              band,
              bands.find((one) => one.id === band.id),
              choice,
            ),
          ),
        boxes: tests.flatMap((test) => {
          const box = layout.boxes.get(test.id);
          return box && within(box.top) ? [boxOf(test, box, graph, choice)] : [];
        }),
      };
    }),
  };
}

function barOf(y: number, text: string, href: string) {
  return { y: show(y - 4), text, textY: show(y + 5), from: show(60 + widthOf(text, 15)), href, hitY: show(y - 22) };
}

function headOf(band: PlacedBand, found: Band | undefined, choice: GraphChoice) {
  const tests = found?.tests ?? [];
  const accepted = tests.filter((test) => choice.stateOf(test.id) === 'accepted').length;
  const title = found?.title ?? '';
  const done = accepted === 0 ? '' : `, ${accepted} accepted`;
  return {
    id: `stage-${band.id}`,
    y: show(band.top + 28),
    hitY: show(band.top),
    title,
    about: `${count(tests.length, 'test')}${done}${band.open ? '' : '; show their titles'}`,
    href: choice.stageHref(found?.stage ?? band.id),
  };
}

function boxOf(test: ProgramTest, box: Box, graph: ProgramGraph, choice: GraphChoice): Strip['boxes'][number] {
  const titled = box.lines.length > 0;
  const state = choice.stateOf(test.id);
  const middle = box.top + box.height / 2;
  const first = middle - ((box.lines.length - 1) * GRAPH.line) / 2 + 5;
  return {
    id: test.id,
    href: choice.hrefOf(test.id),
    label: `${test.position} ${test.title}, ${state}`,
    kind: kindOf(test.id, choice),
    isChosen: test.id === choice.chosen,
    up: (graph.needs.get(test.id) ?? []).join(' '),
    down: (graph.unlocks.get(test.id) ?? []).join(' '),
    x: show(box.left),
    y: show(box.top),
    width: show(box.width),
    height: show(box.height),
    number: test.position,
    numberX: show(box.left + GRAPH.touch / 2),
    numberY: show(middle - 1),
    shape: outcomeInWords(state),
    shapeX: show(box.left + GRAPH.touch / 2 - 5),
    shapeY: show(middle + 6),
    textX: show(box.left + GRAPH.textLeft),
    lines: titled ? box.lines.map((text, i) => ({ y: show(first + i * GRAPH.line), text })) : [],
  };
}

function kindOf(id: string, { chosen, chain }: GraphChoice): Strip['boxes'][number]['kind'] {
  if (!chain) return 'plain';
  if (id === chosen) return 'chosen';
  if (chain.before.has(id)) return 'before';
  return chain.after.has(id) ? 'after' : 'beside';
}
