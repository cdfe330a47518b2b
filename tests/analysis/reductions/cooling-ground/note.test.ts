/** The worked example of the method note, computed with the code it explains. */
import { describe, expect, it } from 'vitest';
import { correctToHotDay, hotDayAir, timeToReach } from '../../../../analysis/models/index.ts';
import { seededRandom } from '../../../../analysis/numbers/index.ts';
import { coolingGround } from '../../../../analysis/reductions/cooling-ground/index.ts';
import { SOURCES } from '../../../../analysis/sources.ts';
import { show, toSi } from '../../../../analysis/units/index.ts';

const { note } = coolingGround;
const C = (degrees: number) => toSi(degrees, 'degC');
const number = (si: number) => show(si, 'degC', { decimals: 1 }).number;

describe('worked example of ground cooling', () => {
  const hot = hotDayAir('14cfr23', 226);
  const corrected = correctToHotDay(C(98), 'coolant', C(21), hot);

  it('hot day and margin', () => {
    expect(note.workedExample.lines[0]).toBe(`Coolant settles at 98.0 °C. Hot day at 226 m: ${number(hot)} °C.`);
    const margin = (C(112) - corrected).toFixed(1).replace('-', '−');
    expect(note.workedExample.lines[1]).toBe(
      `Corrected: 98.0 + (${number(hot)} − 21.0) = ${number(corrected)} °C; margin 112.0 − ${number(corrected)} = ${margin} K.`,
    );
  });

  it('time to the limit', () => {
    const seconds = timeToReach(C(80), corrected, 260, C(112));
    const [above, over] = [(corrected - C(80)).toFixed(1), (corrected - C(112)).toFixed(1)];
    expect(note.workedExample.lines[2]).toBe(
      `From 80.0 °C with a time constant of 260 s the limit comes after 260 ln(${above}/${over}) = ${seconds.toFixed(0)} s.`,
    );
  });

  it('as a distribution, drawn here anew', () => {
    const random = seededRandom('note');
    const times = Array.from({ length: 100_000 }, () =>
      timeToReach(0, 43 + 2 * random.normal(), 300 * (1 + 0.1 * random.normal()), 42),
    ).sort((a, b) => a - b);
    const minutes = (share: number) => ((times[Math.floor(share * times.length)] ?? 0) / 60).toFixed(0);
    const never = times.filter((t) => t === Number.POSITIVE_INFINITY).length / times.length;
    expect(note.workedExample.lines[3]).toContain(
      `5 % of runs are there within ${minutes(0.05)} min, the middle one after ${minutes(0.5)} min, ${(100 * never).toFixed(0)} % never.`,
    );
  });

  it('cites sources that are on the list', () => {
    const keys = new Set(SOURCES.map(({ key }) => key));
    for (const source of [...note.sources, ...note.formulas.map((one) => one.source)]) expect(keys).toContain(source);
    expect(note.versions[0]?.version).toMatch(/^cooling-ground \d+$/);
  });
});
