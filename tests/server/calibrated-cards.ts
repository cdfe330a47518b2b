/** Figures of three cards of one airplane: legs that calibrate 78 kt, climbs and steady points flown at that speed. */

/** Four legs of one speed in a steady wind from the west, `faster` kt over the ground than without a position error. */
export function legs(faster = 0) {
  const points = [
    { track: 0, ground: 80.6 },
    { track: 90, ground: 90 },
    { track: 180, ground: 80.6 },
    { track: 270, ground: 70 },
  ].map(({ track, ground }) => ({
    'indicated-airspeed': { value: 78, unit: 'kt' },
    'pressure-altitude': { value: 3000, unit: 'ft' },
    'outside-air-temperature': { value: 9, unit: 'degC' },
    'ground-speed': { value: ground + faster, unit: 'kt' },
    'track-true': { value: track, unit: 'deg' },
  }));
  return { kind: 'airspeed', logs: [], tests: [], points: { kind: 'airspeed', points } };
}

export function climbs() {
  const points = [20, 200].map((heading) => ({
    'indicated-airspeed': { value: 78, unit: 'kt' },
    bottom: { value: 2500, unit: 'ft' },
    top: { value: 3500, unit: 'ft' },
    time: { value: 120, unit: 's' },
    'outside-air-temperature': { value: 9, unit: 'degC' },
    'heading-magnetic': { value: heading, unit: 'deg' },
  }));
  return { kind: 'climb', logs: [], tests: [], points: { kind: 'climb', points } };
}

export function steadyPoints() {
  const points = [10, 12, 14, 16].map((flow) => ({
    'indicated-airspeed': { value: 78, unit: 'kt' },
    'fuel-flow': { value: flow, unit: 'L/h' },
    'pressure-altitude': { value: 3000, unit: 'ft' },
    'outside-air-temperature': { value: 9, unit: 'degC' },
    'cylinder-head-temperature#1': { value: 9 + 130 * (flow / 12) ** 0.5, unit: 'degC' },
  }));
  return { kind: 'cooling-flight', logs: [], tests: [], points: { kind: 'cooling-flight', points } };
}
