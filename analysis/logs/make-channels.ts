/** From columns of figures to channels of quantities in SI. */
import { flag } from '../remarks/index.ts';
import { unitOf } from '../units/index.ts';
import { type Recognised, recogniseColumns } from './channels/recognise.ts';
import { timeRole } from './clock/time-names.ts';
import { channelOfNumbers } from './lazy-channel.ts';
import type { LogMap } from './log-map.ts';
import { packedDegrees, withHemisphere } from './positions.ts';
import { type Screen, screenKept } from './quality/screen-values.ts';
import type { ReadQuestion } from './read-outcome.ts';
import { someRows } from './relations/scale-evidence.ts';
import { type ColumnStore, numbersOf, textsOf } from './rows/column-store.ts';
import { type KeptNumbers, someNumbers } from './rows/kept-numbers.ts';
import type { LogChannel, TimeBase } from './table.ts';
import type { HeaderColumn } from './text/layout.ts';

/** A column that is left after the clock has taken its own. */
export interface LeftColumn {
  header: HeaderColumn;
  store: ColumnStore;
}

/**
 * Make the channels of a file.
 * @param left the columns the clock did not take
 * @param time the time base, object
 * @param map what a person confirmed
 * @returns channels, and what must be asked about them
 */
export function makeChannels(
  left: readonly LeftColumn[],
  time: TimeBase,
  map: LogMap | undefined,
): { channels: LogChannel[]; screens: (Screen | null)[]; questions: ReadQuestion[] } {
  const columns = left.filter(({ header, store }) => !(isClock(store) && timeRole(header.name) !== null));
  for (const { header, store } of columns) packedDegrees(header, store);
  for (const one of withHemisphere(columns)) one.apply();
  // What a column is shows in some thousands of its rows, evenly spread.
  const some = someRows(time.seconds.length);
  const numbers = columns.map(({ store }) => (store.kind === 'text' ? null : numbersOf(store)));
  const recognised = recogniseColumns(
    columns.map(({ header, store }, i) => {
      const kept = isNumeric(store) ? numbers[i] : null;
      return { header, numbers: kept ? someNumbers(kept, some) : null, holdsStates: store.kind === 'state' };
    }),
    Float64Array.from(some, (row) => time.seconds[row] ?? Number.NaN),
    map,
  );
  const made = columns.map(({ header, store }, i) => {
    const one = recognised.channels[i] ?? { quantity: null, unit: null, confidence: 0, why: '', flags: [] };
    return channelOf(header, store, numbers[i] ?? null, one, time);
  });
  return {
    channels: made.map(({ channel }) => channel),
    screens: made.map(({ screen }) => screen),
    questions: recognised.questions,
  };
}

const isNumeric = ({ kind }: ColumnStore) => kind === 'number' || kind === 'degrees' || kind === 'state';
const isClock = ({ kind }: ColumnStore) => kind === 'time' || kind === 'date' || kind === 'date-time';

function channelOf(
  header: HeaderColumn,
  store: ColumnStore,
  kept: KeptNumbers | null,
  one: Recognised,
  time: TimeBase,
): { channel: LogChannel; screen: Screen | null } {
  const { column, index, name } = header;
  const { odd } = store;
  const { quantity, unit, confidence, why } = one;
  const flags = [...one.flags];
  if (odd.count > 0) {
    const span = { fromSeconds: time.seconds[odd.firstRow] ?? 0, toSeconds: time.seconds[odd.lastRow] ?? 0 };
    const cells = odd.count === 1 ? '1 cell holds' : `${odd.count} cells hold`;
    flags.push(
      flag('non-numeric', `Column "${column}": ${cells} text, such as "${odd.example}"; taken as missing.`, span),
    );
  }
  const base = { column, index, name, quantity, unit, confidence, why, flags };
  const share = (there: number) => (time.seconds.length > 0 ? there / time.seconds.length : 0);
  if (!kept) {
    const texts = textsOf(store);
    const values = store.first.fill(Number.NaN);
    return {
      channel: { ...base, values, texts, valid: share(texts.filter((text) => text !== '').length) },
      screen: null,
    };
  }
  const { factor, offset } = quantity !== null && unit !== null ? unitOf(unit) : { factor: 1, offset: 0 };
  const screen = screenKept(kept, factor, offset);
  const channel = channelOfNumbers({ ...base, valid: share(screen.there) }, { kept, factor, offset });
  return { channel, screen };
}
