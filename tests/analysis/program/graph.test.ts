import { describe, expect, it } from 'vitest';
import {
  chainOf,
  layersOf,
  type Program,
  planProgram,
  programGraph,
  testsInOrder,
} from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const PROGRAMS: [string, Program][] = [
  ['Ouzel', planProgram(demo('ouzel'))],
  ['Wrenlet', planProgram(demo('wrenlet'))],
];

/** Everything a test waits for, walked through the needs as the program states them: the slow and plain way. */
function allNeeds(program: Program, id: string): Set<string> {
  const byId = new Map(testsInOrder(program).map((test) => [test.id, test]));
  const found = new Set<string>();
  const walk = (one: string) => {
    for (const need of byId.get(one)?.needs ?? []) {
      if (!byId.has(need) || found.has(need)) continue;
      found.add(need);
      walk(need);
    }
  };
  walk(id);
  return found;
}

describe.each(PROGRAMS)('the graph of %s', (_, program) => {
  const graph = programGraph(program);
  const tests = testsInOrder(program);

  it('leads from each test to all it waits for, and to nothing else', () => {
    for (const { id } of tests) expect(chainOf(graph, id).before).toEqual(allNeeds(program, id));
  });

  it('holds no line that another way makes needless', () => {
    for (const [id, needs] of graph.needs) {
      for (const need of needs) {
        const others = needs.filter((one) => one !== need);
        expect(
          others.some((one) => allNeeds(program, one).has(need)),
          `${id} to ${need}`,
        ).toBe(false);
      }
    }
  });

  it('reads the same in both directions', () => {
    const down = [...graph.unlocks].flatMap(([from, to]) => to.map((id) => `${from}>${id}`)).sort();
    const up = [...graph.needs].flatMap(([to, from]) => from.map((id) => `${id}>${to}`)).sort();
    expect(down).toEqual(up);
    const some = tests[20]?.id ?? '';
    for (const id of chainOf(graph, some).after) expect(chainOf(graph, id).before.has(some)).toBe(true);
  });

  it('sets every test of a stage once, below all it needs there', () => {
    for (const { tests: stage } of program.stages) {
      const layers = layersOf(stage, graph);
      expect(layers.flat().sort()).toEqual(stage.map((test) => test.id).sort());
      const layerOf = new Map(layers.flatMap((ids, i) => ids.map((id) => [id, i] as const)));
      for (const [id, layer] of layerOf) {
        const above = (graph.needs.get(id) ?? []).flatMap((need) => layerOf.get(need) ?? []);
        expect(layer).toBe(above.length === 0 ? 0 : Math.max(...above) + 1);
      }
    }
  });
});
