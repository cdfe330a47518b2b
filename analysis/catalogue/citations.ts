/**
 * What the catalogue rests on: each document once, with the mark of how far it was read.
 * Certification rules are yardsticks here; they do not bind an amateur-built airplane. "Former" part 23 is the text
 * before its rewriting in 2017, cited because it still held numbers.
 */

export interface Citation {
  readonly says: string;
  /** read; from memory (to be checked before it is printed as a fact); common practice; this airplane's own figure */
  readonly mark: 'read' | 'memory' | 'practice' | 'configuration';
}

const read = (says: string): Citation => ({ says, mark: 'read' });
const memory = (says: string): Citation => ({ says, mark: 'memory' });

export const CITATIONS = {
  '14cfr21-93': memory(
    '14 CFR 21.93 and the usual limitation on return to phase one after a major change (at least 5 h)',
  ),
  '14cfr23-2525': read('14 CFR 23.2525 (no single failure stops essential loads)'),
  '14cfr29-831c': read(
    '14 CFR 29.831(c) (carbon monoxide, one part in 20,000); former 14 CFR 23.831 has the same figure, from memory',
  ),
  '14cfr61-31': read('14 CFR 61.31(e),(f),(i) (high-performance, complex, tailwheel endorsements)'),
  '14cfr91-151': memory('14 CFR 91.151 (fuel reserve, visual flight)'),
  '14cfr91-171': memory('14 CFR 91.171 (VOR check: 6 deg airborne)'),
  '14cfr91-205': memory('14 CFR 91.205 (required instruments and equipment)'),
  '14cfr91-207': read('14 CFR 91.207(c),(d) (ELT battery and 12-calendar-month inspection)'),
  '14cfr91-303': read('14 CFR 91.303 (aerobatic flight: 1,500 ft, 3 statute miles, airspace)'),
  '14cfr91-305': read('14 CFR 91.305 (flight test areas)'),
  '14cfr91-307': read('14 CFR 91.307(a),(c) (parachute packing; 60 deg bank / 30 deg pitch with other persons)'),
  '14cfr91-319b': read(
    '14 CFR 91.319(b) (controllable through normal speeds and manoeuvres, no hazardous characteristics)',
  ),
  '14cfr91-407': read('14 CFR 91.407(b),(c) (flight check after work that may change flight characteristics)'),
  '14cfr91-411': read('14 CFR 91.411 (24 calendar months, static/altimeter/encoder, IFR)'),
  '14cfr91-413': read('14 CFR 91.413 (24 calendar months, transponder)'),
  '14cfr91-417': memory('14 CFR 91.417 (maintenance records content and keeping)'),
  '14cfr43-appendix-d': read('14 CFR part 43 appendix D (scope of the condition inspection)'),
  '14cfr43-appendix-e': read('14 CFR part 43 appendix E (altimeter and static test)'),
  '14cfr43-appendix-e-c': memory('14 CFR part 43 appendix E para. (c) (reported vs. indicated altitude within 125 ft)'),
  '14cfr43-appendix-f': read('14 CFR part 43 appendix F (transponder frequency, power, diversity isolation)'),
  'ac-20-27g': memory('AC 20-27G (certification and operation of amateur-built aircraft)'),
  'ac-23-17c': memory('AC 23-17C (systems guide)'),
  'ac-23-8c-delay': memory('AC 23-8C (3 s recognition delay for a trim or autopilot malfunction)'),
  'ac-23-8c-methods': memory('AC 23-8C (flight test guide: methods)'),
  'ac-43-13-1b-ch8': read("AC 43.13-1B ch. 8 (track within the maker's limit)"),
  'ac-43-13-1b-para11-35': read(
    'AC 43.13-1B para. 11-35 (continuous load not over 80 % of rating; low-volt warning 13 V / 26 V)',
  ),
  'ac-43-13-1b-para12-22': memory('AC 43.13-1B para. 12-22 (ELT check)'),
  'ac-43-13-1b-para12-37': read('AC 43.13-1B para. 12-37 (compass swing, clear of metal)'),
  'ac-90-109a': memory('AC 90-109A (transition to unfamiliar airplanes)'),
  'ac-90-116': read('AC 90-116 (additional pilot; engine and fuel ground tests logged first), summary read'),
  'ac-90-89a-ch1-sec10-fuel': read('AC 90-89A ch. 1 sec. 10 (fuel flow and unusable fuel)'),
  'ac-90-89a-ch1-sec10-engine': read('AC 90-89A ch. 1 sec. 10 (powerplant tests, run-in)'),
  'ac-90-89a-ch1-sec10-attitude': memory(
    'AC 90-89A ch. 1 sec. 10 (test pitch attitude a few degrees beyond the steepest climb)',
  ),
  'ac-90-89a-ch1-sec12': read('AC 90-89A ch. 1 sec. 12 (propeller inspection, bolt re-torque, tracking)'),
  'ac-90-89a-ch1-sec12-track': read('AC 90-89A ch. 1 sec. 12 (track within 1/16 in), text read in a secondary copy'),
  'ac-90-89a-ch1-sec2': read('AC 90-89A ch. 1 sec. 2 (airport selection)'),
  'ac-90-89a-ch1-sec7': read('AC 90-89A ch. 1 sec. 7 (fitness inspection, airframe)'),
  'ac-90-89a-ch1-sec7-para4': read('AC 90-89A ch. 1 sec. 7 para. 4 (field check of pitot-static system)'),
  'ac-90-89a-ch1-sec3-6': memory('AC 90-89A ch. 1 secs. 3-6 (emergency plans, crew, pilot)'),
  'ac-90-89a-ch1-sec8-9': read('AC 90-89A ch. 1 secs. 8-9 (weight and balance, paperwork)'),
  'ac-90-89a-ch2-sec1': read('AC 90-89A ch. 2 sec. 1 (low-speed taxi)'),
  'ac-90-89a-ch2-sec2': read('AC 90-89A ch. 2 sec. 2 (high-speed taxi)'),
  'ac-90-89a-ch3': read('AC 90-89A ch. 3 (first flight)'),
  'ac-90-89a-ch4': read('AC 90-89A ch. 4 (airspeed accuracy runs)'),
  'ac-90-89a-ch4-sec3': memory('AC 90-89A ch. 4 sec. 3 (hours 4-10: gear, climb, airspeed, stalls)'),
  'ac-90-89a-ch4-sec1-2': read('AC 90-89A ch. 4 secs. 1-2 (second and third flights)'),
  'ac-90-89a-ch5-sec1': read('AC 90-89A ch. 5 sec. 1 (expanding the envelope, inspection first)'),
  'ac-90-89a-ch5-sec2': memory('AC 90-89A ch. 5 sec. 2 (stall testing)'),
  'ac-90-89a-ch5-sec3': read('AC 90-89A ch. 5 sec. 3 (stability and control checks)'),
  'ac-90-89a-ch5-sec4': read('AC 90-89A ch. 5 sec. 4 (flutter)'),
  'ac-90-89a-ch5-sec5': memory('AC 90-89A ch. 5 sec. 5 (spins)'),
  'ac-90-89a-ch5-sec6-7': memory('AC 90-89A ch. 5 secs. 6-7 (accelerated stalls, aerobatics)'),
  'ac-90-89a-ch6': read('AC 90-89A ch. 6 (maximum gross weight and CG steps)'),
  'ac-90-89a-ch6-7': memory('AC 90-89A ch. 6-7 (closing the program, flight manual)'),
  'ac-90-89c-ch2-sec1': read(
    'AC 90-89C ch. 2 sec. 1 (task-based phase one: objectives, logbook entry, handbook on board), text read in a public copy of the section',
  ),
  'ac-90-89c-tasks': read('AC 90-89C ch. 2 sec. 1 (the count of 17 tasks), from a public news text'),
  'ac-91-79': memory('AC 91-79 (landing distance factors)'),
  'aim-6-2-4': read(
    'AIM 6-2-4 (ELT test: first 5 minutes of the hour, three sweeps, never airborne; digital per maker)',
  ),
  'cs-22-1047': read(
    'CS 22.1047 (cooling climb: stabilise at 75 % power, 1 min takeoff power, continue until 5 min past the peak)',
  ),
  'order-8130-2-inspection': read('FAA Order 8130.2 sample limitation on the 12-calendar-month condition inspection'),
  'order-8130-2-day-visual': memory('FAA Order 8130.2 sample limitation: day visual flight unless equipped to 91.205'),
  'order-8130-2-limitations': read(
    'FAA Order 8130.2 sample limitations (25/40 h; logbook statement with Vso, Vx, Vy, weight, CG)',
  ),
  'policy-2023-phase-one': read(
    'FAA policy memorandum of 2023 on the phase-one limitation (day, visual, area, hours or task list)',
  ),
  'faa-h-8083-1': memory('FAA-H-8083-1 (weight and balance handbook)'),
  'faa-h-8083-3': read('FAA-H-8083-3 (Airplane Flying Handbook), retractable gear and landing chapters'),
  'tm-1-1500-204-23-1-ch9': read('TM 1-1500-204-23-1 ch. 9 (retraction test items), public US Army manual'),
  practice: { says: 'common practice, no source', mark: 'practice' },
  maker: { says: "designer's or maker's own limit from the configuration (no general number)", mark: 'configuration' },
  '14cfr23-1041': read('former 14 CFR 23.1041, 23.1043 (cooling; corrected to 100 F sea level, 3.6 F per 1,000 ft)'),
  '14cfr23-1047': memory('former 14 CFR 23.1047 (cooling climb, reciprocating engine)'),
  '14cfr23-1061': memory('former 14 CFR 23.1061, 23.1063 (liquid cooling installation and coolant tank test)'),
  '14cfr23-1165': read('former 14 CFR 23.1165 (battery ignition supply)'),
  '14cfr23-1323b': read('former 14 CFR 23.1323(b) (3 % or 5 kt, 1.3 Vs1 to VNE and to VFE)'),
  '14cfr23-1325b2': read('former 14 CFR 23.1325(b)(2) (1 inHg or 1,000 ft; loss not over 100 ft in 1 min)'),
  '14cfr23-1325e': read('former 14 CFR 23.1325(e) (30 ft per 100 kt)'),
  '14cfr23-1327': read('former 14 CFR 23.1327, 23.1547 (deviation not over 10 deg; placard)'),
  '14cfr23-1329': memory('former 14 CFR 23.1329 (autopilot overpower and malfunction)'),
  '14cfr23-1351c': read('former 14 CFR 23.1351(c) (generator warning, overvoltage, disconnect)'),
  '14cfr23-1353h-minutes': memory('former 14 CFR 23.1353(h) (30 minutes)'),
  '14cfr23-1353h-loads': read('former 14 CFR 23.1353(h) (essential loads from the battery)'),
  '14cfr23-145': memory('former 14 CFR 23.145 (longitudinal control with flap, power and gear changes)'),
  '14cfr23-1505': memory('former 14 CFR 23.1505 (VNE not above 0.9 VD; VNO)'),
  '14cfr23-153': read('former 14 CFR 23.153 (landing from VREF minus 5 kt)'),
  '14cfr23-155': read(
    'former 14 CFR 23.155 (stick force to limit load factor: at least W/140 or 15 lb, need not exceed 35 lb)',
  ),
  '14cfr23-157': read('former 14 CFR 23.157 (60 deg roll reversal: 5 s takeoff, 4 s approach, up to 6,000 lb)'),
  '14cfr23-161': read('former 14 CFR 23.161 (trim)'),
  '14cfr23-173-return': memory('former 14 CFR 23.173 (free return within 10 % of trim speed)'),
  '14cfr23-173': read('former 14 CFR 23.173, 23.175 (stick-force slope ranges)'),
  '14cfr23-177': read('former 14 CFR 23.177 (static directional and lateral stability)'),
  '14cfr23-181': memory(
    'former 14 CFR 23.181 (short period heavily damped; lateral-directional to one tenth in 7 cycles)',
  ),
  '14cfr23-201': read('former 14 CFR 23.201 (wings-level stall: start 10 kt above, not over 1 kt/s)'),
  '14cfr23-201d': memory('former 14 CFR 23.201(d) (15 deg roll or yaw limit in recovery)'),
  '14cfr23-203': read('former 14 CFR 23.203 (30 deg turning stall; 3-5 kt/s accelerated; bank limits)'),
  '14cfr23-207': memory('former 14 CFR 23.207 (stall warning at least 5 kt ahead)'),
  '14cfr23-221': memory('former 14 CFR 23.221 (one-turn / six-turn spin recovery)'),
  '14cfr23-233': memory('former 14 CFR 23.233 (crosswind component at least 0.2 Vso)'),
  '14cfr23-25': read('former 14 CFR 23.25, 23.29 (weight limits; empty weight with unusable fuel and full fluids)'),
  '14cfr23-251': memory('former 14 CFR 23.251 (vibration and buffet to VD)'),
  '14cfr23-33': read(
    'former 14 CFR 23.33 (propeller speed: governor stop; 103 % static on the low-pitch stop; 110 % closed-throttle at VNE)',
  ),
  '14cfr23-335': read('former 14 CFR 23.335 (design speeds)'),
  '14cfr23-49': read('former 14 CFR 23.49 (stalling speed in CAS, engine idling)'),
  '14cfr23-51': memory('former 14 CFR 23.51, 23.53 (takeoff to 50 ft)'),
  '14cfr23-629': memory('former 14 CFR 23.629 (flutter)'),
  '14cfr23-63': read('former 14 CFR 23.63 (climb speed not below the speed used to show cooling)'),
  '14cfr23-65a': memory('former 14 CFR 23.65(a) (8.3 % gradient, landplane)'),
  '14cfr23-675': read('former 14 CFR 23.675 (stops)'),
  '14cfr23-677': read('former 14 CFR 23.677 (trim system; powered trim runaway)'),
  '14cfr23-681': read('former 14 CFR 23.681, 23.683 (control system limit load and operation tests)'),
  '14cfr23-71': memory('former 14 CFR 23.71 (glide, gear and flaps up, most favourable propeller setting)'),
  '14cfr23-729': read('former 14 CFR 23.729 (gear extension, locks, indication, emergency extension, warning)'),
  '14cfr23-729a': read('former 14 CFR 23.729(a) (gear mechanism and doors designed for loads to 1.6 Vs1)'),
  '14cfr23-73': read('former 14 CFR 23.73 (reference approach speed at least 1.3 Vso)'),
  '14cfr23-735': memory('former 14 CFR 23.735 (brakes)'),
  '14cfr23-75': read('former 14 CFR 23.75 (landing distance from 50 ft)'),
  '14cfr23-77a': read('former 14 CFR 23.77(a) (balked-landing climb 3.3 %)'),
  '14cfr23-955b-d': read('former 14 CFR 23.955(b)-(d) (150 % gravity, 125 % pump; transfer systems)'),
  '14cfr23-955e-power': read('former 14 CFR 23.955(e) (75 % power regained after switching tanks)'),
  '14cfr23-955e-seconds': memory(
    'former 14 CFR 23.955(e) (within 10 s, naturally aspirated single engine; 20 s turbocharged)',
  ),
  '14cfr23-957b': read('former 14 CFR 23.957(b) (no overfill damage in transfer)'),
  '14cfr23-959': read('former 14 CFR 23.959 (unusable fuel: first sign of malfunction, most adverse attitude)'),
  '14cfr23-961': read('former 14 CFR 23.961 (hot-weather fuel operation, no vapour lock)'),
  '14cfr23-965': memory('former 14 CFR 23.965 (tank pressure test)'),
} as const satisfies Record<string, Citation>;

export type CitationKey = keyof typeof CITATIONS;
