/** A recording made of functions of time: what a finder is tried on. */
import { type LogTable, type Recording, recordingOf } from '../../../analysis/logs/index.ts';

export interface Flown {
  file?: string;
  rateHz: number;
  seconds: number;
  channels: Record<string, (t: number) => number>;
  /** rows that are not there, s */
  missing?: readonly (readonly [number, number])[];
}

export function tableOf(flown: Flown): LogTable {
  const all = Array.from({ length: Math.round(flown.seconds * flown.rateHz) + 1 }, (_, i) => i / flown.rateHz);
  const kept = all.filter((t) => !flown.missing?.some(([from, to]) => t > from && t < to));
  return {
    file: flown.file ?? 'flown.csv',
    sha256: '0'.repeat(64),
    rows: kept.length,
    flags: [],
    time: {
      seconds: Float64Array.from(kept),
      startUtcMs: null,
      start: null,
      zone: 'unknown',
      durationSeconds: flown.seconds,
      sampleRateHz: flown.rateHz,
      segments: [],
    },
    channels: Object.entries(flown.channels).map(([quantity, at], index) => ({
      column: quantity,
      index,
      name: quantity,
      quantity,
      unit: null,
      confidence: 1,
      why: 'made for a test',
      values: Float64Array.from(kept, at),
      valid: 1,
      flags: [],
    })),
  };
}

export function recordingFrom(...flown: Flown[]): Recording {
  return recordingOf(flown.map(tableOf));
}

/** A value that goes from one level to the next at stated times, with linear ramps of `ramp` seconds. */
export function steps(levels: readonly (readonly [from: number, level: number])[], ramp = 0): (t: number) => number {
  return (t) => {
    let value = levels[0]?.[1] ?? 0;
    for (const [from, level] of levels) {
      if (t < from) break;
      value = ramp > 0 && t < from + ramp ? value + ((level - value) * (t - from)) / ramp : level;
    }
    return value;
  };
}
