import { expect, test } from 'vitest';
import { InputProblem } from '../../../analysis/remarks/index.ts';
import { openPrintQueue } from '../../../server/printing/queue.ts';

function held() {
  let release = () => {};
  const done = new Promise<void>((resolve) => {
    release = resolve;
  });
  return { done, release: () => release() };
}

test('one print after the other, in the order they came', async () => {
  const queue = openPrintQueue();
  const order: number[] = [];
  const first = held();
  const all = [
    queue.run(() => first.done.then(() => order.push(1))),
    queue.run(async () => order.push(2)),
    queue.run(async () => order.push(3)),
  ];
  first.release();
  await Promise.all(all);
  expect(order).toEqual([1, 2, 3]);
});

test('those in line are told how many are before them', async () => {
  const queue = openPrintQueue();
  const first = held();
  const seen: number[] = [];
  const all = [
    queue.run(() => first.done),
    queue.run(async () => undefined),
    queue.run(
      async () => undefined,
      undefined,
      (before) => seen.push(before),
    ),
  ];
  expect(seen).toEqual([2]);
  first.release();
  await Promise.all(all);
  expect(seen.at(-1)).toBe(1);
});

test('a cancelled one leaves the line; the next gets its turn', async () => {
  const queue = openPrintQueue();
  const first = held();
  const stop = new AbortController();
  const running = queue.run(() => first.done);
  const cancelled = queue.run(async () => 'printed', stop.signal);
  const last = queue.run(async () => 'last');
  stop.abort(new Error('cancelled'));
  await expect(cancelled).rejects.toThrow('cancelled');
  first.release();
  await running;
  expect(await last).toBe('last');
});

test('a failed print frees the printer', async () => {
  const queue = openPrintQueue();
  await expect(queue.run(() => Promise.reject(new Error('paper jam')))).rejects.toThrow('paper jam');
  expect(await queue.run(async () => 'printed')).toBe('printed');
});

test('more than the line holds are refused in words', async () => {
  const queue = openPrintQueue(1, 2);
  const first = held();
  const waiting = [0, 1, 2].map(() => queue.run(() => first.done));
  await expect(queue.run(async () => undefined)).rejects.toThrow(InputProblem);
  first.release();
  await Promise.all(waiting);
});
