/** What the service and the command are told from outside: one schema, defaults beside it. */
import { join } from 'node:path';
import * as z from 'zod';

const CHECKOUT = join(import.meta.dirname, '..');
const MEGABYTE = 1024 * 1024;

export const settingsSchema = z.object({
  /** folder that holds the books, one folder each */
  dataFolder: z.string().min(1).default(join(CHECKOUT, 'data')),
  /** demo airplanes and their logs, laid out as books on the first run */
  samplesFolder: z.string().min(1).default(join(CHECKOUT, 'sample-tests')),
  host: z.string().min(1).default('127.0.0.1'),
  /** 0 lets the system choose a free one */
  port: z.int().min(0).max(65_535).default(4170),
  uploadLimitBytes: z
    .int()
    .positive()
    .default(250 * MEGABYTE),
  jsonLimitBytes: z.int().positive().default(MEGABYTE),
  /** an archive to import may hold many logs */
  archiveLimitBytes: z
    .int()
    .positive()
    .default(4096 * MEGABYTE),
  /** larger logs are read in a worker, so that the service goes on answering */
  workerAboveBytes: z
    .int()
    .nonnegative()
    .default(2 * MEGABYTE),
  /** costly requests one client may make in a minute */
  costlyPerMinute: z.int().positive().default(300),
  /** faults are said on stderr; tests that make them want quiet */
  logFaults: z.boolean().default(true),
  /** how long a shutdown waits for requests in work */
  shutdownWaitMs: z.int().nonnegative().default(5000),
});

export type Settings = z.output<typeof settingsSchema>;

/**
 * Settings from what was given, the rest by default.
 * @param given some of the settings
 * @returns all of them
 */
export function settingsOf(given: z.input<typeof settingsSchema> = {}): Settings {
  return settingsSchema.parse(given);
}
