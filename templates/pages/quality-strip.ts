/** A channel's quality over the whole log as a strip: where it was recorded, and where a remark holds. */
import type { LogChannel, TimeBase } from '../../analysis/logs/index.ts';

export interface StripMark {
  x: string;
  width: string;
  light: boolean;
  title: string;
}

/** Marks narrower than this would not be seen; share of the whole. */
const SEEN = 0.003;

/**
 * The marks of a strip drawn on a width of 1.
 * @param channel the channel with its flags
 * @param time the log's clock
 */
export function qualityMarks(channel: Pick<LogChannel, 'flags'>, time: Pick<TimeBase, 'durationSeconds'>): StripMark[] {
  const whole = time.durationSeconds;
  if (!(whole > 0)) return [];
  return channel.flags.flatMap((flag) => {
    if (flag.fromSeconds === undefined || flag.toSeconds === undefined) return [];
    const from = Math.max(0, flag.fromSeconds / whole);
    const to = Math.min(1, flag.toSeconds / whole);
    const width = Math.max(SEEN, to - from);
    return [
      {
        x: Math.min(from, 1 - width).toFixed(4),
        width: width.toFixed(4),
        light: flag.kind === 'gap' || flag.kind === 'missing-values',
        title: flag.message,
      },
    ];
  });
}
