/** A held record in blocks: few enough to try many time constants on, fine enough to lose nothing. */

/** Evenly spaced temperatures and air of one held condition. */
export interface HeldRecord {
  /** spacing, s */
  dt: number;
  /** K, NaN where missing */
  hot: Float64Array;
  /** air the lump is cooled by, K, smoothed, without gaps; all 0 where no air was logged */
  air: Float64Array;
  /** recording step, K, 0 where none shows */
  step: number;
  /** readings as recorded in one sample of this record */
  perSample: number;
}

export interface Blocks {
  /** length of a block, s */
  seconds: number;
  /** readings as recorded in a block */
  perBlock: number;
  /** middle of each block from the start of the record, s; evenly spaced, empty blocks included */
  times: Float64Array;
  hot: Float64Array;
  air: Float64Array;
  /** room for the response to the air, written over at each time constant tried */
  response: Float64Array;
}

/** More blocks than this say no more about a curve than this many. */
const ENOUGH = 100;
/** A block must stay short against the fastest time constant, s. */
const LONGEST = 10;

/**
 * Means of a record over short blocks.
 * @param record a held condition, object
 * @returns blocks, NaN where no reading fell into one
 * @source means of a tenth of a minute at most, short against any time constant [practice]
 */
export function blocksOf(record: HeldRecord): Blocks {
  const { dt, hot, air } = record;
  const most = Math.max(1, Math.floor(LONGEST / dt));
  const size = Math.min(most, Math.max(1, Math.round(hot.length / ENOUGH)));
  const count = Math.floor(hot.length / size);
  const out = { times: new Float64Array(count), hot: new Float64Array(count), air: new Float64Array(count) };
  for (let block = 0; block < count; block += 1) {
    let [sum, n, airSum] = [0, 0, 0];
    for (let i = block * size; i < (block + 1) * size; i += 1) {
      airSum += air[i] ?? 0;
      const value = hot[i] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      sum += value;
      n += 1;
    }
    out.times[block] = (block * size + (size - 1) / 2) * dt;
    out.hot[block] = n > 0 ? sum / n : Number.NaN;
    out.air[block] = airSum / size;
  }
  return { ...out, response: new Float64Array(count), seconds: size * dt, perBlock: size * record.perSample };
}
