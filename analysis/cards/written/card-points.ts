/** Points of a reduction as a card gave them: what goes into POINTS.json, and from which boxes. */
import type { CardReader, WrittenNumber } from './card-reader.ts';

/** One point, and the box each of its figures stands in. */
export interface CardPoint {
  point: Record<string, unknown>;
  from: Record<string, string>;
}

/** Figures of a card that are reduced together. */
export interface CardPoints {
  kind: string;
  /** which part of the card, where it has several that must not be mixed */
  title: string;
  points: CardPoint[];
  /** what was written and is not in a point, or was taken in a way that should be known; one sentence each */
  remarks: string[];
}

/** Makes the points of one reduction out of a card. */
export type PointsMaker = (reader: CardReader, about: AboutFlight) => CardPoints[];

/** What the card alone does not say. */
export interface AboutFlight {
  /** mass with the fuel of the first figure of fuel aboard, kg, or null where nobody stated it */
  startMass: number | null;
  /** flap settings of the airplane, retracted first */
  flaps: readonly string[];
  /** arm of the fuel where all of it has one, m */
  fuelArm: number | null;
}

/**
 * A point from figures, those that are not there left out.
 * @param figures by name in the point, numbers of boxes
 * @param more what is no box: labels, settings
 * @returns the point with the box of each figure
 */
export function pointOf(figures: Record<string, WrittenNumber | null>, more: Record<string, unknown> = {}): CardPoint {
  const there = Object.entries(figures).flatMap(([name, one]) => (one ? [[name, one] as const] : []));
  return {
    point: { ...Object.fromEntries(there.map(([name, one]) => [name, one.stated])), ...more },
    from: Object.fromEntries(there.map(([name, one]) => [name, one.key])),
  };
}

/**
 * What a row lacks to make a point.
 * @param figures by words, numbers of boxes
 * @returns words of those that are not there; all of them where nothing was written
 */
export function lackingIn(figures: Record<string, WrittenNumber | null>): { lacking: string[]; nothing: boolean } {
  const lacking = Object.entries(figures).flatMap(([words, one]) => (one ? [] : [words]));
  return { lacking, nothing: lacking.length === Object.keys(figures).length };
}
