/** What the fields of an airplane's description are called on a page, where their own name does not say it. */
import { sentence } from '../words/list.ts';

/** Sections of the page: their address, heading, the top-level fields they hold, and the question they answer. */
export const SECTIONS: readonly { id: string; title: string; keys: readonly string[]; asks: string }[] = [
  {
    id: 'about',
    title: 'Identity',
    keys: ['name', 'registration', 'description', 'builder', 'pilot'],
    asks: 'Which airplane, and whose?',
  },
  { id: 'engine', title: 'Engine', keys: ['engine'], asks: 'What turns the propeller, and who controls it?' },
  { id: 'cooling', title: 'Cooling', keys: ['cooling'], asks: 'Where does the heat go, on the ground and in a climb?' },
  { id: 'propeller', title: 'Propeller', keys: ['propeller'], asks: 'What does the engine turn?' },
  {
    id: 'gear',
    title: 'Gear, flaps and hydraulics',
    keys: ['gear', 'flaps', 'hydraulics'],
    asks: 'What moves besides the controls?',
  },
  { id: 'fuel', title: 'Fuel', keys: ['fuel'], asks: 'How does fuel reach the engine?' },
  { id: 'electrical', title: 'Electrical', keys: ['electrical'], asks: 'What keeps running when something fails?' },
  { id: 'controls', title: 'Trim and autopilot', keys: ['trim', 'autopilot'], asks: 'What flies besides the pilot?' },
  { id: 'avionics', title: 'Avionics and cabin', keys: ['avionics', 'cabin'], asks: 'What is there to be checked?' },
  { id: 'loading', title: 'Weight and balance', keys: ['wing', 'loading'], asks: 'What does it weigh, and where?' },
  { id: 'limits', title: 'Limits', keys: ['limits'], asks: 'What must not be passed, and who says so?' },
  { id: 'speeds', title: 'Speeds', keys: ['speeds'], asks: 'Which speeds, and how far are they known?' },
  {
    id: 'instruments',
    title: 'Instruments and recorders',
    keys: ['instruments', 'recorders'],
    asks: 'What do they show, and how well?',
  },
  { id: 'place', title: 'Airfield', keys: ['place'], asks: 'Where is it flown from?' },
  { id: 'plan', title: 'Your plan', keys: ['plan'], asks: 'What have you agreed with yourself before flying?' },
];

/** By path, list positions as `*`. */
const LABELS: Record<string, string> = {
  'engine.reductionRatio': 'Reduction ratio, engine to propeller',
  'engine.electronicControl': 'Electronic engine control',
  'engine.lanes': 'Control lanes',
  'engine.mixtureControl': 'Mixture control in the cockpit',
  'engine.newOrRebuilt': 'New or rebuilt, to be run in',
  'engine.checkSpeed': 'Engine speed of the run-up check',
  'engine.takeoffFuelFlow': 'Fuel flow at take-off power',
  'cooling.kind': 'Cooled by',
  'cooling.exitDoor': 'Exit door',
  'cooling.alternateDoorControl': 'Second way to move the door',
  'cooling.groundFan': 'Fan for ground running',
  'cooling.coolant.fraction': 'Share of glycol, 0 to 1',
  'cooling.capPressure': 'Cap opens at',
  'cooling.testPressure': 'Pressure of the leak test',
  'cooling.thermostatStart': 'Thermostat starts to open at',
  'cooling.thermostatOpen': 'Thermostat fully open at',
  'cooling.fanRunOn': 'Fan runs on after shutdown for',
  'cooling.sensorLag': 'Lag of the coolant sensor',
  'propeller.kind': 'Propeller pitch',
  'propeller.electric': 'Pitch changed electrically',
  'gear.retractable': 'Retractable gear',
  'gear.layout': 'Third wheel at the',
  'gear.positionSwitches': 'Position switches',
  'gear.timeLimit': 'Longest transit before it counts as a fault',
  'gear.currentTypical': 'Current while moving',
  'gear.currentPeak': 'Current at the lock',
  'gear.pumpRest': 'Pump rests between cycles for',
  'hydraulics.electric': 'Driven by an electric pump',
  'hydraulics.pumpRunMaximum': 'Longest run of the pump',
  'fuel.kind': 'Fuel',
  'fuel.sources': 'Independent feeds the pilot can select',
  'fuel.poweredTransfer': 'A tank is emptied by a transfer pump',
  'fuel.wingTanksSeparate': 'Wing tanks are separate',
  'fuel.electricPumps': 'Electric pumps',
  'fuel.reserve': 'Reserve kept on landing',
  'fuel.tanks.*.name': 'Name of the tank',
  'fuel.tanks.*.capacity': 'What it holds',
  'fuel.tanks.*.usable': 'Usable of it',
  'fuel.tanks.*.transfersTo': 'Pumped into (name of the tank)',
  'electrical.backupSupply': 'Backup supply',
  'electrical.groundSupplyPlug': 'Ground supply plug',
  'electrical.essentialLoad': 'Load with everything but the essential off',
  'electrical.busNames': 'Names of the buses',
  'electrical.batteries.*.separateContactor': 'Has its own contactor',
  'trim.electric': 'Electric trim',
  'trim.axes': 'Axes trimmed',
  'autopilot.axes': 'Axes flown',
  'avionics.elt': 'Emergency locator transmitter',
  'avionics.compass': 'Compass or magnetometer',
  'avionics.pitotHeat': 'Pitot heat',
  'cabin.smoke': 'Smoke system',
  'loading.datum': 'Datum: arms are measured aft from',
  'loading.empty': 'Empty airplane, as weighed',
  'loading.mac': 'Mean aerodynamic chord',
  'loading.mac.leadingEdge': 'Leading edge of the chord, aft of datum',
  'loading.envelope': 'Envelope corners',
  'loading.pilotMass': 'Pilot, dressed to fly',
  'limits.coolant.hotRestart': 'Restart only below',
  'limits.oil.takeoffMinimum': 'Lowest for take-off',
  'limits.flutterTrueAirspeed': 'Flutter speed shown by analysis, true airspeed',
  'limits.mass.maximum': 'Maximum take-off mass',
  'limits.mass.landing': 'Maximum landing mass',
  'limits.mass': 'Mass',
  'limits.bus': 'Bus voltage',
  'limits.battery': 'Batteries',
  'limits.engineControl': 'Engine control',
  'limits.engineControl.minimum': 'Lowest supply voltage',
  'limits.loadFactor': 'Load factor',
  'limits.operatingLimitations': 'Operating limitations, in the authority’s words',
  'speeds.manoeuvring': 'Manoeuvring, V_A',
  'speeds.flapsExtended': 'Flaps extended, V_FE',
  'speeds.gearOperation': 'Gear operation, V_LO',
  'speeds.gearExtended': 'Gear extended, V_LE',
  'speeds.normalOperating': 'Normal operating, V_NO',
  'speeds.neverExceed': 'Never exceed, V_NE',
  'speeds.bestRate': 'Best rate of climb, V_Y',
  'speeds.bestAngle': 'Best angle of climb, V_X',
  'speeds.stallWarning': 'Stall warning begins at',
  'speeds.cleared': 'Cleared so far',
  'instruments.units': 'Units the instruments show',
  'instruments.accuracy': 'Known accuracy of a channel',
  'instruments.accuracy.*.u95': 'Half-width, 95 %',
  'instruments.accuracy.*.basis': 'How it is known',
  'instruments.probeRecovery': 'Recovery factor of the air temperature probe, 0 to 1',
  'instruments.commonStatic': 'Airspeed and altimeter share one static port',
  'instruments.airTemperatureIsStatic': 'Air temperature is already corrected to static',
  'recorders.*.channels': 'Channels, by glossary name',
  'recorders.*.clock': 'Its clock',
  'place.runways.*.name': 'Runway',
  'place.runways.*.length': 'Length of the runway',
  'place.runways.*.slope': 'Slope, uphill positive in the direction of the first number',
  'place.variation': 'Magnetic variation, east positive',
  'place.utcOffset': 'Airfield clock ahead of UTC',
  'place.name': 'Airfield',
  'plan.program': 'Kind of program',
  'plan.program.kind': 'Phase one ends with',
  'plan.program.hours': 'Hours assigned',
  'plan.program.tasks': 'Required tasks',
  'plan.program.tasks.*.tests': 'Tests that answer it',
  'plan.ifr': 'Instrument flight later',
  'plan.night': 'Night flight later',
  'plan.hotDay': 'Hot day after',
  'plan.hotDayAir': 'Or a hotter day at your field',
  'plan.turnBackFuel': 'Turn back with fuel at',
  'plan.stickForceCap': 'Highest stick force accepted',
  'plan.aileronCap': 'Highest aileron force accepted',
  'plan.aftMargin': 'Distance kept from the aft limit at first, share of the chord',
  'plan.coolingMargin': 'Cooling margin wanted on the hot day',
  'plan.stopMargin': 'Margin between a limit and the stop number on a card',
};

const HINTS: Record<string, string> = {
  description: 'One or two sentences for whoever reads the plan.',
  'cooling.sensorLag': 'Time constant. Without it the maker’s usual value is assumed, and said.',
  'loading.empty': 'Without it no loading can be worked out.',
  'loading.envelope': 'Corners of the allowed envelope, in order round it.',
  'limits.operatingLimitations': 'Quoted at the gates. They come before anything Proveout says.',
  'instruments.accuracy': 'What a check against a reference showed. Without it a usual accuracy is assumed, and said.',
  'plan.stopMargin': 'Cards print the limit less this.',
  'electrical.busNames': 'Separated by commas.',
};

const CHOICES: Record<string, string> = {
  'cooling.kind=liquid': 'liquid',
  'cooling.kind=air': 'air',
  'plan.program.kind=fixed-hours': 'a number of hours',
  'plan.program.kind=task-list': 'a list of tasks',
  'plan.hotDay=14cfr23': '14 CFR 23.1043: 100 °F at sea level',
  'plan.hotDay=cs22': 'CS 22.1047: 38 °C at sea level',
};

/** A path with list positions and names of a record as `*`. */
export function pattern(path: string): string {
  return path.replace(/\.\d+(?=\.|$)/g, '.*').replace(/^(instruments\.accuracy)\.[^.]+/, '$1.*');
}

/** What a field is called. */
export function labelOf(path: string): string {
  const known = LABELS[pattern(path)];
  if (known !== undefined) return known;
  const key = path.split('.').at(-1) ?? path;
  const words = key
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll('-', ' ')
    .toLowerCase();
  return sentence(words.replace(/\bu95\b/, '± (95 %)'));
}

/** What a person should know before filling it in, or empty. */
export function hintOf(path: string): string {
  return HINTS[pattern(path)] ?? '';
}

/** The words of a choice. */
export function choiceOf(path: string, value: string, otherwise: string): string {
  return CHOICES[`${pattern(path)}=${value}`] ?? otherwise;
}

/** Paths that have words of their own; a test holds them against the schema. */
export const WORDED_PATHS: readonly string[] = [...Object.keys(LABELS), ...Object.keys(HINTS)];

const ONE_OF: Record<string, string> = {
  'fuel.tanks': 'tank',
  'electrical.batteries': 'battery',
  'loading.stations': 'station',
  'loading.envelope': 'corner',
  'place.runways': 'runway',
  'plan.program.tasks': 'task',
  'instruments.accuracy': 'channel',
  recorders: 'recorder',
};

/** What one thing of a list is called. */
export function oneOf(path: string): string {
  return ONE_OF[pattern(path)] ?? 'entry';
}
