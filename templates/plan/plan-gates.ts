/** The gates in the plan: what each asks for, and the tests that show it. */
import * as z from 'zod';
import { GATES, type Gate } from '../../analysis/program/index.ts';
import { count, sentence } from '../words/list.ts';
import type { PlanInput } from './plan-input.ts';
import { rangesInWords } from './plan-program.ts';

export const gatePart = z.strictObject({
  title: z.string(),
  about: z.string(),
  evidence: z.array(z.strictObject({ asks: z.string(), tests: z.string() })),
  typicalNoGo: z.string(),
});
export type GatePart = z.infer<typeof gatePart>;

/** Gates, each with what it asks for and the tests that answer. */
export function gateParts({ program }: PlanInput): GatePart[] {
  const positions = new Map(program.stages.flatMap((stage) => stage.tests).map((one) => [one.id, one.position]));
  const titles = new Map(program.stages.map(({ stage, title }) => [stage, title]));
  return program.gates.map((gate) => {
    const asks = [...new Set(gate.evidence.map((one) => one.asks))];
    return {
      title: `Gate ${gate.id}: ${gate.title}`,
      about: heldWords(gate, positions, titles),
      evidence: asks.map((ask) => ({
        asks: sentence(ask),
        tests: gate.evidence
          .filter((one) => one.asks === ask)
          .map((one) => `${positions.get(one.test) ?? ''}. ${one.title}`)
          .join('; '),
      })),
      typicalNoGo: sentence(gate.typicalNoGo),
    };
  });
}

function heldWords(gate: Gate, positions: ReadonlyMap<string, number>, titles: ReadonlyMap<string, string>): string {
  const held = (GATES.find((one) => one.id === gate.id)?.holds ?? []).flatMap((id) => positions.get(id) ?? []);
  const where =
    gate.after === gate.before
      ? `Inside “${titles.get(gate.before)}”`
      : `Between “${titles.get(gate.after)}” and “${titles.get(gate.before)}”`;
  return `${where}. ${count(held.length, 'test')} ${held.length === 1 ? 'waits' : 'wait'} behind it: number ${rangesInWords(held)}, and all that follow from ${held.length === 1 ? 'it' : 'them'}.`;
}
