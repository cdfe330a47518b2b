/** Every document the project rests on. Docstrings cite by key in brackets; Help and handbook print from this list. */

export type SourceMark = 'read' | 'memory' | 'practice' | 'own';

export interface Source {
  readonly key: string;
  readonly title: string;
  readonly year?: string;
  readonly mark: SourceMark;
  readonly gives: string;
}

const s = (key: string, title: string, mark: SourceMark, gives: string, year?: string): Source => ({
  key,
  title,
  mark,
  gives,
  ...(year ? { year } : {}),
});

export const SOURCES: readonly Source[] = [
  s(
    'ftm-108',
    'USNTPS FTM-108, Fixed Wing Performance, chapter 7 (climb)',
    'read',
    'specific excess power, climb correction factor, weight and drag corrections',
  ),
  s(
    '14cfr23-65',
    'former 14 CFR 23.65(a), text through amendment 23-62',
    'memory',
    'climb gradient as rise over horizontal distance',
  ),
  s(
    'smithsonian',
    'Smithsonian Meteorological Tables, sixth edition',
    'read',
    'altimeter-setting equation (read second-hand)',
    '1951',
  ),
  s(
    'icao-7488',
    'ICAO Doc 7488, Manual of the ICAO Standard Atmosphere',
    'memory',
    'constants and relations of the standard atmosphere',
    '1993',
  ),
  s('us76', 'U.S. Standard Atmosphere, 1976', 'memory', 'constants; viscosity relation', '1976'),
  s(
    'rp-1046',
    'NASA Reference Publication 1046, Measurement of Aircraft Speed and Altitude',
    'read',
    'impact pressure and altitude tables',
    '1980',
  ),
  s(
    'jcgm-100',
    'JCGM 100, Guide to the expression of uncertainty in measurement',
    'memory',
    'combined and expanded uncertainty',
    '2008',
  ),
  s('jcgm-101', 'JCGM 101, Propagation of distributions using a Monte Carlo method', 'memory', 'Monte Carlo', '2008'),
  s('14cfr23-1043', '14 CFR 23.1043, text through amendment 23-62', 'read', 'hot-day correction of temperatures'),
  s(
    '14cfr23-1047',
    '14 CFR 23.1047, text through amendment 23-62',
    'memory',
    'cooling climb: until five minutes past the peak',
  ),
  s('14cfr25-1045', '14 CFR 25.1045, 2019 edition', 'read', 'stabilised means under 2 degF a minute'),
  s('cs22-1047', 'CS 22.1047', 'read', 'hot day of 38 degC less 6.5 K per km; cooling climb procedure'),
  s(
    'iapws-saturation',
    'IAPWS saturation line of water, equation of Wagner and Pruss',
    'memory',
    'saturation pressure of water',
    '1993',
  ),
  s(
    'sae-j1393',
    'SAE J1393, cooling test of heavy vehicles, as summarised publicly',
    'read',
    'limiting ambient temperature',
    '2023',
  ),
  s(
    'ac-90-89a',
    'FAA AC 90-89A, Amateur-built aircraft and ultralight flight testing handbook',
    'read',
    'course of a flight-test program; delivery of fuel',
    '1995',
  ),
  s(
    'ac-43-13-1b-ch10',
    'FAA AC 43.13-1B, chapter 10, weight and balance',
    'read',
    'four worked loadings of one airplane; moments',
    '1998',
  ),
  s(
    'faa-h-8083-1',
    'FAA-H-8083-1, Aircraft Weight and Balance Handbook',
    'memory',
    'wheel reactions, ballast, chord share',
  ),
  s(
    'faa-h-8083-25',
    'FAA-H-8083-25, Pilot’s Handbook of Aeronautical Knowledge, weight and balance chapter',
    'read',
    'loaded mass and CG; weight shifting',
  ),
  s(
    'gray-1998',
    'D. Gray, Using GPS to accurately establish True Airspeed',
    'read',
    'true airspeed and wind from three legs on any tracks; read second-hand',
    '1998',
  ),
  s(
    '14cfr23-1323',
    '14 CFR 23.1323(b), text before the 2017 amendment',
    'read',
    'airspeed system error: 3 percent of calibrated airspeed or 5 knots, the greater',
  ),
  s(
    '14cfr23-1325',
    '14 CFR 23.1325(e), text before the 2017 amendment',
    'read',
    'altimeter error from the static source: 30 ft per 100 kt (read as quoted); its floor of 30 ft from memory',
  ),
  s('practice', 'common practice, no source', 'practice', 'figures that careful builders use'),
  s('memory', 'from memory, not confirmed', 'memory', 'recalled figures'),
  s('own', 'the project’s own choice, stated where it is made', 'own', 'rules and searches of our own'),
  s('simulation', 'the project’s own seeded simulations (tests/blind)', 'own', 'coverage of intervals'),
];
