/** Reading a log of a book: what was confirmed is kept, offered again for the same header, and never forced. */
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { confirmMap } from '../../../server/actions/confirm-map.ts';
import { readStoredLog } from '../../../server/actions/read-stored-log.ts';
import { receiveLog } from '../../../server/actions/receive-log.ts';
import { undo } from '../../../server/actions/undo.ts';
import { storedLogs } from '../../../server/book/read-state.ts';
import { deskWithOuzel } from '../desk-for-tests.ts';
import { plainReader } from '../plain-reader.ts';

const FIRST = 'Time,Coolant\n0,80\n1,81\n';
const SAME_LAYOUT = 'Time,Coolant\n0,70\n1,71\n';
const OTHER_LAYOUT = 'Time,Oil\n0,70\n1,71\n';
const MAP = {
  columns: { Coolant: { quantity: 'coolant-temperature', unit: 'degC' } },
  time: { columns: ['Time'], offset: '+01:00', date: '2031-05-04' },
};

async function withLogs(...texts: string[]) {
  const reader = plainReader();
  const { desk, book } = deskWithOuzel({ readLog: reader.read });
  const ids: string[] = [];
  for (const [i, text] of texts.entries()) {
    ids.push((await receiveLog(desk, book, Readable.from([Buffer.from(text)]), `run-${i + 1}.csv`)).log.id);
  }
  const [first = '', second = ''] = ids;
  return { desk, book, first, second, reader };
}

describe('a map', () => {
  it('is asked for, confirmed, kept with the log, and saved for its layout without the day', async () => {
    const { desk, book, first, second } = await withLogs(FIRST, SAME_LAYOUT);
    expect(await readStoredLog(desk, book, first)).toMatchObject({ mapFrom: 'none', outcome: { accepted: 'ask' } });
    const confirmed = await confirmMap(desk, book, first, MAP, { who: 'Ines' });
    expect(confirmed).toMatchObject({
      mapFrom: 'confirmed',
      map: MAP,
      outcome: { accepted: 'yes', file: 'run-1.csv' },
    });
    expect(storedLogs(desk.shelf.open(book))[0]).toMatchObject({ id: first, map: MAP });
    const offered = await readStoredLog(desk, book, second);
    expect(offered).toMatchObject({ mapFrom: 'saved', savedOn: 'run-1.csv', outcome: { accepted: 'yes' } });
    expect(offered.map).toEqual({ ...MAP, time: { columns: ['Time'], offset: '+01:00' } });
  });

  it('is not offered for another header', async () => {
    const { desk, book, first, second } = await withLogs(FIRST, OTHER_LAYOUT);
    await confirmMap(desk, book, first, MAP);
    expect(await readStoredLog(desk, book, second)).toMatchObject({ mapFrom: 'none', outcome: { accepted: 'ask' } });
  });

  it('confirmed later on another log of the layout is the one offered; undone, the earlier one is', async () => {
    const { desk, book, first, second } = await withLogs(FIRST, SAME_LAYOUT);
    const other = { columns: { Coolant: { quantity: 'oil-temperature', unit: 'degC' } } };
    await confirmMap(desk, book, first, MAP);
    await confirmMap(desk, book, second, other);
    expect(await readStoredLog(desk, book, second)).toMatchObject({ mapFrom: 'confirmed', map: other });
    undo(desk, book, 6);
    expect(await readStoredLog(desk, book, second)).toMatchObject({ mapFrom: 'saved', savedOn: 'run-1.csv' });
    undo(desk, book, 5);
    expect(await readStoredLog(desk, book, second)).toMatchObject({ mapFrom: 'none' });
  });

  it('that does not fit its schema or the file is refused, and the one confirmed before stays', async () => {
    const { desk, book, first } = await withLogs(FIRST);
    await confirmMap(desk, book, first, MAP);
    const wrongUnit = { columns: { Coolant: { quantity: 'coolant-temperature', unit: 'parsec' } } };
    await expect(confirmMap(desk, book, first, wrongUnit)).rejects.toMatchObject({
      problems: [{ code: 'bad-map', where: { field: 'columns.Coolant.unit' } }],
    });
    const wrongColumn = { columns: { Elsewhere: { quantity: 'coolant-temperature', unit: 'degC' } } };
    await expect(confirmMap(desk, book, first, wrongColumn)).rejects.toMatchObject({ problems: [{ code: 'bad-map' }] });
    expect(await readStoredLog(desk, book, first)).toMatchObject({ mapFrom: 'confirmed', map: MAP });
  });

  it('can be tried without being kept', async () => {
    const { desk, book, first } = await withLogs(FIRST);
    expect(await readStoredLog(desk, book, first, MAP)).toMatchObject({
      mapFrom: 'given',
      outcome: { accepted: 'yes' },
    });
    expect(await readStoredLog(desk, book, first)).toMatchObject({ mapFrom: 'none' });
  });
});

describe('a reading', () => {
  it('is made once, kept beside the book, and made again when the cache is gone', async () => {
    const { desk, book, first, reader } = await withLogs(FIRST);
    const made = await readStoredLog(desk, book, first);
    await readStoredLog(desk, book, first);
    expect(reader.count()).toBe(1);
    desk.recentReadings.clear();
    const kept = await readStoredLog(desk, book, first);
    expect(reader.count()).toBe(1);
    expect(kept).toEqual(made);
    expect(kept.outcome.table?.channels[0]?.values).toBeInstanceOf(Float64Array);
    desk.recentReadings.clear();
    const cache = join(desk.settings.dataFolder, book, 'cache');
    expect(readdirSync(cache)).toHaveLength(1);
    rmSync(cache, { recursive: true });
    await readStoredLog(desk, book, first);
    expect(reader.count()).toBe(2);
  });

  it('of a file that is no log says why, and stays with the file', async () => {
    const { desk, book, first } = await withLogs('no table here\n');
    const { outcome } = await readStoredLog(desk, book, first);
    expect(outcome).toMatchObject({ accepted: 'no', problems: [{ code: 'not-a-log' }], table: null });
  });
});
