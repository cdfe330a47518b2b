/**
 * What to repeat after a change: which part was touched, and which tests show it again. Whether a change is major, and
 * whether the airplane goes back to its test area, is for its limitations and the authority.
 */

export interface RepeatAfterChange {
  readonly id: string;
  readonly changed: string;
  /** configuration paths a change of which means this; none where the description does not show it */
  readonly paths: readonly string[];
  readonly repeat: readonly string[];
}

const COOLING_CLIMBS = ['cooling-climb-first', 'cooling-climb-heavy'];
const AIRSPEED = ['airspeed-calibration-first', 'airspeed-calibration-full'];
const STALLS = [
  'stall-clean',
  'stall-landing',
  'stall-power-on',
  'stall-turning',
  'stall-accelerated',
  'stall-clean-gear-up',
  'corner-stalls',
];

export const REPEAT_AFTER_CHANGE: readonly RepeatAfterChange[] = [
  {
    id: 'propeller',
    changed: 'propeller, governor, pitch stop',
    paths: ['propeller', 'engine.reductionRatio'],
    repeat: [
      'propeller-track-stops',
      'ignition-static-power-check',
      'propeller-governor-ground',
      'vibration-balance-ground',
      'propeller-speed-control-flight',
      ...COOLING_CLIMBS,
      'climb-sawtooth',
      'glide',
      'takeoff-distance',
      'weigh-empty-cg',
    ],
  },
  {
    id: 'engine',
    changed: 'engine, mount, engine-control map or wiring',
    paths: ['engine'],
    repeat: [
      'engine-control-unit-bench',
      'engine-control-failover-running',
      'break-in-ground-runs',
      'ground-cooling-door-map',
      'fuel-flow-delivery',
      'vibration-balance-ground',
      'third-flight-engine',
      ...COOLING_CLIMBS,
      'climb-sawtooth',
      'check-climb',
      'level-speed-power',
      'range-endurance-fuel',
      'takeoff-distance',
      'balked-landing-climb',
    ],
  },
  {
    id: 'cooling',
    changed: 'radiator, duct, door, fan, cowl',
    paths: ['cooling'],
    repeat: [
      'radiator-door-fan-ground',
      'ground-cooling-door-map',
      'ground-cooling-fan-hold',
      'heat-soak',
      'hot-restart',
      'taxi-cooling-hold',
      ...COOLING_CLIMBS,
      'cooling-cruise-door-map',
      'cooling-door-failure-flight',
    ],
  },
  {
    id: 'gear',
    changed: 'gear, switch, relay, pump, hydraulic line',
    paths: ['gear', 'hydraulics'],
    repeat: [
      'hydraulic-leak-proof',
      'gear-rigging-locks',
      'gear-swing-normal',
      'gear-swing-emergency',
      'gear-indication-squat-faults',
      'gear-first-retraction',
      'gear-speed-limits',
    ],
  },
  {
    id: 'controls',
    changed: 'control, hinge, tab, paint or repair on a surface',
    paths: [],
    repeat: ['control-throws-freedom', 'control-system-proof', 'surface-balance-freeplay', 'speed-expansion'],
  },
  {
    id: 'shape',
    changed: 'wing, tail, fairing, vortex devices, flaps',
    paths: ['wing', 'flaps'],
    repeat: [
      ...AIRSPEED,
      ...STALLS,
      'pitch-stability-first-look',
      'static-longitudinal',
      'lateral-directional-static',
      'pitch-dynamics',
      'dutch-roll-spiral',
      'speed-expansion',
    ],
  },
  {
    id: 'air data',
    changed: 'static port, pitot, mast',
    paths: ['avionics.alternateStatic', 'avionics.pitotHeat', 'instruments.commonStatic', 'instruments.probeRecovery'],
    repeat: [
      'pitot-static-leak',
      'airspeed-indicator-scale',
      'altimeter-transponder-certification',
      ...AIRSPEED,
      'static-altimeter-check',
    ],
  },
  {
    id: 'fuel',
    changed: 'tank, selector, pump, transfer, vent',
    paths: ['fuel'],
    repeat: [
      'fuel-tank-leak-vent',
      'fuel-pump-shutoff-running',
      'tank-switching-flight',
      'fuel-quantity-calibration',
      'fuel-flow-delivery',
      'unusable-fuel-ground',
      'fuel-transfer-ground',
      'fuel-transfer-flight',
    ],
  },
  {
    id: 'electrical',
    changed: 'battery, contactor, generator, regulator',
    paths: ['electrical'],
    repeat: [
      'electrical-load-survey',
      'ground-supply-plug',
      'battery-endurance-ground',
      'battery-failover-ground',
      'charging-emi-running',
      'electrical-failure-flight',
      'battery-failure-flight',
    ],
  },
  {
    id: 'avionics',
    changed: 'avionics, antenna, autopilot, trim motor',
    paths: ['avionics.radios', 'avionics.transponder', 'avionics.elt', 'avionics.compass', 'autopilot', 'trim'],
    repeat: [
      'charging-emi-running',
      'avionics-antenna-ground',
      'compass-swing',
      'autopilot-servo-ground',
      'autopilot-engagement',
      'electric-trim-ground',
      'electric-trim-runaway-flight',
    ],
  },
  {
    id: 'brakes',
    changed: 'brake, wheel, tyre',
    paths: [],
    repeat: ['brake-ground-check', 'taxi-slow', 'aborted-takeoff'],
  },
  {
    id: 'canopy',
    changed: 'canopy, latch, seal',
    paths: ['cabin.canopy'],
    repeat: ['canopy-harness-egress', 'canopy-flight-check', 'cabin-co-ground', 'heat-vent-co-flight'],
  },
  {
    id: 'cabin heat',
    changed: 'cabin heat, hose',
    paths: ['cabin.heat'],
    repeat: ['cabin-heat-demist-ground', 'heat-vent-co-flight'],
  },
  {
    id: 'weight',
    changed: 'weight, seat, baggage, ballast',
    paths: ['loading', 'cabin.seats', 'limits.mass'],
    repeat: ['weigh-empty-cg', 'loading-envelope-plan', 'aft-cg-expansion', 'forward-cg-landing', 'corner-stalls'],
  },
];

/**
 * Lines of the change table that a changed configuration path belongs to.
 * @param path configuration path, dotted, text
 * @returns the lines, possibly none
 */
export function repeatsFor(path: string): RepeatAfterChange[] {
  return REPEAT_AFTER_CHANGE.filter((row) => row.paths.some((under) => path === under || path.startsWith(`${under}.`)));
}
