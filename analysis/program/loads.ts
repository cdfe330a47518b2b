/**
 * The loading of a flight: what each load asks for, what is put aboard to reach it, and where take-off and landing lie
 * in the envelope. Nobody is ballast: seats other than the pilot's take bags tied down.
 */
import type { Airplane } from '../airplane/index.ts';
import type { Load } from '../catalogue/index.ts';
import {
  armLimitsAt,
  type Balance,
  balanceOf,
  type Corner,
  gasolineDensity,
  type LoadItem,
  type LoadPlace,
  loadFor,
  marginInEnvelope,
  shareOfChord,
} from '../models/index.ts';
import { toSi } from '../units/index.ts';
import { LOAD_MEANINGS, type LoadMeaning } from './load-meanings.ts';
import type { LoadPoint, OutingLoad } from './program.ts';

/** smallest bag of ballast, kg */
const BAG = 1;

export interface LoadingFigures {
  empty: LoadItem | null;
  pilot: LoadItem | null;
  places: LoadPlace[];
  corners: Corner[];
  chord: { length: number; leadingEdge: number } | null;
  maximum: number;
  fuelArm: number | null;
  missing: string[];
}

/**
 * Weight and balance figures of the description.
 * @param airplane the description, object
 * @returns figures in SI, with what is missing in words
 */
export function loadingFigures(airplane: Airplane): LoadingFigures {
  const { loading } = airplane;
  const seat = loading.stations.find((station) => station.kind === 'seat');
  const pilotMass = loading.pilotMass;
  const empty = loading.empty
    ? {
        name: 'empty airplane',
        mass: loading.empty.mass.si,
        arm: loading.empty.arm.si,
        massU95: u95Of(loading.empty.mass),
        armU95: u95Of(loading.empty.arm),
      }
    : null;
  const pilot =
    seat && pilotMass ? { name: 'pilot', mass: pilotMass.si, arm: seat.arm.si, massU95: u95Of(pilotMass) } : null;
  const places = loading.stations
    .filter((station) => station !== seat)
    .map((station) => ({ name: station.name, arm: station.arm.si, maximum: station.maximum?.si ?? null }));
  const feeds = airplane.fuel.tanks.filter((tank) => tank.transfersTo === undefined);
  const armed = feeds.filter((tank) => tank.arm !== undefined);
  const litres = armed.reduce((sum, tank) => sum + tank.capacity.si, 0);
  const fuelArm =
    armed.length > 0 && armed.length === feeds.length
      ? armed.reduce((sum, tank) => sum + tank.capacity.si * (tank.arm?.si ?? 0), 0) / litres
      : null;
  const missing = [
    ...(empty ? [] : ['empty weight and arm']),
    ...(pilot ? [] : ['pilot’s weight and seat']),
    ...(loading.envelope.length >= 3 ? [] : ['CG envelope']),
    ...(fuelArm === null ? ['arm of each tank'] : []),
  ];
  return {
    empty,
    pilot,
    places,
    corners: loading.envelope.map((corner) => ({ mass: corner.mass.si, arm: corner.arm.si })),
    chord: loading.mac ? { length: loading.mac.length.si, leadingEdge: loading.mac.leadingEdge.si } : null,
    maximum: airplane.limits.mass.maximum.si,
    fuelArm,
    missing,
  };
}

/**
 * Loading of one flight.
 * @param load what is asked, text
 * @param part which part of a test in several outings, from 1
 * @param of number of parts
 * @param fuel fuel planned at take-off, burnt, and with the feeding tanks full, m3
 * @param figures weight and balance figures, SI
 * @returns take-off and landing with uncertainty, what is put aboard, in words; nulls where figures are missing
 */
export function loadingOf(
  load: Load,
  part: number,
  of: number,
  fuel: { takeoff: number; burn: number; full: number },
  figures: LoadingFigures,
): OutingLoad {
  const meaning = LOAD_MEANINGS[load];
  const { empty, pilot, fuelArm, corners } = figures;
  if (!empty || !pilot || fuelArm === null || corners.length < 3) {
    const words = `${meaning.words}; not worked out: ${figures.missing.join(', ')} missing`;
    return { words, takeoff: null, landing: null, fuel: null, added: [], inside: null };
  }
  const tries = meaning.mass(part, of) === null ? [fuel.takeoff] : [fuel.takeoff, Math.max(fuel.takeoff, fuel.full)];
  let reached: Reached | null = null;
  for (const takeoffFuel of tries) {
    const aboard = [empty, pilot, fuelItem(takeoffFuel, fuelArm)];
    const now = reach(aboard, meaning, part, of, figures);
    if (reached === null || now.short < reached.short) reached = { ...now, aboard, takeoffFuel };
    if (reached.short === 0) break;
  }
  const { added = [], aboard = [], words = meaning.words, takeoffFuel = fuel.takeoff } = reached ?? {};
  const takeoff = pointOf(balanceOf([...aboard, ...added]), figures);
  const landed = fuelItem(takeoffFuel - fuel.burn, fuelArm);
  const landing = pointOf(balanceOf([empty, pilot, landed, ...added]), figures);
  return { words, takeoff, landing, fuel: takeoffFuel, added, inside: takeoff.inside && landing.inside };
}

interface Found {
  added: { name: string; mass: number; arm: number }[];
  words: string;
  /** kg short of what was asked; infinite where the CG band itself cannot be reached */
  short: number;
}

interface Reached extends Found {
  aboard: LoadItem[];
  takeoffFuel: number;
}

/** The load asked for, or the heaviest below it that the places and the band allow. */
function reach(aboard: LoadItem[], meaning: LoadMeaning, part: number, of: number, figures: LoadingFigures): Found {
  const bare = balanceOf(aboard);
  const share = meaning.mass(part, of);
  const most = figures.maximum - bare.massU95 - BAG / 2;
  const target = share === null ? bare.mass : bare.mass + share * Math.max(0, most - bare.mass);
  const band = meaning.band(part, of);
  // where the weight is free, ballast may add some of its own to bring the CG into the band
  const steps = share === null ? EXTRA_BALLAST : LESS_LOAD;
  for (const step of steps) {
    const mass = share === null ? target + step : target - step;
    if (mass < bare.mass - BAG || mass > most) continue;
    const limits = armLimitsAt(figures.corners, mass);
    if (!limits) continue;
    const at = (place: number) => limits.forward + place * (limits.aft - limits.forward);
    const from = Math.max(at(band[0]), limits.forward + bare.armU95);
    const to = Math.min(at(band[1]), limits.aft - bare.armU95);
    const found = loadFor(aboard, figures.places, { mass, from, to }, BAG);
    if (!found) continue;
    const short = share === null ? 0 : step;
    const words = short === 0 ? meaning.words : `${meaning.words}; ${short} kg short: the load places hold no more`;
    return { added: found.load, words, short };
  }
  return { added: [], words: `${meaning.words}; the load places cannot reach it as described`, short: Infinity };
}

/** kg below the weight asked for, tried in turn */
const LESS_LOAD = [0, 2, 5, 10, 15, 20, 30, 40, 60, 80, 100, 150, 200];

/** ballast tried where the mass is free, kg */
const EXTRA_BALLAST = [0, 5, 10, 15, 20, 30, 40, 60, 80, 100, 120];

function fuelItem(volume: number, arm: number): LoadItem {
  const density = gasolineDensity();
  return { name: 'fuel', mass: volume * density.value, arm, massU95: volume * density.u95 };
}

function pointOf(balance: Balance, figures: LoadingFigures): LoadPoint {
  const margin = marginInEnvelope(figures.corners, balance);
  return {
    mass: balance.mass,
    massU95: balance.massU95,
    arm: balance.arm,
    armU95: balance.armU95,
    chord: figures.chord ? shareOfChord(balance.arm, figures.chord) : null,
    inside: margin.inside,
  };
}

/** U95 of a stated figure, SI; it is entered as a difference in the unit of the figure. */
function u95Of(stated: { unit: string; u95?: number | undefined }): number {
  return stated.u95 === undefined ? 0 : toSi(stated.u95, stated.unit) - toSi(0, stated.unit);
}
