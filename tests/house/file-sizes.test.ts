/** One idea a file, mostly 50 to 250 lines. A longer one stands in this list with its reason. */
import { describe, expect, it } from 'vitest';
import { filesUnder, textOf } from './source-files.ts';

const MOST = 250;

const ALLOWED: Record<string, string> = {
  'analysis/logs/channels/channel-words.ts': 'a table of words, one list a class',
};

const POOR_NAMES = /(^|\/)(utils?|helpers?|common|types|misc|shared|stuff)(\.ts|\/)/;

const all = ['analysis', 'templates', 'server', 'sample-tests'].flatMap((folder) => filesUnder(folder));

describe('files', () => {
  it(`hold at most ${MOST} lines, or say why not`, () => {
    const long = all
      .map((path) => ({ path, lines: textOf(path).trimEnd().split('\n').length }))
      .filter(({ path, lines }) => lines > MOST && !(path in ALLOWED))
      .map(({ path, lines }) => `${path}: ${lines} lines`);
    expect(long).toEqual([]);
  });

  it('have no stale entry in the list of long ones', () => {
    const stale = Object.keys(ALLOWED).filter(
      (path) => !all.includes(path) || textOf(path).trimEnd().split('\n').length <= MOST,
    );
    expect(stale).toEqual([]);
  });

  it('are named after one idea', () => {
    expect(all.filter((path) => POOR_NAMES.test(path))).toEqual([]);
  });
});
