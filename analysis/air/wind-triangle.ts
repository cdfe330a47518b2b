/** Wind, ground and air vectors in the horizontal: north and east components, directions from true north clockwise. */

/** Horizontal vector, north and east components, m/s. */
export interface Horizontal {
  north: number;
  east: number;
}

const TURN = 2 * Math.PI;

/**
 * Components of a speed along a direction.
 * @param speed length, m/s
 * @param direction towards, rad from true north clockwise
 * @returns north and east components, m/s
 * @source plane trigonometry
 */
export function components(speed: number, direction: number): Horizontal {
  return { north: speed * Math.cos(direction), east: speed * Math.sin(direction) };
}

/**
 * Length of a horizontal vector.
 * @param v vector, m/s
 * @returns length, m/s
 * @source plane trigonometry
 */
export function speedOf(v: Horizontal): number {
  return Math.hypot(v.north, v.east);
}

/**
 * Direction a horizontal vector points to.
 * @param v vector, m/s
 * @returns direction, rad, 0 to 2 pi, from true north clockwise
 * @source plane trigonometry
 */
export function directionOf(v: Horizontal): number {
  return wrapTurn(Math.atan2(v.east, v.north));
}

/**
 * Direction a wind comes from, as it is spoken.
 * @param wind vector of where the air moves to, m/s
 * @returns direction, rad, 0 to 2 pi, from true north clockwise
 * @source plane trigonometry
 */
export function windFrom(wind: Horizontal): number {
  return wrapTurn(directionOf(wind) + Math.PI);
}

/**
 * An angle brought into one turn.
 * @param angle angle, rad
 * @returns angle, rad, 0 to 2 pi
 * @source plane trigonometry
 */
export function wrapTurn(angle: number): number {
  const rest = angle % TURN;
  return rest < 0 ? rest + TURN : rest;
}

/**
 * Smallest signed difference of two directions.
 * @param a direction, rad
 * @param b direction, rad
 * @returns a less b, rad, -pi to pi
 * @source plane trigonometry
 */
export function angleBetween(a: number, b: number): number {
  const d = wrapTurn(a - b);
  return d > Math.PI ? d - TURN : d;
}
