/** Odd and hostile files: each is read, asked about or refused as it must be, and says why. */
import { describe, expect, it } from 'vitest';
import { readLogBytes, readReport, recordingOf, sampleAt, seriesOf } from '../../../analysis/logs/index.ts';
import { ODD_FILES } from './odd-files.ts';
import { readJson } from './read-json-schema.ts';

const bytesOf = (content: string | Uint8Array) =>
  typeof content === 'string' ? new TextEncoder().encode(content) : content;

describe('odd files', () => {
  it('are at least sixty', () => {
    expect(ODD_FILES.length).toBeGreaterThanOrEqual(60);
  });

  it.each(ODD_FILES)('$name', (odd) => {
    const outcome = readLogBytes(bytesOf(odd.content), { file: `${odd.name}.csv`, sha256: '0'.repeat(64) });
    const report = readReport(outcome, [0, 10.2, 1e6]);
    expect(readJson.safeParse(JSON.parse(JSON.stringify(report))).error?.issues ?? []).toEqual([]);
    const said = JSON.stringify({ problems: report.problems, questions: report.questions, flags: report.flags });
    expect(report.accepted, said).toBe(odd.accepted);
    if (odd.rows !== undefined) expect(report.rows).toBe(odd.rows);
    if (odd.problem) {
      expect(report.problems.map((one) => one.code)).toContain(odd.problem);
      expect(report.problems[0]?.message.length).toBeGreaterThan(30);
    }
    if (odd.question) expect(report.questions.map((one) => one.id)).toContain(odd.question);
    // All that is flagged, and nothing else.
    expect([...new Set(report.flags.map((one) => one.kind))].sort(), said).toEqual([...(odd.flags ?? [])].sort());
    const channelFlags = report.channels.flatMap((channel) => channel.flags.map((one) => one.kind));
    expect([...new Set(channelFlags)].sort()).toEqual([...(odd.channelFlags ?? [])].sort());
    for (const channel of report.channels) expect(channel.samples?.at(-1)?.value ?? null).toBeNull();
    for (const [column, quantity] of Object.entries(odd.quantities ?? {})) {
      expect(report.channels.find((channel) => channel.column === column)?.quantity ?? null, column).toBe(quantity);
    }
    // Every engine here turns at 2500 rpm, whatever else is odd.
    const engine = report.channels.find((channel) => channel.quantity === 'engine-speed');
    if (engine) expect(engine.samples?.[1]?.value).toBeCloseTo(2500 / 60, 9);
    if (odd.dialect) expect(report.dialect).toMatchObject(odd.dialect);
    // Most are the plain file in another dress: one row a second for a minute.
    const duration = odd.duration ?? (odd.rows === 60 ? 59 : undefined);
    if (duration !== undefined) expect(report.time.durationSeconds).toBeCloseTo(duration, 6);
    if (odd.rows === 60) expect(report.time.sampleRateHz).toBe(1);
    if (odd.zone !== undefined) expect(report.time.zone).toBe(odd.zone);
    if (odd.start !== undefined) expect(report.time.start).toBe(odd.start);
    for (const { quantity, t, si } of odd.values ?? []) {
      const { table } = outcome;
      const series = table && seriesOf(recordingOf([table]), quantity);
      const channel = table?.channels.find((one) => one.column === series?.column);
      expect(table && channel ? sampleAt(table, channel, t) : null, quantity).toBeCloseTo(si, 9);
    }
  });
});
