/** What the rows of every state table have in common: switches, documents, and the journal entry behind them. */
import * as z from 'zod';

/** A switch, stored as 0 or 1. */
export const flag = z.int().transform((one) => one !== 0);
/** A document, stored as text. */
export const json = z.string().transform((text): unknown => JSON.parse(text));
/** The rows `t` of a table, each with the journal entry `j` that made it. */
export const withEntry = (table: string) => `FROM ${table} AS t JOIN journal AS j ON j.seq = t.entry`;
