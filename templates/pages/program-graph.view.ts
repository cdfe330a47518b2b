/** The program drawn: tests between gates, what leads to the one chosen and what it leads to, and the same in words. */
import * as z from 'zod';
import {
  type Chain,
  chainOf,
  gateHolding,
  type Program,
  type ProgramGraph,
  type ProgramTest,
  programGraph,
  testsInOrder,
} from '../../analysis/program/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { count } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { graphDrawing, graphDrawingPart } from './graph-drawing.ts';
import type { KeptStatus, PageContext } from './kept.ts';
import { outingName, outingPath } from './outing-words.ts';
import { filterChoices, filterPart, filterTakes, type ProgramFilter } from './program-filter.ts';
import { testPath } from './test.view.ts';

const link = z.strictObject({ text: z.string(), href: z.string() });
const linked = z.strictObject({ text: z.string(), href: z.string(), status: outcomePart });

export const programGraphView = z.strictObject({
  frame: framePart,
  summary: z.string(),
  filters: z.array(filterPart),
  /** kept in the form while the choice of tests changes */
  test: z.string(),
  whole: z.boolean(),
  filtered: z.string(),
  list: z.string(),
  drawing: graphDrawingPart,
  chosen: z
    .strictObject({
      title: z.string(),
      href: z.string(),
      status: outcomePart,
      purpose: z.string(),
      because: z.string(),
      why: z.string(),
      needs: z.array(linked),
      unlocks: z.array(linked),
      chain: z.string(),
      gate: link.nullable(),
      outing: link.nullable(),
      card: z.string(),
      clear: z.string(),
    })
    .nullable(),
  rows: z.array(
    z.strictObject({
      position: z.int(),
      title: z.string(),
      href: z.string(),
      stage: z.string(),
      needs: z.string(),
      unlocks: z.string(),
      status: outcomePart,
    }),
  ),
});
export type ProgramGraphView = z.infer<typeof programGraphView>;

export interface GraphQuery extends ProgramFilter {
  /** the test whose chain is shown */
  test?: string | undefined;
  /** 'all' writes every title out */
  titles?: string | undefined;
}

/** The graph of the program. */
export function programGraphPage(
  program: Program,
  status: readonly KeptStatus[],
  query: GraphQuery,
  { book }: PageContext,
): ProgramGraphView {
  const graph = programGraph(program);
  const tests = testsInOrder(program);
  const states = new Map(status.map((one) => [one.test, one.status]));
  const stateOf = (id: string) => states.get(id) ?? 'planned';
  const chosen = tests.find((test) => test.id === query.test);
  const chain = chosen ? chainOf(graph, chosen.id) : null;
  const isFiltered = Boolean(query.stage || query.system || query.status);
  const taken = tests.filter((test) => filterTakes(query, test, stateOf(test.id)));
  const titled = new Set([
    ...(query.titles === 'all' ? tests : isFiltered ? taken : chosen ? [] : nextStage(program, stateOf)).map(
      (test) => test.id,
    ),
    ...(chosen ? [chosen.id, ...(graph.needs.get(chosen.id) ?? []), ...(graph.unlocks.get(chosen.id) ?? [])] : []),
  ]);
  const hrefOf = (id: string) => `${graphPath(book.id, { ...query, test: id })}#${id}`;
  const at: Placed = { tests, graph, stateOf, hrefOf };
  return {
    frame: frameOf('The program drawn', {
      question: 'What leads to a test, and what waits for it?',
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
      modules: ['page-graph'],
    }),
    summary: `${count(tests.length, 'test')}, from top to bottom; a line runs from a test to one that waits for it. ${count(program.gates.length, 'gate')} stand across as bars.`,
    filters: filterChoices(program, query),
    test: chosen?.id ?? '',
    whole: query.titles === 'all',
    filtered: isFiltered ? `${taken.length} of ${tests.length} chosen; they stand with their titles.` : '',
    list: bookPath(book.id, '/program'),
    drawing: graphDrawing(program, graph, {
      titled,
      chosen: chosen?.id ?? null,
      chain,
      stateOf,
      hrefOf,
      stageHref: (stage) => `${graphPath(book.id, { stage })}#stage-${stage}`,
      gateHref: (gate) => bookPath(book.id, `/gates/${gate}`),
    }),
    chosen: chosen && chain ? chosenPart(chosen, chain, program, at, { book: book.id, query }) : null,
    rows: taken.map((test) => rowOf(test, program, at)),
  };
}

interface Placed {
  tests: readonly ProgramTest[];
  graph: ProgramGraph;
  stateOf(id: string): string;
  hrefOf(id: string): string;
}

/** The stage of the first test that is not accepted: its titles are what a person comes for. */
function nextStage(program: Program, stateOf: (id: string) => string): ProgramTest[] {
  const next = testsInOrder(program).find((test) => stateOf(test.id) !== 'accepted');
  return program.stages.find((stage) => stage.stage === next?.stage)?.tests ?? [];
}

function chosenPart(
  test: ProgramTest,
  chain: Chain,
  program: Program,
  { tests, graph, stateOf, hrefOf }: Placed,
  { book, query }: { book: string; query: GraphQuery },
): NonNullable<ProgramGraphView['chosen']> {
  const named = (ids: readonly string[] = []) =>
    tests
      .filter((one) => ids.includes(one.id))
      .map((one) => ({
        text: `${one.position}. ${one.title}`,
        href: hrefOf(one.id),
        status: outcomeInWords(stateOf(one.id)),
      }));
  const gate = gateHolding(test, program);
  const outing = program.outings.find((one) => one.number === test.outing);
  return {
    title: `${test.position}. ${test.title}`,
    href: testPath(book, test.id),
    status: outcomeInWords(stateOf(test.id)),
    purpose: test.purpose,
    because: test.because,
    why: test.why,
    needs: named(graph.needs.get(test.id)),
    unlocks: named(graph.unlocks.get(test.id)),
    chain: `Counting through others, ${count(chain.before.size, 'test')} come before it and ${count(chain.after.size, 'test')} after it.`,
    gate: gate ? { text: `Gate ${gate.id}: ${gate.title}`, href: bookPath(book, `/gates/${gate.id}`) } : null,
    outing: outing ? { text: outingName(outing, program), href: outingPath(book, outing.number) } : null,
    card: bookPath(book, `/cards?test=${encodeURIComponent(test.id)}`),
    clear: graphPath(book, { ...query, test: undefined }),
  };
}

function rowOf(test: ProgramTest, program: Program, { tests, graph, stateOf, hrefOf }: Placed) {
  const positions = (ids: readonly string[] = []) =>
    tests
      .filter((one) => ids.includes(one.id))
      .map((one) => one.position)
      .join(', ') || 'none';
  return {
    position: test.position,
    title: test.title,
    href: hrefOf(test.id),
    stage: program.stages.find((one) => one.stage === test.stage)?.title ?? test.stage,
    needs: positions(graph.needs.get(test.id)),
    unlocks: positions(graph.unlocks.get(test.id)),
    status: outcomeInWords(stateOf(test.id)),
  };
}

function graphPath(book: string, query: GraphQuery): string {
  const given = Object.entries(query).filter((one): one is [string, string] => Boolean(one[1]));
  const search = new URLSearchParams(given).toString();
  return bookPath(book, `/program/graph${search === '' ? '' : `?${search}`}`);
}
