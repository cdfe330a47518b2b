/** A gate asked: each piece of evidence shown, not shown or waived. It never decides for the person. */
import type { CatalogueTest } from '../catalogue/index.ts';
import { GATES } from './gates.ts';
import type { Gate, Program } from './program.ts';

export type EvidenceOutcome = 'shown' | 'not shown' | 'waived';

/** What is on record for a test. */
export interface TestRecord {
  /** accepted, with the outcome of its comparison where it has one */
  accepted: boolean;
  /** a comparison of the accepted result that is not 'shown', in words */
  notShown?: string;
  /** who waived it, why, and the limit put in its place */
  waived?: { by: string; reason: string; limit: string };
  /** a change of the airplane touched what it showed */
  stale?: boolean;
}

export interface GateAnswer {
  id: string;
  title: string;
  evidence: { asks: string; test: string; title: string; outcome: EvidenceOutcome; words: string }[];
  missing: string[];
  /** every piece shown or waived */
  complete: boolean;
  typicalNoGo: string;
}

/**
 * The gates of a program: evidence that applies to this airplane.
 * @param titles titles of the tests that apply, by id, map
 * @returns gates with their evidence; one that asks for nothing is left out
 */
export function gatesFor(titles: ReadonlyMap<string, string>): Gate[] {
  return GATES.map((gate) => ({
    id: gate.id,
    title: gate.title,
    before: gate.before,
    after: gate.after,
    evidence: gate.evidence.flatMap(({ asks, tests }) =>
      tests.flatMap((test) => {
        const title = titles.get(test);
        return title === undefined ? [] : [{ test, title, asks }];
      }),
    ),
    typicalNoGo: gate.typicalNoGo,
  })).filter((gate) => gate.evidence.length > 0);
}

/**
 * A gate answered from what is on record.
 * @param gate gate of the program, object
 * @param records what is on record, by test id, map
 * @returns each piece of evidence with its outcome, and what is missing
 */
export function askGate(gate: Gate, records: ReadonlyMap<string, TestRecord>): GateAnswer {
  const evidence = gate.evidence.map(({ test, title, asks }) => ({
    asks,
    test,
    title,
    ...outcomeOf(records.get(test)),
  }));
  return {
    id: gate.id,
    title: gate.title,
    evidence,
    missing: evidence.filter((one) => one.outcome === 'not shown').map((one) => `${one.title}: ${one.words}`),
    complete: evidence.every((one) => one.outcome !== 'not shown'),
    typicalNoGo: gate.typicalNoGo,
  };
}

/**
 * The gate a test waits behind.
 * @param test the test, object
 * @param program the program, object
 * @returns the gate, or null
 */
export function gateHolding(test: Pick<CatalogueTest, 'id'>, program: Program): Gate | null {
  const data = GATES.find((gate) => gate.holds.includes(test.id));
  return data ? (program.gates.find((gate) => gate.id === data.id) ?? null) : null;
}

function outcomeOf(record: TestRecord | undefined): { outcome: EvidenceOutcome; words: string } {
  if (record?.waived) {
    const { by, reason, limit } = record.waived;
    return { outcome: 'waived', words: `waived by ${by}: ${reason}; instead: ${limit}` };
  }
  if (!record?.accepted) return { outcome: 'not shown', words: 'no accepted record' };
  if (record.stale) return { outcome: 'not shown', words: 'accepted before a change that touched it' };
  if (record.notShown) return { outcome: 'not shown', words: record.notShown };
  return { outcome: 'shown', words: 'accepted' };
}
