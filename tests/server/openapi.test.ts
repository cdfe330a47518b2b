/** The contract of the API: which routes there are, what each takes and gives. A route gone from here breaks a script. */
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { appWithOuzel } from './app-for-tests.ts';

const operationSchema = z.looseObject({
  parameters: z.array(z.looseObject({ name: z.string(), in: z.string() })).optional(),
  requestBody: z.looseObject({ content: z.record(z.string(), z.unknown()) }).optional(),
  responses: z.record(z.string(), z.unknown()),
});
const documentSchema = z.looseObject({
  openapi: z.string(),
  paths: z.record(z.string(), z.record(z.string(), operationSchema)),
});

const CONTRACT = 'tests/server/openapi.contract.txt';

async function described() {
  const { ask } = await appWithOuzel();
  const answer = await ask({ url: '/api/openapi.json' });
  return documentSchema.parse(answer.json());
}

describe('the API', () => {
  it('is described as OpenAPI 3.1', async () => {
    expect((await described()).openapi).toBe('3.1.0');
  });

  it('has the routes of the contract, each with its parameters, bodies and answers', async () => {
    const { paths } = await described();
    const lines = Object.entries(paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { parameters = [], requestBody, responses }]) => {
        const takes = [...parameters.map((one) => `${one.in} ${one.name}`), ...Object.keys(requestBody?.content ?? {})];
        const gives = Object.keys(responses).filter((status) => !/^[45]/.test(status));
        return `${method.toUpperCase()} ${path} (${takes.join(', ')}) -> ${gives.join(', ') || 'bytes'}`;
      }),
    );
    lines.sort();
    if (process.env.UPDATE_CONTRACT) writeFileSync(CONTRACT, `${lines.join('\n')}\n`);
    expect(lines).toEqual(readFileSync(CONTRACT, 'utf8').trimEnd().split('\n'));
  });

  it('says of every route how it fails', async () => {
    const { paths } = await described();
    const silent = Object.entries(paths).flatMap(([path, methods]) =>
      Object.entries(methods).flatMap(([method, { responses }]) =>
        JSON.stringify(responses['4XX'] ?? responses['4xx'] ?? '').includes('problems') ? [] : [`${method} ${path}`],
      ),
    );
    expect(silent).toEqual([]);
  });
});
