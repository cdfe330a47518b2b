/** The aim of a card in one line, where the purpose of the test says more than a line holds. */

/** Names nothing that an airplane may lack: these stand on every airplane's card. */
export const AIMS: Readonly<Record<string, string>> = {
  'open-inspection': 'Find build errors while everything can be seen and reached.',
  'closing-inspection': 'Close each zone once its checks are done and seen by a second.',
  'documents-and-placards': 'Show that the airplane may lawfully be moved and flown.',
  'pilot-and-emergency-plan': 'Make pilot, crew and field ready for the bad day.',
  'canopy-harness-egress': 'Show nothing opens in flight and people get out fast.',
  'control-throws-freedom': 'Show each surface moves right, enough, and without catching.',
  'control-system-proof': 'Show the controls carry load without jam, stretch or set.',
  'ground-supply-plug': 'Show the plug feeds the right bus and refuses wrong supply.',
  'battery-endurance-ground': 'Measure how long essential loads run, and what fails first.',
  'battery-failover-ground': 'Show that no single failure leaves the essential bus dark.',
  'engine-control-unit-bench': 'Show the engine control right before fuel meets spark.',
  'airspeed-indicator-scale': 'Know the instrument error before the position error.',
  'altimeter-transponder-certification': 'Have a rated shop show altitude and reply within the rules.',
  'avionics-antenna-ground': 'Show the avionics work with the airframe around them.',
  'fuel-transfer-ground': 'Measure transfer; show each single failure known and harmless.',
  'gear-rigging-locks': 'Set alignment; prove locks and clearances by hand.',
  'gear-swing-normal': 'Show repeatable swings with margin in time, current, clearance.',
  'gear-indication-squat-faults': 'Show no single fault gives a false lock or lifts the gear.',
  'radiator-door-fan-ground': 'Know what moves the cooling air: direction, travel, time, current.',
  'engine-controls-rigging': 'Show each control reaches its stop, stays put and fails well.',
  'smoke-system-ground': 'Show nothing leaks near the exhaust and the oil shuts off.',
  'loading-envelope-plan': 'Show each planned load lies within limits, takeoff to last fuel.',
  'ignition-static-power-check': 'Show full power and clean running on each ignition alone.',
  'tank-switching-running': 'Show no power loss on any selection; see where return fuel goes.',
  'coolant-warm-up-thermostat': 'Show coolant flows and no air is left before any long run.',
  'ground-cooling-door-map': 'Learn how fast temperatures rise and where they settle.',
  'ground-cooling-fan-hold': 'Show how long the airplane can wait and still take off.',
  'heat-soak': 'Find the highest temperatures after shut-down.',
  'engine-control-failover-running': 'Show the engine runs on after loss of any one part.',
  'charging-emi-running': 'Show steady supply, protection, and no interference.',
  'cabin-heat-demist-ground': 'Show heat works, shuts off, and brings in nothing else.',
  'taxi-slow': 'Show steering, brakes and view at a walk and a jog; bed linings.',
  'taxi-fast': 'Learn direction, airspeed sense and attitude below flying speed.',
  'tank-switching-flight': 'Show the engine runs on each source and through each change.',
  'airspeed-calibration-first': 'Turn indicated into calibrated airspeed before any limit.',
  'static-altimeter-check': 'Turn airspeed error into altitude error; check from outside.',
  'pitch-stability-first-look': 'Show stable stick force at this CG before moving it aft.',
  'stall-clean': 'Measure Vs1 in KCAS; see warning, break and recovery.',
  'stall-clean-gear-up': 'Measure Vs1 truly clean; manoeuvring speed follows from it.',
  'gear-first-retraction': 'Cycle the gear over the field, slow, with fuel and time.',
  'gear-emergency-extension-flight': 'Show the back-up works under air load.',
  'cooling-climb-first': 'Show the engine cools in a long climb before climb tests.',
  'load-factor-buildup': 'Show structure and systems at the planned load factor.',
  'speed-expansion': 'Show freedom from flutter and buffet, by small steps only.',
  'cooling-cruise-door-map': 'Find for each power the setting that cools at least cost.',
  'cooling-door-failure-flight': 'Find the minutes left and the power that saves the engine.',
  'idle-descent-cooling': 'Find the descent that avoids shock cooling and cold oil.',
  'low-fuel-manoeuvre-feed': 'Confirm unusable fuel in real attitudes, over the runway.',
  'electric-trim-runaway-flight': 'Show control after a runaway caught late.',
  'autopilot-engagement': 'Show the pilot can always win and always let go.',
  'autopilot-modes': 'Show each mode holds, captures, and gives up as it should.',
  'no-airspeed-pattern': 'Find pitch and power for the wanted speeds, airspeed covered.',
  'forward-cg-landing': 'Show elevator to flare and raise the nose at forward CG.',
  'night-ifr-equipment-check': 'Show equipment in use before first real use.',
};

/**
 * The aim of a test's card.
 * @param test id of the test, text
 * @param purpose of the test, text
 * @returns one line; a purpose without a shorter aim stands as it is
 */
export function aimOf(test: string, purpose: string): string {
  return AIMS[test] ?? purpose;
}
