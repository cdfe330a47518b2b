/**
 * The archive of a book: a zip of plain JSON and the original files, to be read without this program. The manifest
 * names each file with its size and hash; the journal and the documents are all that the state is made of.
 */
import * as z from 'zod';
import { sha256Schema } from './entry.ts';

export const MANIFEST = 'manifest.json';
export const JOURNAL = 'journal.json';
export const AIRPLANE = 'airplane.json';
export const README = 'README.txt';

/** The only names an archive may hold. */
const NAMES: readonly RegExp[] = [
  /^(manifest|journal|airplane)\.json$/,
  /^README\.txt$/,
  /^documents\/[0-9a-f]{64}\.json$/,
  /^logs\/[0-9a-f]{2}\/[0-9a-f]{64}$/,
];

export const isArchiveName = (name: string): boolean => NAMES.some((pattern) => pattern.test(name));

export const manifestSchema = z.object({
  format: z.literal('proveout-archive-1'),
  uid: z.string(),
  airplane: z.string(),
  exportedAt: z.string(),
  /** hash of the last entry of the journal */
  head: z.string(),
  files: z.array(
    z.object({
      path: z.string().refine(isArchiveName, 'not a name an archive may hold'),
      size: z.int().nonnegative(),
      sha256: sha256Schema,
    }),
  ),
});

export type Manifest = z.output<typeof manifestSchema>;

/** An entry as the archive writes it: the data as JSON, not as text in JSON. */
export const archivedEntrySchema = z.object({
  seq: z.int(),
  at: z.string(),
  who: z.string(),
  why: z.string(),
  subject: z.string(),
  data: z.unknown(),
  prev: z.string(),
  hash: z.string(),
});

export const README_TEXT = `This is the whole record of one airplane's tests.

airplane.json   the airplane's description as it was last saved
journal.json    everything that happened, oldest first: when, who, why, and what (data)
documents/      descriptions and results that the journal names by the SHA-256 of their text
logs/           recorder files exactly as they came; the journal gives each its name ("log-received")
manifest.json   every file with its size and SHA-256

Nothing but the journal, the documents and the logs is needed to make the record again. Each journal entry carries
"hash", the SHA-256 of the JSON list [seq, at, who, why, subject, data as JSON text, prev], where "prev" is the hash of
the entry before; the first one has 64 zeros.
`;
