/** Check a whole book: chain, documents, raw logs, and that the state is what the journal makes. Repairs nothing. */

import * as z from 'zod';
import type { Book } from '../book/book.ts';
import { logs } from '../book/current-state.ts';
import { type Database, openDatabase } from '../book/database.ts';
import { STATE_TABLES } from '../book/derive.ts';
import { allDocuments, keepDocument, sha256Of } from '../book/documents.ts';
import { breaksIn, insertRow, journalRows } from '../book/journal.ts';
import { migrate } from '../book/migrate.ts';
import { hashOfFile, rawLogPath } from '../book/raw-logs.ts';
import type { Desk } from '../desk.ts';

export interface Verification {
  entries: number;
  documents: number;
  logs: number;
  /** hash of the last entry: write it down elsewhere, and later tampering with all of it shows too */
  head: string;
  /** what is broken, one sentence each; empty when all holds */
  broken: string[];
}

export async function verifyBook(desk: Desk, bookId: string): Promise<Verification> {
  return verify(desk.shelf.open(bookId));
}

/** The same for a book that is on no shelf (an import before it is taken over). */
export async function verify(book: Pick<Book, 'database' | 'folder'>): Promise<Verification> {
  const { database, folder } = book;
  const rows = journalRows(database);
  const documents = allDocuments(database);
  const logRows = logs(database);
  const broken = breaksIn(rows);
  for (const { sha256, json } of documents) {
    if (sha256Of(json) !== sha256) broken.push(`document ${sha256} was changed after it was kept`);
  }
  for (const log of logRows) {
    const hash = await hashOfFile(rawLogPath(folder, log.sha256));
    if (hash === null) broken.push(`the bytes of log ${log.name} are missing`);
    else if (hash !== log.sha256) broken.push(`the bytes of log ${log.name} were changed`);
  }
  if (broken.length === 0) broken.push(...differencesFromReplay(database));
  return {
    entries: rows.length,
    documents: documents.length,
    logs: logRows.length,
    head: rows.at(-1)?.hash ?? '',
    broken,
  };
}

/** Replay the journal into an empty book and compare every table of the state. */
function differencesFromReplay(database: Database): string[] {
  const replay = openDatabase(':memory:');
  try {
    migrate(replay);
    replay.transaction(() => {
      for (const { json } of allDocuments(database)) keepDocument(replay, json);
      for (const row of journalRows(database)) insertRow(replay, row);
    });
    const content = (from: Database, table: string) =>
      JSON.stringify(from.all(z.record(z.string(), z.unknown()), `SELECT * FROM ${table} ORDER BY 1`));
    return STATE_TABLES.filter((table) => content(database, table) !== content(replay, table)).map(
      (table) => `the table of each ${table} is not what the journal says`,
    );
  } finally {
    replay.close();
  }
}
