/** Received logs are kept byte for byte, whatever their name, size or content; nothing half-received stays. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { logOf } from '../../../server/actions/log-of.ts';
import { putAway } from '../../../server/actions/put-away.ts';
import { receiveLog } from '../../../server/actions/receive-log.ts';
import { storedLogs } from '../../../server/book/read-state.ts';
import { deskWithOuzel } from '../desk-for-tests.ts';

const sha256 = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

const CASES: [string, Buffer][] = [
  ['plain text', Buffer.from('Time,CHT\n0,80\n')],
  ['every byte', Buffer.from(Array.from({ length: 256 }, (_, i) => i))],
  ['nothing at all', Buffer.alloc(0)],
  ['two megabytes', Buffer.alloc(2 * 1024 * 1024, 'Time,Coolant Temp\r\n')],
];

describe('receiving a log', () => {
  it.each(CASES)('keeps %s as it came', async (_, bytes) => {
    const { desk, book } = deskWithOuzel();
    const pieces = Readable.from([bytes.subarray(0, 100), bytes.subarray(100)]);
    const { log, known } = await receiveLog(desk, book, pieces, 'run.csv', { who: 'Ines Corbeau' });
    expect(log).toMatchObject({ id: sha256(bytes), name: 'run.csv', size: bytes.length, who: 'Ines Corbeau' });
    expect(known).toBe(false);
    expect(readFileSync(logOf(desk, book, log.id).path).equals(bytes)).toBe(true);
    expect(readdirSync(join(desk.settings.dataFolder, book, 'logs/arriving'))).toEqual([]);
  });

  it('knows the same bytes again under any name, and brings a log back that was put away', async () => {
    const { desk, book } = deskWithOuzel();
    const send = (name: string) => receiveLog(desk, book, Readable.from([Buffer.from('a,b\n1,2\n')]), name);
    const first = await send('run.csv');
    expect(await send('other.csv')).toEqual({ log: first.log, known: true });
    putAway(desk, book, { what: 'log', id: first.log.id });
    expect(storedLogs(desk.shelf.open(book))).toEqual([]);
    expect(await send('other.csv')).toEqual({ log: first.log, known: true });
    expect(storedLogs(desk.shelf.open(book))).toHaveLength(1);
  });

  it('tells two files of one name apart', async () => {
    const { desk, book } = deskWithOuzel();
    const names: string[] = [];
    for (const text of ['one', 'two', 'three']) {
      names.push((await receiveLog(desk, book, Readable.from([Buffer.from(text)]), 'LOG.CSV')).log.name);
    }
    expect(names).toEqual(['LOG.CSV', 'LOG (2).CSV', 'LOG (3).CSV']);
  });

  it('stops at the limit and leaves nothing behind', async () => {
    const { desk, book } = deskWithOuzel({ settings: { uploadLimitBytes: 1000 } });
    const big = Readable.from([Buffer.alloc(600), Buffer.alloc(401)]);
    await expect(receiveLog(desk, book, big, 'big.csv')).rejects.toThrow('larger than 1000 bytes');
    const exact = await receiveLog(desk, book, Readable.from([Buffer.alloc(1000)]), 'exact.csv');
    expect(exact.log.size).toBe(1000);
    expect(storedLogs(desk.shelf.open(book))).toHaveLength(1);
    expect(readdirSync(join(desk.settings.dataFolder, book, 'logs/arriving'))).toEqual([]);
  });

  it('leaves nothing behind when the sender goes away', async () => {
    const { desk, book } = deskWithOuzel();
    const broken = Readable.from(
      (async function* () {
        yield Buffer.from('half');
        throw new Error('gone');
      })(),
    );
    await expect(receiveLog(desk, book, broken, 'cut.csv')).rejects.toThrow('gone');
    expect(storedLogs(desk.shelf.open(book))).toEqual([]);
    expect(readdirSync(join(desk.settings.dataFolder, book, 'logs/arriving'))).toEqual([]);
  });

  it.each(['../../../etc/passwd', '..\\..\\windows\\system.ini', '/etc/shadow', 'a\u0000b', '..', 'con', '‮vsc.exe'])(
    'makes no path of the name %j',
    async (name) => {
      const { desk, book } = deskWithOuzel();
      const { log } = await receiveLog(desk, book, Readable.from([Buffer.from(name)]), name);
      const { path } = logOf(desk, book, log.id);
      expect(path).toBe(join(desk.settings.dataFolder, book, 'logs', log.id.slice(0, 2), log.id));
      expect(existsSync(path)).toBe(true);
      expect(log.name).not.toMatch(/[/\\\p{Cc}\p{Cf}]/u);
    },
  );
});
