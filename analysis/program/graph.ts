/**
 * The program as a graph: what each test needs and unlocks, without what is inherited through another test, the depth of
 * each test in its stage, and the chain that leads to a test and from it.
 */
import type { Program, ProgramTest } from './program.ts';

export interface ProgramGraph {
  /** direct needs by id; a need that another need already waits for is left out */
  needs: ReadonlyMap<string, readonly string[]>;
  /** the same read the other way */
  unlocks: ReadonlyMap<string, readonly string[]>;
}

export interface Chain {
  /** tests that come before, directly or through others */
  before: ReadonlySet<string>;
  /** tests that wait for it, directly or through others */
  after: ReadonlySet<string>;
}

/**
 * The graph of a program.
 * @param program the program, object
 * @returns direct needs and unlocks, by test id in the order of the program
 * @source transitive reduction of an acyclic graph [own]
 */
export function programGraph(program: Program): ProgramGraph {
  const tests = testsInOrder(program);
  const inherited = new Map<string, ReadonlySet<string>>();
  const needs = new Map<string, string[]>();
  const unlocks = new Map<string, string[]>(tests.map(({ id }) => [id, []]));
  // in the order of the program every need is met before the test that has it
  for (const test of tests) {
    const known = test.needs.filter((id) => inherited.has(id));
    const through = new Set(known.flatMap((id) => [...(inherited.get(id) ?? [])]));
    const direct = known.filter((id) => !through.has(id));
    needs.set(test.id, direct);
    inherited.set(test.id, new Set([...through, ...known]));
    for (const id of direct) unlocks.get(id)?.push(test.id);
  }
  return { needs, unlocks };
}

/**
 * The chain of a test: everything that leads to it and everything it leads to.
 * @param graph the graph, object
 * @param id test, text
 * @returns ids before and after, the test itself in neither
 */
export function chainOf(graph: ProgramGraph, id: string): Chain {
  return { before: reached(graph.needs, id), after: reached(graph.unlocks, id) };
}

/**
 * The tests of one stage in layers: a test stands one layer below the deepest need it has in the same stage. In each
 * layer tests stand near what they need, so that few lines cross.
 * @param tests tests of the stage in the order of the program, list
 * @param graph the graph, object
 * @returns ids, a list for each layer
 * @source layered drawing with barycentre ordering, from memory [own]
 */
export function layersOf(tests: readonly ProgramTest[], graph: ProgramGraph): string[][] {
  const depth = new Map<string, number>();
  const layers: string[][] = [];
  for (const { id } of tests) {
    const above = (graph.needs.get(id) ?? []).flatMap((need) => depth.get(need) ?? []);
    const layer = above.length === 0 ? 0 : Math.max(...above) + 1;
    depth.set(id, layer);
    layers[layer] = [...(layers[layer] ?? []), id];
  }
  const place = new Map<string, number>();
  return layers.map((ids) => {
    const wanted = (id: string, i: number) =>
      mean(
        (graph.needs.get(id) ?? []).flatMap((need) => place.get(need) ?? []),
        i,
      );
    const sorted = ids
      .map((id, i) => ({ id, at: wanted(id, i / ids.length), i }))
      .sort((a, b) => a.at - b.at || a.i - b.i)
      .map(({ id }) => id);
    for (const [i, id] of sorted.entries()) place.set(id, (i + 0.5) / sorted.length);
    return sorted;
  });
}

/**
 * Tests in the order of the program.
 * @param program the program, object
 * @returns tests, list
 */
export function testsInOrder(program: Program): ProgramTest[] {
  return program.stages.flatMap((stage) => stage.tests).sort((a, b) => a.position - b.position);
}

function reached(next: ReadonlyMap<string, readonly string[]>, from: string): Set<string> {
  const found = new Set<string>();
  const ahead = [...(next.get(from) ?? [])];
  for (let id = ahead.pop(); id !== undefined; id = ahead.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    ahead.push(...(next.get(id) ?? []));
  }
  return found;
}

function mean(list: readonly number[], otherwise: number): number {
  return list.length === 0 ? otherwise : list.reduce((sum, one) => sum + one, 0) / list.length;
}
