/** Where a test or an outing may be moved to by hand, and what stands in the way elsewhere, in words. */
import type { Airplane } from '../airplane/index.ts';
import { keyOf } from './items.ts';
import { boardOf, firstOwn, lastOwn, type Obstacle, whyNotAt, whyNotTogether } from './placing.ts';
import { type PlanOptions, partsFor } from './plan-program.ts';
import type { Program } from './program.ts';

/** The ways one part of a test may go. */
export interface Moves {
  test: string;
  part: number;
  of: number;
  /** number of the outing it is on */
  from: number;
  /** numbers of outings it may join */
  joins: number[];
  /** numbers of outings before which it may have an outing of its own; one more than the last is the end */
  own: number[];
  /** other outings of its stage and kind, with the reason why not */
  refused: { outing: number; because: string }[];
}

/** Whether an outing may change its turn by one, and why not; null where it may. */
export interface Turns {
  earlier: string | null;
  later: string | null;
}

/** What answers about the moves of one program. */
export interface MoveBook {
  movesOf(test: string, part?: number): Moves | null;
  turnsOf(outing: number): Turns;
}

/**
 * The moves of a program.
 * @param airplane the description, object
 * @param program the program as it stands, object
 * @param options the options the program was made with, object
 * @param doneOutings numbers of outings that are flown or done: they stay, list
 * @returns answers for each test and outing
 */
export function movesIn(
  airplane: Airplane,
  program: Program,
  options: PlanOptions = {},
  doneOutings: readonly number[] = [],
): MoveBook {
  const gone = new Set(doneOutings);
  const { items, longestFlight, outings } = partsFor(airplane, {
    ...options,
    arrangement: program.outings.map((outing) => outing.parts),
    asItStands: true,
  });
  const done = new Set(program.outings.filter((one) => gone.has(one.number)).flatMap((one) => one.tests));
  const titles = new Map(program.stages.flatMap(({ tests }) => tests.map((test) => [test.id, test.title] as const)));
  const say = (obstacles: readonly Obstacle[]) =>
    [...new Set(obstacles.map((one) => wordsFor(one, titles)))].join('; ');

  return {
    movesOf(test, part = 1) {
      const at = program.outings.findIndex(({ parts }) => parts.some((one) => one.test === test && one.part === part));
      const of = program.outings[at]?.parts.find((one) => one.test === test)?.of ?? 1;
      const item = items.get(keyOf({ test, part, of }));
      if (!item || at < 0) return null;
      const found: Moves = { test, part, of, from: at + 1, joins: [], own: [], refused: [] };
      if (gone.has(at + 1)) return found;
      const without = outings.map((outing) => outing.filter((one) => one.key !== item.key));
      const board = boardOf(without, longestFlight, done);
      for (const [i, others] of without.entries()) {
        const other = program.outings[i];
        // that ground work is not done in the air needs no saying
        if (i === at || other?.stage !== item.source.stage || (other.kind === 'flight') !== item.flown) continue;
        const because = gone.has(i + 1)
          ? 'it is on record as done'
          : say([...whyNotAt(item, i, board), ...whyNotTogether(item, others, board)]);
        if (because === '') found.joins.push(i + 1);
        else found.refused.push({ outing: i + 1, because });
      }
      const lastGone = Math.max(0, ...doneOutings);
      const alone = without[at]?.length === 0;
      for (let i = Math.max(firstOwn(item, board), lastGone); i <= lastOwn(item, board); i += 1) {
        // on its own already: before itself or before the next one changes nothing
        if (!(alone && (i === at || i === at + 1))) found.own.push(i + 1);
      }
      return found;
    },

    turnsOf(number) {
      const step = (to: number): string | null => {
        const here = outings[number - 1];
        const other = outings[to - 1];
        if (!here || !other) return 'there is no outing beyond it';
        if (gone.has(number) || gone.has(to)) return 'it is on record as done';
        if (here[0]?.source.stage !== other[0]?.source.stage)
          return to < number ? 'the stage begins here' : 'the stage ends here';
        const [first, then] = to < number ? [other, here] : [here, other];
        const keys = new Set(first.map((item) => item.key));
        const waiting = then.find((item) => [...item.earlier, ...item.before].some((key) => keys.has(key)));
        const needed = first.find((item) =>
          [...(waiting?.earlier ?? []), ...(waiting?.before ?? [])].includes(item.key),
        );
        if (!waiting || !needed) return null;
        if (waiting.test === needed.test) {
          return `part ${waiting.part} of “${titles.get(waiting.test)}” waits for part ${needed.part}`;
        }
        return `“${titles.get(waiting.test)}” waits for “${titles.get(needed.test)}”`;
      };
      return { earlier: step(number - 1), later: step(number + 1) };
    },
  };
}

function wordsFor(obstacle: Obstacle, titles: ReadonlyMap<string, string>): string {
  const title = 'test' in obstacle ? `“${titles.get(obstacle.test) ?? obstacle.test}”` : '';
  switch (obstacle.kind) {
    case 'comes-later':
      return `${title}, which it needs, comes later`;
    case 'known-later':
      return `what it needs of ${title} is known only after that outing`;
    case 'waits-earlier':
      return `${title} waits for it and comes earlier`;
    case 'uses-same':
      return `${title} needs what it gives, and that is known only after the outing`;
    case 'both-new':
      return `both it and ${title} are new, and an outing has one new thing`;
    case 'load':
      return `${title} is flown at another load`;
    case 'part-later':
      return 'an earlier part of it comes later';
    case 'part-earlier':
      return 'a later part of it comes earlier';
    case 'same-test':
      return 'another part of it is on this outing, and each part has its own';
    case 'stage':
      return 'it belongs to another stage';
    case 'kind':
      return 'ground work and flying are not mixed';
    case 'alone':
      return 'it is flown alone';
    case 'company-alone':
      return 'what is on it is flown alone';
    case 'too-long':
      return `the flight would take ${Math.round(obstacle.minutes)} min, and ${Math.floor(obstacle.longest)} min is the longest`;
  }
}
