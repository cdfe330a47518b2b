/** What every deed works at: the books, the clock, the reader of logs, long jobs. Built once, by service or command. */
import type { ReadOptions, ReadOutcome } from '../analysis/logs/index.ts';
import { openShelf, type Shelf } from './book/shelf.ts';
import { type Jobs, openJobs } from './jobs.ts';
import { readerFor } from './log-reader.ts';
import { type Settings, settingsOf } from './settings.ts';

/** Reads one log from the disk, in this thread or in a worker. */
export type LogReader = (path: string, options: ReadOptions, signal?: AbortSignal) => Promise<ReadOutcome>;

export interface Desk {
  settings: Settings;
  shelf: Shelf;
  now(): Date;
  jobs: Jobs;
  readLog: LogReader;
  /** readings made lately, by what they were made of */
  recentReadings: Map<string, ReadOutcome>;
  /** stop the jobs, then give the books back */
  close(): Promise<void>;
}

export interface DeskParts {
  settings?: Settings;
  /** a test brings its own */
  readLog?: LogReader;
  /** the clock */
  now?: () => Date;
}

/** A desk over a data folder. */
export function openDesk({
  settings = settingsOf(),
  readLog = readerFor(settings),
  now = () => new Date(),
}: DeskParts): Desk {
  const shelf = openShelf(settings.dataFolder, now);
  const jobs = openJobs();
  return {
    settings,
    shelf,
    now,
    jobs,
    readLog,
    recentReadings: new Map(),
    close: async () => {
      await jobs.close();
      shelf.close();
    },
  };
}
