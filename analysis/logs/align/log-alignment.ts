/** How one log was put on the first log's clock. The same shape stands in a result. */
export interface LogAlignment {
  file: string;
  /** seconds to add to the log's own time to be on the first log's clock, at the log's first record */
  shiftSeconds: number;
  /** seconds more to add for each hour of the log's own time; absent where the clocks do not part */
  driftSecondsPerHour?: number;
  /** half width of its 95 % interval, s/h */
  driftU95?: number;
  /** half width of the 95 % interval, s; the shift holds the difference of the two recorders' lags, which is not in it */
  u95: number;
  /** the shared signal, `clock`, or that it was set by hand */
  by: string;
  /** normalised correlation at the shift; 0 where no signal was used */
  peak: number;
  /** best correlation elsewhere */
  secondPeak: number;
}
