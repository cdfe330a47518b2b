/** One print after the other, a bounded number waiting; a cancelled one leaves the line. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';

export interface PrintQueue {
  /**
   * Wait for a turn and do the work.
   * @throws InputProblem when too many wait already
   */
  run<T>(work: () => Promise<T>, signal?: AbortSignal, waiting?: (before: number) => void): Promise<T>;
  readonly length: number;
}

interface Waiting {
  start(): void;
  moved(before: number): void;
}

/**
 * A queue.
 * @param atOnce prints in work together, count
 * @param most prints waiting before more are refused, count
 */
export function openPrintQueue(atOnce = 1, most = 20): PrintQueue {
  const line: Waiting[] = [];
  let working = 0;

  const next = () => {
    if (working < atOnce) line.shift()?.start();
    for (const [i, one] of line.entries()) one.moved(working + i);
  };
  const turn = (signal?: AbortSignal, waiting?: (before: number) => void) =>
    new Promise<void>((resolve, reject) => {
      const leave = () => {
        const at = line.indexOf(entry);
        if (at >= 0) line.splice(at, 1);
        reject(signal?.reason);
      };
      const entry: Waiting = {
        start: () => {
          signal?.removeEventListener('abort', leave);
          working += 1;
          resolve();
        },
        moved: (before) => waiting?.(before),
      };
      signal?.addEventListener('abort', leave, { once: true });
      line.push(entry);
      next();
    });

  return {
    run: async (work, signal, waiting) => {
      signal?.throwIfAborted();
      if (line.length >= most) {
        throw new InputProblem([problem('too-many-requests', `${line.length} prints are waiting already.`)]);
      }
      await turn(signal, waiting);
      try {
        return await work();
      } finally {
        working -= 1;
        next();
      }
    },
    get length() {
      return line.length;
    },
  };
}
