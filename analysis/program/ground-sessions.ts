/** Ground work packed into sittings: what is ready, one system after another so that a set-up is used up, one new thing each. */
import type { Stage } from '../catalogue/index.ts';
import type { Item } from './items.ts';
import { LONGEST_SESSION_MINUTES } from './outing-rules.ts';

/**
 * Sittings for the ground items of a stage.
 * @param items ground items of the stage, list
 * @param done keys done before the stage, set
 * @param stage the stage, text
 * @returns sittings in order, each a list of items in order
 * @throws Error when items wait for each other: the tests were not checked
 */
export function groundSessions(items: readonly Item[], done: ReadonlySet<string>, stage: Stage): Item[][] {
  const finished = new Set(done);
  const left = new Set(items);
  const sessions: Item[][] = [];
  let lastSystem: string | null = null;
  while (left.size > 0) {
    const session = nextSession([...left], finished, longest(stage), lastSystem);
    if (session.length === 0)
      throw new Error(`tests wait for each other: ${[...left].map((one) => one.key).join(', ')}`);
    for (const item of session) {
      left.delete(item);
      finished.add(item.key);
    }
    lastSystem = session.at(-1)?.source.system ?? null;
    sessions.push(session);
  }
  return sessions;
}

/**
 * The next sitting: the leader is the item of the system at hand, else the one most tests wait for.
 * @param left items not done, list
 * @param done keys done, set
 * @param limit longest sitting, min
 * @param lastSystem system of the sitting before, text or null
 * @returns items in order; empty when none is ready
 */
export function nextSession(
  left: readonly Item[],
  done: ReadonlySet<string>,
  limit: number,
  lastSystem: string | null,
): Item[] {
  const session: Item[] = [];
  const here = new Set<string>();
  let minutes = 0;
  let opened = false;
  for (;;) {
    const system = session[0]?.source.system ?? lastSystem;
    const ready = left
      .filter((item) => !here.has(item.key) && isReady(item, done, here))
      .filter(
        (item) => session.length === 0 || (minutes + item.minutes <= limit && !(opened && item.source.planning.opens)),
      )
      .sort((a, b) => near(b, system) - near(a, system) || b.followers - a.followers || a.index - b.index);
    const next = ready[0];
    if (!next || next.source.planning.alone) return next && session.length === 0 ? [next] : session;
    session.push(next);
    here.add(next.key);
    minutes += next.minutes;
    opened ||= next.source.planning.opens !== undefined;
  }
}

/** Everything it waits for lies in an earlier outing, or on this one where that is enough. */
export function isReady(item: Item, done: ReadonlySet<string>, here: ReadonlySet<string>): boolean {
  return item.earlier.every((key) => done.has(key)) && item.before.every((key) => done.has(key) || here.has(key));
}

/** Longest sitting of a stage, min. */
export function longest(stage: Stage): number {
  if (stage === 'shop') return LONGEST_SESSION_MINUTES.shop;
  return stage === 'engine-ground' || stage === 'taxi'
    ? LONGEST_SESSION_MINUTES.running
    : LONGEST_SESSION_MINUTES.paper;
}

function near(item: Item, system: string | null): number {
  return item.source.system === system ? 1 : 0;
}
