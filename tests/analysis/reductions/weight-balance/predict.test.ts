/** A load case asked of a result: the same as working it out from the start. */
import { describe, expect, it } from 'vitest';
import { weightBalance } from '../../../../analysis/reductions/weight-balance/index.ts';
import { demo } from '../../demo-airplanes.ts';

const result = weightBalance.reduce({ airplane: demo('ouzel') });
const predict = (conditions: unknown) => weightBalance.predict?.(result, conditions);
const kg = (value: number) => ({ value, unit: 'kg' });

describe('predicting a load case', () => {
  it('gives mass and arm with their interval', () => {
    const answer = predict({ items: [{ station: 'left seat', mass: kg(78) }], fuel: { value: 0.06, unit: 'm3' } });
    expect(answer?.status).toBe('predicted');
    const [mass, arm] = answer?.quantities ?? [];
    // 742 + 78 + 60 L at 6 lb per US gallon
    expect(mass?.value).toBeCloseTo(742 + 78 + 0.06 * 718.955, 1);
    expect(mass?.low).toBeLessThan(mass?.value ?? 0);
    expect(arm?.why).toContain('inside the envelope');
  });

  it('says where a case is not inside', () => {
    const answer = predict({ items: [{ station: 'tail ballast', mass: kg(80) }] });
    expect(answer?.quantities[1]?.why).toContain('not inside');
  });

  it('refuses a place it does not know', () => {
    expect(predict({ items: [{ station: 'roof rack', mass: kg(5) }] })).toMatchObject({ status: 'refused' });
    expect(() => predict({ items: [{ station: 'left seat', mass: 78 }] })).toThrow(/items.0.mass/);
  });
});
