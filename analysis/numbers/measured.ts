/** A measured value: number, expanded uncertainty (95 %, two-sided) and the parts it is made of. All in SI. */

/** Each part is its own U95 contribution, in the unit of the value; parts combine in quadrature. */
export interface UncertaintyParts {
  noise?: number;
  repeatability?: number;
  calibration?: number;
  fit?: number;
}

export interface Measured {
  value: number;
  u95: number;
  parts: UncertaintyParts;
}
