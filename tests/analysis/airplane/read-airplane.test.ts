/** The airplane's description at the border: the demo airplanes read, and a mistake is named with its field. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FACTS, factsOf, readAirplane } from '../../../analysis/airplane/index.ts';
import { toSi } from '../../../analysis/units/index.ts';
import { ROOT } from '../../house/source-files.ts';

const file = (name: string) => JSON.parse(readFileSync(join(ROOT, 'sample-tests', name, 'airplane.json'), 'utf8'));

function wrong(change: (plane: ReturnType<typeof file>) => void) {
  const plane = file('ouzel');
  change(plane);
  return readAirplane(plane, 'ouzel.json').problems;
}

describe('the demo airplanes', () => {
  it.each(['ouzel', 'wrenlet'])('%s reads without a problem', (name) => {
    expect(readAirplane(file(name)).problems).toEqual([]);
  });

  it('carry SI beside what was entered', () => {
    const { airplane } = readAirplane(file('ouzel'));
    expect(airplane?.limits.coolant.caution).toMatchObject({ value: 105, unit: 'degC', si: toSi(105, 'degC') });
    expect(airplane?.speeds.climb?.si).toBeCloseTo(toSi(95, 'kt'), 9);
  });
});

describe('a mistake', () => {
  it('names file, field and what was wanted', () => {
    const [first] = wrong((plane) => {
      plane.limits.coolant.caution.unit = 'kt';
    });
    expect(first?.where.field).toBe('limits.coolant.caution.unit');
    expect(first?.message).toMatch(/ouzel\.json: limits\.coolant\.caution\.unit: unit must be one of K, degC, degF/);
    expect(first?.mend).not.toBe('');
  });

  it('is a limit without its source', () => {
    const [first] = wrong((plane) => {
      delete plane.limits.oil.limit.source;
    });
    expect(first?.where.field).toBe('limits.oil.limit.source');
  });

  it('is a field nobody knows', () => {
    const [first] = wrong((plane) => {
      plane.cooling.turbo = true;
    });
    expect(first?.message).toMatch(/turbo/);
  });

  it('is something that is no description at all', () => {
    for (const odd of [null, 3, 'x', [], {}]) expect(readAirplane(odd).problems.length).toBeGreaterThan(0);
  });
});

describe('facts', () => {
  it('differ between the two airplanes as the airplanes do', () => {
    const ouzel = readAirplane(file('ouzel')).airplane;
    const wrenlet = readAirplane(file('wrenlet')).airplane;
    if (!ouzel || !wrenlet) throw new Error('the demo airplanes do not read');
    expect(factsOf(ouzel).get('gear.retractable')).toBe(true);
    expect(factsOf(wrenlet).get('gear.retractable')).toBe(false);
    expect(factsOf(ouzel).get('batteries')).toBe(2);
    expect(factsOf(wrenlet).get('cooling.kind')).toBe('air');
  });

  it('have one name and one path each', () => {
    expect(new Set(FACTS.map((fact) => fact.name)).size).toBe(FACTS.length);
  });
});
