/** A segment: a time interval in which stated conditions held; SEG.json of a person's own edits. */
import * as z from 'zod';

export const segmentEditSchema = z.object({
  file: z.string(),
  fromSeconds: z.number(),
  toSeconds: z.number(),
  role: z.string().min(1),
  label: z.string().optional(),
  reason: z.string().optional(),
});

export const segmentEditsSchema = z.array(
  segmentEditSchema.refine((one) => one.toSeconds > one.fromSeconds, 'a segment ends after it starts'),
);

/** A segment set by hand, seconds from the first record of the named file. */
export type SegmentEdit = z.infer<typeof segmentEditSchema>;

/** A segment on the recording's clock: seconds from the first record of the first file. */
export interface Segment {
  fromSeconds: number;
  toSeconds: number;
  role: string;
  /** what set its ends: the finder's criteria, or a person's reason */
  reason: string;
  byHand: boolean;
  label?: string;
}

/** A stretch that was looked at and left out, with the reason. */
export interface Excluded {
  fromSeconds: number;
  toSeconds: number;
  reason: string;
}

/** What a finder gives. */
export interface Findings {
  segments: Segment[];
  excluded: Excluded[];
  /** the criteria in words, for the result page */
  criteria: string[];
}

/** Role of a segment that a person took out; it stays in the list with its reason and is counted in the result. */
export const DROPPED = 'dropped';
