/** A small run of the coverage of the airspeed calibration; the large one is `npm run bench:coverage`. */
import { describe, expect, it } from 'vitest';
import { coverageAirspeed, coverageAirspeedTurns } from './airspeed.ts';
import { coverageAirspeedLegs, LEG_CASES } from './airspeed-legs.ts';
import { type CoverageRow, coverageLines, shareOf } from './coverage-row.ts';

/** Rows of one flight hang together: a share from this many flights is known to about this much at 95 %. */
const slack = (flights: number) => 1.5 / Math.sqrt(flights) / 2;

function expectCovered(rows: readonly CoverageRow[]): void {
  for (const row of rows) {
    const [line] = coverageLines([row]);
    expect(shareOf(row), line).toBeGreaterThanOrEqual(row.wanted[0] - slack(row.flights));
    expect(row.refused / row.flights, line).toBeLessThan(0.2);
  }
}

describe('airspeed calibration, simulated flights with Dryden gusts', () => {
  it('holds the truth inside U95 about as often as it says', () => {
    expectCovered(coverageAirspeed(40));
  });

  it('in continuous turns too, where neighbouring pieces feel the same gust', () => {
    expectCovered(coverageAirspeedTurns(24));
  });
});

describe('airspeed calibration, legs of stated scatter', () => {
  it.each(LEG_CASES.map((one) => [one.what, one] as const))('%s', (_, one) => {
    expectCovered(coverageAirspeedLegs(24, [one]));
  });
});
