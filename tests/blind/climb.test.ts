/** A small run of the coverage of the climb reduction; the large one is `npm run bench:coverage`. */
import { describe, expect, it } from 'vitest';
import { coverageChangingSpeed, coverageClimbCards, coverageClimbEnds, coverageLoneClimb } from './climb.ts';
import { coverageClimbLogs } from './climb-logs.ts';
import { type CoverageRow, coverageLines, shareOf } from './coverage-row.ts';

/** A share from this many flights is known to about this much at 95 %; climbs of one flight hang together. */
const slack = (flights: number) => 1.5 / Math.sqrt(flights) / 2;

function expectCovered(rows: readonly CoverageRow[], flights: number): void {
  for (const row of rows) {
    const [line] = coverageLines([row]);
    expect(shareOf(row), line).toBeGreaterThanOrEqual(row.wanted[0] - slack(flights));
  }
}

describe('climb, simulated flights with Dryden gusts', () => {
  it('finds the climbs and holds rates, best speeds and best rate about as often as it says', () => {
    const rows = coverageClimbLogs(12);
    expectCovered(rows, 12);
    const [observed] = rows;
    expect((observed?.refused ?? 1) / (observed?.flights ?? 1)).toBeLessThan(0.2);
  });

  it('of one climb alone too', () => {
    expectCovered(coverageLoneClimb(12), 12);
  });

  it('says so where airspeed changed by 12 kt', () => {
    expectCovered(coverageChangingSpeed(10), 100);
  });
});

describe('climb, cards of a known airplane', () => {
  it('five speeds twice: best speed and best rate', () => {
    expectCovered(coverageClimbCards(8), 8);
  });

  it('a best rate beyond the speeds flown gets no number', () => {
    expectCovered(coverageClimbEnds(10), 100);
  });
});
