import { describe, expect, it } from 'vitest';
import { nearestInHull, seededRandom } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

const square = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
];

describe('nearest point of a convex hull', () => {
  it.each([
    ['inside', [0.5, 1.7], 0, [0.5, 1.7]],
    ['on an edge', [2, 1], 0, [2, 1]],
    ['off an edge', [3.5, 0.4], 1.5, [2, 0.4]],
    ['off a corner', [5, 6], 5, [2, 2]],
  ])('%s of a square', (_, x, distance, point) => {
    const found = nearestInHull(square, x);
    expect(found.distance).toBeCloseTo(distance, 9);
    found.point.forEach((one, k) => {
      expect(one).toBeCloseTo(point[k] ?? Number.NaN, 9);
    });
    expect(found.shares.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
  });

  it('flat hulls: one point, a line in space, a vertex given twice', () => {
    expect(nearestInHull([[1, 2, 3]], [1, 2, 5]).distance).toBeCloseTo(2, 12);
    const line = [
      [0, 0, 0],
      [2, 2, 0],
      [1, 1, 0],
      [2, 2, 0],
    ];
    expect(nearestInHull(line, [1.2, 1.2, 0]).distance).toBe(0);
    expect(nearestInHull(line, [2, 0, 1]).distance).toBeCloseTo(Math.sqrt(3), 9);
    expect(() => nearestInHull([], [0])).toThrow(OutOfRange);
  });

  it('no vertex lies nearer in the direction of the point asked about: the condition that there is no better one', () => {
    const random = seededRandom('hulls');
    for (let trial = 0; trial < 300; trial += 1) {
      const size = 1 + (trial % 4);
      const vertices = Array.from({ length: 2 + random.whole(18) }, () =>
        Array.from({ length: size }, () => random.normal()),
      );
      const x = Array.from({ length: size }, () => 1.5 * random.normal());
      const { point, distance, shares } = nearestInHull(vertices, x);
      const mixed = x.map((_, k) => vertices.reduce((sum, vertex, i) => sum + (shares[i] ?? 0) * (vertex[k] ?? 0), 0));
      mixed.forEach((one, k) => {
        expect(one).toBeCloseTo(point[k] ?? Number.NaN, 8);
      });
      expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
      const away = x.map((one, k) => one - (point[k] ?? 0));
      expect(Math.hypot(...away)).toBeCloseTo(distance, 6);
      for (const vertex of vertices) {
        const further = vertex.reduce((sum, one, k) => sum + (one - (point[k] ?? 0)) * (away[k] ?? 0), 0);
        expect(further).toBeLessThan(1e-6);
      }
    }
  });
});
