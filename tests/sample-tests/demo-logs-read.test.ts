/** The demo's own logs are read by anyone without a question: their headers, units and tracks agree with each other. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readLogBytes, readReport } from '../../analysis/logs/index.ts';

const LOGS = ['ouzel', 'wrenlet'].flatMap((airplane) =>
  readdirSync(`sample-tests/${airplane}/logs`).map((name) => [airplane, name] as const),
);

describe('the demo logs', () => {
  it.each(LOGS)('%s: %s', (airplane, name) => {
    const bytes = readFileSync(`sample-tests/${airplane}/logs/${name}`);
    const { accepted, questions } = readReport(readLogBytes(bytes, { file: name, sha256: '0'.repeat(64) }));
    expect(questions).toEqual([]);
    expect(accepted).toBe('yes');
  });
});
