/** The checker catches each rule when it is broken: a valid program spoiled one way at a time. */
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../analysis/catalogue/index.ts';
import { checkOrder, type Part, type Program, planProgram, type Rule } from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');
const valid = planProgram(ouzel);
const arrangement = valid.outings.map((outing) => outing.parts);

function broken(parts: readonly (readonly Part[])[]): Set<Rule> {
  const program = planProgram(ouzel, { arrangement: parts, asItStands: true });
  return new Set(checkOrder(program, CATALOGUE, ouzel).map((one) => one.rule));
}

function outingOf(test: string, part = 1): number {
  return arrangement.findIndex((parts) => parts.some((one) => one.test === test && one.part === part));
}

/** The arrangement with one part taken from its outing and put into another. */
function moved(test: string, to: number, part = 1): Part[][] {
  const copy = arrangement.map((parts) => parts.filter((one) => !(one.test === test && one.part === part)));
  copy[to]?.push({ test, part, of: CATALOGUE.find((one) => one.id === test)?.planning.parts ?? 1 });
  return copy.filter((parts) => parts.length > 0);
}

describe('the checker', () => {
  it('finds nothing wrong with a program as made', () => {
    expect(checkOrder(valid, CATALOGUE, ouzel)).toEqual([]);
  });

  it.each<[Rule, () => Set<Rule>]>([
    ['every-test-once', () => broken(arrangement.filter((_, i) => i !== outingOf('glide')))],
    ['stage-order', () => broken([...arrangement.slice(5), ...arrangement.slice(0, 5)])],
    ['needs-first', () => broken(moved('slow-flight', outingOf('airspeed-calibration-first') - 1))],
    ['made-before-used', () => broken(moved('stall-clean', outingOf('slow-flight') - 1))],
    ['known-before-next', () => broken(moved('static-altimeter-check', outingOf('airspeed-calibration-first')))],
    ['one-new-thing', () => broken(moved('flap-speed-limits', outingOf('stall-landing')))],
    ['flown-alone', () => broken(moved('roll-rate', outingOf('aft-cg-expansion')))],
    ['one-load', () => broken(moved('level-speed-power', outingOf('glide')))],
    ['kinds-apart', () => broken(moved('post-flight-inspection', outingOf('first-flight')))],
    ['weight-and-cg', () => broken(moved('glide', outingOf('weight-expansion') - 1))],
    ['parts-in-order', () => broken(moved('climb-sawtooth', outingOf('climb-sawtooth', 1), 2))],
    ['fuel-and-time', () => broken(moved('range-endurance-fuel', outingOf('level-speed-power')))],
  ])('catches %s', (rule, spoil) => {
    expect([...spoil()]).toContain(rule);
  });

  it('catches a test that does not apply', () => {
    const wrenlet = demo('wrenlet');
    const rules = checkOrder(valid, CATALOGUE, wrenlet).map((one) => one.rule);
    expect(rules).toContain('only-what-applies');
  });

  it('catches an order that is not that of the outings', () => {
    const spoiled: Program = { ...valid, order: [...valid.order].reverse() };
    expect(checkOrder(spoiled, CATALOGUE, ouzel)).toHaveLength(1);
  });
});
