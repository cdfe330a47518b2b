/** How a program stands in its book: what is behind, what is on paper, what has to be put back. */
import type { Part, Program, TestState } from '../../analysis/program/index.ts';
import type { TestStatus } from '../book/book-state.ts';
import type { BookPlan, Paper } from './book-plan.ts';

export interface Standing {
  states: ReadonlyMap<string, TestState>;
  /** numbers of outings that are flown or done, in whole or in part */
  done: number[];
  /** numbers of open outings whose sheets are printed as they stand */
  printed: number[];
  /** printed sheets that no longer are an outing of the plan, those done aside */
  stale: Paper[];
  /** parts to be done again whose outing is behind */
  putBack: Part[];
}

/** @param plan the program as it stands, with the status of its tests */
export async function standingOf(plan: BookPlan, status: readonly TestStatus[]): Promise<Standing> {
  const { keyOfOuting, outingsDone, toPutBack } = await import('../../analysis/program/index.ts');
  const { program, partsDone } = plan;
  const states = new Map(status.map((one) => [one.test, one.status]));
  const done = outingsDone(program, states, partsDone);
  const papers = new Map(plan.papers.map((paper) => [keyOf(paper), paper]));
  const now = new Map(program.outings.map((outing) => [keyOfOuting(outing), outing.number]));
  const printed = [...papers.keys()].flatMap((key) => now.get(key) ?? []).filter((number) => !done.includes(number));
  const behind = doneKeys(program, done, partsDone);
  const stale = [...papers].flatMap(([key, paper]) => {
    const open = paper.parts.some((part) => !behind.has(`${part.test}#${part.part}`));
    return open && !now.has(key) ? [paper] : [];
  });
  return {
    states,
    done,
    printed: printed.sort((a, b) => a - b),
    stale,
    putBack: toPutBack(program, states, partsDone),
  };

  function keyOf(paper: Paper): string {
    return keyOfOuting({ parts: paper.parts.map((part) => ({ ...part, of: 0 })) });
  }
}

function doneKeys(program: Program, done: readonly number[], partsDone: ReadonlySet<string>): Set<string> {
  const parts = program.outings.filter((one) => done.includes(one.number)).flatMap((one) => one.parts);
  return new Set([...partsDone, ...parts.map(({ test, part }) => `${test}#${part}`)]);
}
