/** Long work: started, watched, cancelled. Kept in memory; what it makes is kept by the deed itself. */
import { randomBytes } from 'node:crypto';
import { InputProblem, type Problem, problem } from '../analysis/remarks/index.ts';

export type JobState = 'working' | 'done' | 'failed' | 'cancelled';

export interface Progress {
  done: number;
  /** 0 where it is not known */
  total: number;
  words: string;
}

export interface Job {
  id: string;
  title: string;
  state: JobState;
  progress: Progress;
  /** what the work gave, plain JSON */
  outcome: unknown;
  problems: Problem[];
}

export type Work = (tell: (progress: Progress) => void, signal: AbortSignal) => Promise<unknown>;

export interface Jobs {
  start(title: string, work: Work): Job;
  find(id: string): Job;
  list(): Job[];
  cancel(id: string): Job;
  /** told of each change until the job ends or the listener leaves */
  watch(id: string, listener: (job: Job) => void): () => void;
  /** cancel all and wait for them */
  close(): Promise<void>;
}

/** Finished jobs kept for a page that comes back late. */
const KEPT = 100;

interface Held {
  job: Job;
  stop: AbortController;
  listeners: Set<(job: Job) => void>;
  ended: Promise<void>;
}

/** A board of jobs. */
export function openJobs(): Jobs {
  const board = new Map<string, Held>();

  const held = (id: string): Held => {
    const one = board.get(id);
    if (!one) throw new InputProblem([problem('not-found', 'There is no such job.')]);
    return one;
  };
  const change = (one: Held, to: Partial<Job>) => {
    one.job = { ...one.job, ...to };
    for (const listener of one.listeners) listener(one.job);
  };
  const forgetOld = () => {
    const ended = [...board.values()].filter((one) => one.job.state !== 'working');
    for (const one of ended.slice(0, Math.max(0, ended.length - KEPT))) board.delete(one.job.id);
  };

  const jobs: Jobs = {
    start: (title, work) => {
      forgetOld();
      const id = randomBytes(8).toString('hex');
      const progress = { done: 0, total: 0, words: 'started' };
      const one: Held = {
        job: { id, title, state: 'working', progress, outcome: null, problems: [] },
        stop: new AbortController(),
        listeners: new Set(),
        ended: Promise.resolve(),
      };
      board.set(id, one);
      one.ended = Promise.resolve()
        .then(() => work((to) => change(one, { progress: to }), one.stop.signal))
        .then(
          (outcome) => change(one, one.stop.signal.aborted ? cancelled() : { state: 'done', outcome }),
          (error: unknown) => change(one, failure(error, one.stop.signal)),
        );
      return one.job;
    },
    find: (id) => held(id).job,
    list: () => [...board.values()].map((one) => one.job),
    cancel: (id) => {
      const one = held(id);
      one.stop.abort();
      return one.job;
    },
    watch: (id, listener) => {
      const one = held(id);
      one.listeners.add(listener);
      listener(one.job);
      return () => one.listeners.delete(listener);
    },
    close: async () => {
      for (const one of board.values()) one.stop.abort();
      await Promise.all([...board.values()].map((one) => one.ended));
    },
  };
  return jobs;
}

function failure(error: unknown, signal: AbortSignal): Partial<Job> {
  if (signal.aborted) return cancelled();
  if (error instanceof InputProblem) return { state: 'failed', problems: [...error.problems] };
  return { state: 'failed', problems: [problem('our-fault', 'The work stopped on a fault of this program.')] };
}

function cancelled(): Partial<Job> {
  return { state: 'cancelled', problems: [problem('cancelled', 'The work was stopped on request.')] };
}
