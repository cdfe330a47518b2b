/**
 * A chart as data: what is drawn, in units people read, before anything draws it. The browser module mounts it, a
 * table beside it says the same, and both are tested without a browser.
 */

/** Axis with its label; a clock axis counts seconds from the first record and is labelled m:ss. */
export interface Axis {
  label: string;
  unit: string;
  clock?: boolean;
  /** ends that the view never crosses inwards, so that a limit stays in sight */
  includes?: number[];
}

export interface Dataset {
  label: string;
  axis: 'left' | 'right';
  /** points are measured; a line is a fit or a trace; a dashed line is a prediction or a reference */
  draw: 'points' | 'line' | 'dashed';
  x: number[];
  y: (number | null)[];
  /** U95 half-widths, same order, drawn as bars */
  half?: (number | null)[];
}

/** A horizontal or vertical line with its words: a limit, a caution, a stop number. */
export interface Limit {
  label: string;
  axis: 'left' | 'right' | 'x';
  value: number;
  /** a caution is drawn lighter than a limit */
  weight: 'limit' | 'caution';
}

/** A stretch of the x axis: a segment. */
export interface Span {
  label: string;
  from: number;
  to: number;
  /** index in the form beside the chart, where the person may move its edges */
  edits?: number;
}

export interface Chart {
  title: string;
  /** what a person who does not see it is told */
  summary: string;
  x: Axis;
  left: Axis;
  right?: Axis;
  datasets: Dataset[];
  limits: Limit[];
  spans: Span[];
  /** where the samples of a visible span come from, when they are too many to send at once */
  samples?: string;
  /** ends of the x axis when all is shown; needed where the samples at hand are only those in view */
  whole?: { from: number; to: number };
  /** the part of the x axis shown at first, where it is not all */
  view?: { from: number; to: number };
  low?: boolean;
}
