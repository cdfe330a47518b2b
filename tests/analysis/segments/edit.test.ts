import { describe, expect, it } from 'vitest';
import { recordingOf } from '../../../analysis/logs/index.ts';
import { InputProblem } from '../../../analysis/remarks/index.ts';
import {
  addSegment,
  dropSegment,
  moveSegment,
  placeSegments,
  type SegmentEdit,
  splitSegment,
} from '../../../analysis/segments/index.ts';
import { tableOf } from './flown.ts';

const list: SegmentEdit[] = [
  { file: 'a.csv', fromSeconds: 10, toSeconds: 70, role: 'leg' },
  { file: 'a.csv', fromSeconds: 100, toSeconds: 170, role: 'leg', label: '270' },
];

describe('segments edited by hand', () => {
  it('are moved, split, dropped and added, each with its reason, leaving the old list alone', () => {
    const before = structuredClone(list);
    expect(moveSegment(list, 0, { fromSeconds: 15, toSeconds: 70 }, 'still settling')[0]).toEqual({
      ...list[0],
      fromSeconds: 15,
      reason: 'still settling',
    });
    expect(splitSegment(list, 1, 130, 'thermal').map((one) => one.fromSeconds)).toEqual([10, 100, 130]);
    expect(dropSegment(list, 1, 'traffic')[1]).toMatchObject({ role: 'dropped', label: '270', reason: 'traffic' });
    const added = addSegment(list, { file: 'a.csv', fromSeconds: 75, toSeconds: 95, role: 'leg', reason: 'missed' });
    expect(added.map((one) => one.fromSeconds)).toEqual([10, 75, 100]);
    expect(list).toEqual(before);
  });

  it('are refused without a reason, without a segment, or with ends the wrong way', () => {
    for (const wrong of [
      () => moveSegment(list, 0, { fromSeconds: 5, toSeconds: 4 }, 'x'),
      () => moveSegment(list, 7, { fromSeconds: 5, toSeconds: 9 }, 'x'),
      () => moveSegment(list, 0, { fromSeconds: 5, toSeconds: 9 }, ' '),
      () => splitSegment(list, 0, 70, 'x'),
      () => dropSegment(list, 0, ''),
      () => addSegment(list, { file: 'a.csv', fromSeconds: 9, toSeconds: 1, role: 'leg', reason: 'x' }),
      () => addSegment(list, { file: 'a.csv', fromSeconds: 1, toSeconds: 9, role: 'leg' }),
    ])
      expect(wrong).toThrow(InputProblem);
  });

  it('are placed on the clock of the first file, dropped ones apart', () => {
    const flown = { rateHz: 1, seconds: 300, channels: { 'indicated-airspeed': () => 40 } };
    const recording = recordingOf(
      [tableOf({ ...flown, file: 'a.csv' }), tableOf({ ...flown, file: 'b.csv' })],
      [0, 25],
    );
    const placed = placeSegments(recording, [
      { file: 'b.csv', fromSeconds: 100, toSeconds: 160, role: 'leg', reason: 'seen' },
      ...dropSegment(list.slice(0, 1), 0, 'traffic'),
    ]);
    expect(placed.segments).toMatchObject([{ fromSeconds: 125, toSeconds: 185, byHand: true, reason: 'seen' }]);
    expect(placed.dropped[0]?.reason).toContain('traffic');
    expect(() => placeSegments(recording, [{ ...list[0], file: 'c.csv' } as SegmentEdit])).toThrow(InputProblem);
  });
});
