/** The loading envelope drawn: corners, load points with their uncertainty, axes in the airplane's own units. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import { differenceFromSi, fromSi, show, unitOf } from '../../analysis/units/index.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';

const tick = z.strictObject({ at: z.string(), text: z.string() });

export const envelopePart = z.strictObject({
  area: z.string(),
  across: z.array(tick),
  up: z.array(tick),
  armLabel: z.string(),
  massLabel: z.string(),
  points: z.array(
    z.strictObject({
      x: z.string(),
      y: z.string(),
      left: z.string(),
      right: z.string(),
      top: z.string(),
      bottom: z.string(),
      label: z.string(),
      labelX: z.string(),
      labelY: z.string(),
    }),
  ),
  summary: z.string(),
});
export type EnvelopePart = z.infer<typeof envelopePart>;

export interface DrawnLoad {
  label: string;
  mass: number;
  massU95: number;
  arm: number;
  armU95: number;
}

// the frame of parts/envelope.hbs
const BOX = { left: 62, right: 430, top: 14, bottom: 268 };

/**
 * The envelope with load points in it.
 * @param airplane the description
 * @param units its instrument units
 * @param loads points, SI
 * @returns the part, or null where the description has no envelope
 */
export function envelopeDrawing(
  airplane: Airplane,
  units: InstrumentUnits,
  loads: readonly DrawnLoad[],
): EnvelopePart | null {
  const corners = airplane.loading.envelope.map((one) => ({
    arm: fromSi(one.arm.si, units.arm),
    mass: fromSi(one.mass.si, units.mass),
  }));
  if (corners.length < 3) return null;
  const points = loads.map((one) => ({
    label: one.label,
    arm: fromSi(one.arm, units.arm),
    armHalf: differenceFromSi(one.armU95, units.arm),
    mass: fromSi(one.mass, units.mass),
    massHalf: differenceFromSi(one.massU95, units.mass),
  }));
  const across = scale(
    [...corners, ...points].map((one) => one.arm),
    BOX.left,
    BOX.right,
  );
  const up = scale(
    [...corners, ...points].map((one) => one.mass),
    BOX.bottom,
    BOX.top,
  );
  return {
    area: corners.map((one) => `${px(across.at(one.arm))},${px(up.at(one.mass))}`).join(' '),
    across: across.ticks.map((value) => ({ at: px(across.at(value)), text: plain(value) })),
    up: up.ticks.map((value) => ({ at: px(up.at(value)), text: plain(value) })),
    armLabel: `Arm aft of datum, ${unitOf(units.arm).symbol}`,
    massLabel: `Mass, ${unitOf(units.mass).symbol}`,
    points: points.map((one, i) => {
      const x = across.at(one.arm);
      const y = up.at(one.mass);
      // neighbours would write over each other: every other label goes below its point
      return {
        x: px(x),
        y: px(y),
        left: px(across.at(one.arm - one.armHalf)),
        right: px(across.at(one.arm + one.armHalf)),
        top: px(up.at(one.mass + one.massHalf)),
        bottom: px(up.at(one.mass - one.massHalf)),
        label: one.label,
        labelX: px(x + 10),
        labelY: px(y + (i % 2 === 0 ? -8 : 18)),
      };
    }),
    summary: summaryOf(airplane, units, loads),
  };
}

function summaryOf(airplane: Airplane, units: InstrumentUnits, loads: readonly DrawnLoad[]): string {
  const arms = airplane.loading.envelope.map((one) => one.arm.si);
  const masses = airplane.loading.envelope.map((one) => one.mass.si);
  const range = (list: readonly number[], unit: string) =>
    `${show(Math.min(...list), unit).number} to ${show(Math.max(...list), unit).text}`;
  const points = loads.map(
    (one) =>
      `${one.label}: ${show(one.mass, units.mass, { u95: one.massU95 }).text} at ${show(one.arm, units.arm, { u95: one.armU95 }).text}`,
  );
  return [`Envelope: ${range(masses, units.mass)}, arms ${range(arms, units.arm)}.`, ...points].join(' ');
}

function scale(values: readonly number[], from: number, to: number) {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = (most - least || Math.abs(most) || 1) * 0.12;
  const [low, high] = [least - room, most + room];
  const rough = (high - low) / 5;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((one) => one * ten).find((one) => one >= rough) ?? 10 * ten;
  const ticks: number[] = [];
  for (let value = Math.ceil(low / step) * step; value <= high; value += step)
    ticks.push(Number(value.toPrecision(10)));
  return { at: (value: number) => from + ((value - low) / (high - low)) * (to - from), ticks };
}

function px(value: number): string {
  return value.toFixed(1);
}

function plain(value: number): string {
  return String(Number(value.toPrecision(6))).replace('-', '−');
}
