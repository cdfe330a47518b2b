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
