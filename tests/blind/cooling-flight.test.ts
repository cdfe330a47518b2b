/** A small run of the coverage of flight cooling; the large one is `npm run bench:coverage`. */
import { describe, expect, it } from 'vitest';
import { coverageCoolingFlight, FLIGHT_CASES } from './cooling-flight.ts';
import { coverageLines, shareOf } from './coverage-row.ts';

const FLIGHTS = 16;
/** Three readings or exponents of one flight hang together: a share from so few flights is known to about this. */
const SLACK = 1.5 / Math.sqrt(FLIGHTS) / 2;

describe('flight cooling, simulated flights of a known law', () => {
  it.each(FLIGHT_CASES.map((one) => [one.what, one] as const))('%s', (_, one) => {
    for (const row of coverageCoolingFlight(FLIGHTS, [one])) {
      const [line] = coverageLines([row]);
      expect(shareOf(row), line).toBeGreaterThanOrEqual(row.wanted[0] - SLACK);
      expect(row.refused / row.flights, line).toBeLessThan(0.2);
    }
  });
});
