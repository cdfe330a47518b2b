/** The eight gates: stops between stages, each with the evidence that must lie on the table. */
import type { Stage } from '../catalogue/index.ts';

export interface GateEvidence {
  /** what is asked, in words */
  asks: string;
  /** tests that show it; those that do not apply fall away */
  tests: readonly string[];
}

export interface GateData {
  id: string;
  title: string;
  /** stage that waits behind the gate, and the one that ends at it */
  before: Stage;
  after: Stage;
  /** tests that wait behind it */
  holds: readonly string[];
  evidence: readonly GateEvidence[];
  typicalNoGo: string;
}

const e = (asks: string, ...tests: string[]): GateEvidence => ({ asks, tests });

export const GATES: readonly GateData[] = [
  {
    id: 'A',
    title: 'Before the engine runs',
    after: 'shop',
    before: 'engine-ground',
    holds: ['first-start'],
    evidence: [
      e('every zone closed and signed by two people', 'open-inspection', 'closing-inspection'),
      e('weight and CG known with their uncertainty', 'weigh-empty-cg', 'loading-envelope-plan'),
      e(
        'controls right in sense, travel and load; balance and free play on record',
        'control-throws-freedom',
        'control-system-proof',
        'surface-balance-freeplay',
      ),
      e(
        'fuel tight, delivery margin at least 125 or 150 %, unusable known',
        'fuel-tank-leak-vent',
        'fuel-quantity-calibration',
        'fuel-flow-delivery',
        'unusable-fuel-ground',
        'fuel-transfer-ground',
      ),
      e('engine gauges and recorder checked', 'engine-instrument-calibration', 'recorder-channel-check'),
      e(
        'electrical load, endurance and failover on record',
        'electrical-load-survey',
        'battery-endurance-ground',
        'battery-failover-ground',
      ),
      e('engine control proven on the bench', 'engine-control-unit-bench'),
      e('coolant and hydraulic circuits tight', 'coolant-pressure-leak', 'hydraulic-leak-proof'),
      e('propeller tracked; engine controls rigged', 'propeller-track-stops', 'engine-controls-rigging'),
      e('cooling door and fan measured', 'radiator-door-fan-ground'),
      e('brakes hold', 'brake-ground-check'),
      e('ground supply plug proven', 'ground-supply-plug'),
      e('fire, crew and emergency plan made', 'pilot-and-emergency-plan'),
    ],
    typicalNoGo: 'any leak; an engine-control supply that resets; a channel with a limit that cannot be trusted',
  },
  {
    id: 'B',
    title: 'Before it moves under its own power',
    after: 'engine-ground',
    before: 'taxi',
    holds: ['taxi-slow'],
    evidence: [
      e('run-in done as its maker says', 'first-start', 'break-in-ground-runs'),
      e('static power and ignition drops', 'ignition-static-power-check', 'propeller-governor-ground'),
      e('engine control lanes and supplies proven running', 'engine-control-failover-running'),
      e('charging, voltage and interference', 'charging-emi-running'),
      e('fuel pumps, selections and shut-off', 'fuel-pump-shutoff-running', 'tank-switching-running'),
      e('thermostat and air-free loop', 'coolant-warm-up-thermostat'),
      e('ground cooling map and longest hold', 'ground-cooling-door-map', 'ground-cooling-fan-hold'),
      e('heat soak and hot restart', 'heat-soak', 'hot-restart'),
      e('vibration inside the agreed figure', 'vibration-balance-ground'),
      e('compass card made', 'compass-swing'),
      e('cabin air and heat', 'cabin-co-ground', 'cabin-heat-demist-ground'),
      e('inspection after the runs, no metal found', 'ground-run-inspection'),
    ],
    typicalNoGo:
      'a predicted hot-day steady temperature above the limit with no printed hold time; vibration not explained',
  },
  {
    id: 'C',
    title: 'Before the first flight',
    after: 'taxi',
    before: 'first-flight',
    holds: ['first-flight'],
    evidence: [
      e(
        'gear swings, emergency extension and fault table',
        'gear-swing-normal',
        'gear-swing-emergency',
        'gear-indication-squat-faults',
      ),
      e('brakes bedded; steering and view', 'taxi-slow'),
      e('steps to 80 % of the predicted stall', 'taxi-fast'),
      e('abort rehearsed and accelerate-stop worked out', 'aborted-takeoff'),
      e('line-up temperature gate', 'taxi-cooling-hold'),
      e('loading inside its limits with uncertainty', 'loading-envelope-plan'),
      e('pilot current, drills rehearsed, egress timed', 'pilot-and-emergency-plan', 'canopy-harness-egress'),
      e(
        'locator transmitter, transponder, radio, compass card, airspeed scale',
        'elt-ground-test',
        'altimeter-transponder-certification',
        'avionics-antenna-ground',
        'compass-swing',
        'airspeed-indicator-scale',
      ),
      e('trim and autopilot cut-outs proven', 'electric-trim-ground', 'autopilot-servo-ground'),
      e('papers and test area', 'documents-and-placards'),
    ],
    typicalNoGo:
      'nose or tail will not rise at 80 %; airspeed disagrees; no current pilot; weather over personal limits',
  },
  {
    id: 'D',
    title: 'Before the envelope is opened',
    after: 'first-flight',
    before: 'envelope',
    holds: ['airspeed-calibration-first'],
    evidence: [
      e('three flights with every squawk closed', 'first-flight', 'second-flight-repeat', 'third-flight-engine'),
      e('filters clean, nothing loose', 'post-flight-inspection'),
      e('each fuel source shown near the field', 'tank-switching-flight'),
    ],
    typicalNoGo: 'temperature still rising when a flight ended; a control force that lightens with deflection',
  },
  {
    id: 'E',
    title: 'Before the envelope grows',
    after: 'envelope',
    before: 'envelope',
    holds: ['airspeed-calibration-full', 'load-factor-buildup', 'speed-expansion', 'weight-expansion'],
    evidence: [
      e(
        'low and middle airspeeds calibrated with their uncertainty',
        'airspeed-calibration-first',
        'static-altimeter-check',
      ),
      e(
        'stall speeds, warning and recovery at forward CG',
        'stall-clean',
        'stall-landing',
        'stall-power-on',
        'stall-turning',
        'stall-accelerated',
      ),
      e('positive pitch stability', 'pitch-stability-first-look'),
      e(
        'gear, emergency extension and limit speeds',
        'gear-first-retraction',
        'gear-emergency-extension-flight',
        'gear-speed-limits',
        'flap-speed-limits',
      ),
      e('cooling margin in a climb', 'cooling-climb-first'),
      e('cabin air and canopy looked at', 'heat-vent-co-flight', 'canopy-flight-check'),
      e('inspection to condition-inspection depth, free play not grown', 'ten-hour-inspection'),
    ],
    typicalNoGo: 'neutral stability; a stall that needs more than normal recovery; growth of play',
  },
  {
    id: 'F',
    title: 'Before systems and performance are measured',
    after: 'envelope',
    before: 'systems-flight',
    holds: ['cooling-climb-heavy', 'cooling-cruise-door-map', 'climb-sawtooth'],
    evidence: [
      e('full airspeed calibration', 'airspeed-calibration-full'),
      e('gear-up stalls and manoeuvring speed', 'stall-clean-gear-up'),
      e('load factor shown, more and less than 1 g', 'load-factor-buildup', 'low-g-push'),
      e('speed shown with its damping record; red line set', 'speed-expansion', 'propeller-speed-control-flight'),
      e('gross weight cleared', 'weight-expansion'),
    ],
    typicalNoGo: 'a falling damping trend at any speed; a corrected cooling peak over the limit',
  },
  {
    id: 'G',
    title: 'Before the handling extremes',
    after: 'handling',
    before: 'handling',
    holds: ['aft-cg-expansion', 'corner-stalls', 'crosswind-buildup', 'spin-recovery', 'aerobatic-buildup'],
    evidence: [
      e('stick-force slope and force per g', 'static-longitudinal', 'stick-force-per-g'),
      e('trim changes known', 'trim-authority'),
      e('trim-runaway drill', 'electric-trim-runaway-flight'),
      e('go-around', 'balked-landing-climb'),
      e('ballast designed, weighed and tied', 'loading-envelope-plan'),
      e('egress drill for stalls with the CG aft', 'canopy-harness-egress'),
    ],
    typicalNoGo: 'an extrapolated neutral point inside the planned range',
  },
  {
    id: 'H',
    title: 'Before phase one is signed off',
    after: 'sign-off',
    before: 'sign-off',
    holds: ['logbook-statement'],
    evidence: [
      e('aft and forward limits shown', 'aft-cg-expansion', 'forward-cg-landing'),
      e('stalls at the corners of weight and CG', 'corner-stalls'),
      e('crosswind shown', 'crosswind-buildup'),
      e(
        'stability and control through the range',
        'static-longitudinal',
        'lateral-directional-static',
        'pitch-dynamics',
        'dutch-roll-spiral',
        'stick-force-per-g',
        'trim-authority',
      ),
      e(
        'take-off, climb, glide, cruise and landing measured',
        'takeoff-distance',
        'climb-sawtooth',
        'glide',
        'level-speed-power',
        'landing-distance',
      ),
      e('spins and aerobatics where they are planned', 'spin-recovery', 'aerobatic-buildup'),
      e('inspection at the end', 'phase-end-inspection'),
      e(
        'handbook with a flight behind each number; marks and placards changed',
        'handbook-data',
        'airspeed-markings-placards',
      ),
      e('completion map against hours or tasks', 'task-list-review'),
    ],
    typicalNoGo: 'any number in the handbook without data behind it',
  },
];
