/** The bands of the drawing: stages, parted where a gate stands inside one. */
import {
  chainOf,
  gateHolding,
  layersOf,
  type Program,
  type ProgramGraph,
  type ProgramTest,
} from '../../analysis/program/index.ts';

export interface Band {
  id: string;
  stage: string;
  title: string;
  tests: readonly ProgramTest[];
  gate: Program['gates'][number] | undefined;
  layers: string[][];
}

/** A band for each stage; a gate inside a stage parts it in two: what does not wait behind it, and what does. */
export function bandsOf(program: Program, graph: ProgramGraph): Band[] {
  return program.stages.flatMap(({ stage, title, tests }): Band[] => {
    const before = program.gates.find((gate) => gate.before === stage && gate.after !== stage);
    const inner = program.gates.find((gate) => gate.before === stage && gate.after === stage);
    const held = tests.filter((test) => inner && gateHolding(test, program)?.id === inner.id).map((test) => test.id);
    const behind = new Set([...held, ...held.flatMap((id) => [...chainOf(graph, id).after])]);
    const [first, second] = [tests.filter((test) => !behind.has(test.id)), tests.filter((test) => behind.has(test.id))];
    return [
      { id: stage, stage, title, tests: first, gate: before, layers: layersOf(first, graph) },
      {
        id: `${stage}-${inner?.id}`,
        stage,
        title: `${title}, behind gate ${inner?.id}`,
        tests: second,
        gate: inner,
        layers: layersOf(second, graph),
      },
    ].filter((band) => band.tests.length > 0);
  });
}
