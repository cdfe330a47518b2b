/** The port: the one asked for or none, the usual one or the next; and a shutdown that lets answers finish. */
import { createServer } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { buildApp } from '../../server/app.ts';
import { listen } from '../../server/listen.ts';
import { emptyDesk } from './desk-for-tests.ts';

async function takenPort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => void server.close());
  const address = server.address();
  return typeof address === 'object' && address ? address.port : 0;
}

async function appOnUsual(port?: number) {
  const app = await buildApp(
    emptyDesk({ settings: { shutdownWaitMs: 3000, ...(port === undefined ? {} : { port }) } }),
  );
  onTestFinished(() => app.http.close());
  return app;
}

describe('the port', () => {
  it('asked for and taken is a problem that says how to go on', async () => {
    const port = await takenPort();
    await expect(listen(await appOnUsual(), port)).rejects.toMatchObject({ problems: [{ code: 'port-in-use' }] });
  });

  it('not asked for is the next free one', async () => {
    const port = await takenPort();
    const address = await listen(await appOnUsual(port));
    const given = Number(new URL(address).port);
    expect(given).toBeGreaterThan(port);
    expect(given).toBeLessThan(port + 10);
    expect((await fetch(`${address}/api/health`)).status).toBe(200);
  });
});

describe('a shutdown', () => {
  it('waits for an answer in work, and closes at once when there is none', async () => {
    const app = await appOnUsual();
    app.http.get('/slow', async () => {
      await new Promise((resolve) => setTimeout(resolve, 300));
      return { slow: true };
    });
    const address = await listen(app, 0);
    const answer = fetch(`${address}/slow`);
    while (app.inWork.count() === 0) await new Promise((resolve) => setTimeout(resolve, 5));
    await app.close();
    expect(await (await answer).json()).toEqual({ slow: true });

    const idle = await appOnUsual();
    const idleAddress = await listen(idle, 0);
    await (await fetch(`${idleAddress}/api/health`)).text();
    const started = performance.now();
    await idle.close();
    expect(performance.now() - started).toBeLessThan(2000);
  });

  it('does not wait for ever', async () => {
    const app = await buildApp(emptyDesk({ settings: { shutdownWaitMs: 100 } }));
    app.http.get('/stuck', () => new Promise(() => {}));
    const address = await listen(app, 0);
    const answer = fetch(`${address}/stuck`).catch((error: unknown) => error);
    while (app.inWork.count() === 0) await new Promise((resolve) => setTimeout(resolve, 5));
    await app.close();
    expect(await answer).toBeInstanceOf(Error);
  });
});
