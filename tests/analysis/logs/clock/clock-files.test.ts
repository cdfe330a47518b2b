/** Every way of telling the time, from the file to the time base. */
import { describe, expect, it } from 'vitest';
import { readLogBytes, readReport } from '../../../../analysis/logs/index.ts';
import { mapSchema } from '../../../../analysis/logs/log-map.ts';
import { CLOCK_FILES } from './clock-files.ts';

const SHA = '0'.repeat(64);

describe.each(Object.entries(CLOCK_FILES))('clocks: %s', (_, files) => {
  it.each(files)('$name', (one) => {
    const map = one.map ? { map: mapSchema.parse(one.map) } : {};
    const bytes = new TextEncoder().encode(one.content);
    const outcome = readLogBytes(bytes, { file: 'x.csv', sha256: SHA, ...map });
    const { accepted, time, flags, questions } = readReport(outcome);
    expect(accepted, JSON.stringify(questions)).toBe(one.accepted ?? 'yes');
    expect(time.start, outcome.timeNotes.join('; ')).toBe(one.start);
    expect(time.durationSeconds).toBeCloseTo(one.duration, 5);
    expect(flags.map(({ kind }) => kind).sort()).toEqual([...one.flags].sort());
    if (one.zone !== undefined) expect(time.zone).toBe(one.zone);
    if (one.hertz !== undefined) expect(time.sampleRateHz).toBeCloseTo(one.hertz, 3);
    if (one.question)
      expect(questions.find(({ id }) => id === one.question?.id)?.choices).toEqual(one.question.choices);
    if (one.segments) expect(time.segments.map((s) => [s.fromSeconds, s.toSeconds])).toEqual(one.segments);
    const seconds = outcome.table?.time.seconds ?? new Float64Array(0);
    for (let i = 1; i < seconds.length; i += 1) expect(seconds[i]).toBeGreaterThanOrEqual(seconds[i - 1] ?? 0);
    // The columns of the clock are the clock's: none of them is a channel as well.
    if (!one.map) expect(outcome.table?.channels.at(-1)?.column).toBe('RPM');
  });
});
