/** One line of the coverage table: how often a stated 95 % interval held the truth, and how wide it was. */

export interface CoverageRow {
  what: string;
  /** intervals that held the truth, and all that were given */
  inside: number;
  of: number;
  /** flights refused: no miss, but too many are a fault of the rules */
  refused: number;
  flights: number;
  /** mean half-width and root mean square error, in `unit` */
  meanU95: number;
  rmsError: number;
  unit: string;
  /** share wanted, 0 to 1 */
  wanted: readonly [number, number];
}

export class CoverageCount {
  private inside = 0;
  private all = 0;
  private widths = 0;
  private squares = 0;
  private readonly what: string;
  private readonly unit: string;
  private readonly scale: number;
  constructor(what: string, unit: string, scale = 1) {
    this.what = what;
    this.unit = unit;
    this.scale = scale;
  }
  add(value: number, truth: number, u95: number): void {
    this.all += 1;
    if (Math.abs(value - truth) <= u95) this.inside += 1;
    this.widths += u95 / this.scale;
    this.squares += ((value - truth) / this.scale) ** 2;
  }
  row(flights: number, refused: number, wanted: readonly [number, number]): CoverageRow {
    return {
      what: this.what,
      inside: this.inside,
      of: this.all,
      refused,
      flights,
      meanU95: this.widths / Math.max(1, this.all),
      rmsError: Math.sqrt(this.squares / Math.max(1, this.all)),
      unit: this.unit,
      wanted,
    };
  }
}

/** The share of a row, 0 to 1. */
export function shareOf(row: CoverageRow): number {
  return row.of > 0 ? row.inside / row.of : Number.NaN;
}

/** Rows as lines of text. */
export function coverageLines(rows: readonly CoverageRow[]): string[] {
  return rows.map((row) => {
    const share = (100 * shareOf(row)).toFixed(1);
    const band = `${(100 * row.wanted[0]).toFixed(0)} to ${(100 * row.wanted[1]).toFixed(1)} %`;
    return `${row.what}: ${share} % of ${row.of} (wanted ${band}), U95 ${row.meanU95.toPrecision(3)} ${row.unit}, error ${row.rmsError.toPrecision(3)} ${row.unit} rms, ${row.refused} of ${row.flights} refused`;
  });
}
