/**
 * Flights of a stage: fewest flights, then fewest changes of load, then risk rising. A beam search over whole flights:
 * at each step every state tries, for each load, each new thing that is ready, filled up with what is not new.
 * Deterministic: ties go by how many tests wait, then by the place in the catalogue.
 */
import type { Load } from '../catalogue/index.ts';
import { toSi } from '../units/index.ts';
import { isReady, nextSession } from './ground-sessions.ts';
import type { Item } from './items.ts';
import { LONGEST_SESSION_MINUTES, overheadMinutes } from './outing-rules.ts';

/** states kept at each depth; wider finds no fewer flights on either demo airplane or 200 random ones */
const BEAM = 6;

interface State {
  done: ReadonlySet<string>;
  left: readonly Item[];
  outings: readonly (readonly Item[])[];
  flights: number;
  moves: number;
  falls: number;
  load: Load | null;
  risk: number;
}

/**
 * Outings of a flight stage, its ground work in between as soon as it is ready.
 * @param items items of the stage, list
 * @param done keys done before the stage, set
 * @param longestFlight minutes of the longest flight, overhead included
 * @param load load of the last flight before the stage, or null
 * @param beam states kept at each depth
 * @returns outings in order, each a list of items in order
 * @throws Error when items wait for each other: the tests were not checked
 */
export function searchFlights(
  items: readonly Item[],
  done: ReadonlySet<string>,
  longestFlight: number,
  load: Load | null,
  beam = BEAM,
): Item[][] {
  const left = items.map((item) => withoutDone(item, done));
  const start: State = { done: NOBODY, left, outings: [], flights: 0, moves: 0, falls: 0, load, risk: 0 };
  let states: State[] = [groundFirst(start)];
  for (;;) {
    const complete = states.filter((state) => state.left.length === 0);
    if (complete.length > 0) return best(complete).outings.map((outing) => [...outing]);
    const next = new Map<string, State>();
    for (const state of states) {
      for (const flight of candidates(state, longestFlight)) {
        const reached = groundFirst(fly(state, flight));
        const key = [...reached.left].map((item) => item.index * 10 + item.part).join(' ');
        const rival = next.get(key);
        if (!rival || cost(reached) < cost(rival)) next.set(key, reached);
      }
    }
    if (next.size === 0) {
      const stuck = states[0]?.left.map((item) => item.key).join(', ') ?? '';
      throw new Error(`tests wait for each other: ${stuck}`);
    }
    states = [...next.values()].sort((a, b) => cost(a) - cost(b)).slice(0, beam);
  }
}

/** Only what lies in this stage is still waited for. */
function withoutDone(item: Item, done: ReadonlySet<string>): Item {
  const open = (key: string) => !done.has(key);
  return { ...item, earlier: item.earlier.filter(open), before: item.before.filter(open) };
}

/** Ground work that is ready is done at once: it costs no flight, and others wait for it. */
function groundFirst(state: State): State {
  let now = state;
  for (;;) {
    const ground = now.left.filter((item) => !item.flown);
    const session = nextSession(ground, now.done, LONGEST_SESSION_MINUTES.paper, null);
    if (session.length === 0) return now;
    now = { ...now, ...without(now, session), outings: [...now.outings, session] };
  }
}

function fly(state: State, flight: readonly Item[]): State {
  const wanted = loadOfItems(flight);
  const load = wanted === 'any' ? state.load : wanted;
  const risk = Math.max(...flight.map((item) => item.source.planning.risk));
  return {
    ...without(state, flight),
    outings: [...state.outings, flight],
    flights: state.flights + 1,
    moves: state.moves + (state.load !== null && load !== state.load ? 1 : 0),
    falls: state.falls + Math.max(0, state.risk - risk),
    load,
    risk,
  };
}

function without(state: State, outing: readonly Item[]): { done: ReadonlySet<string>; left: readonly Item[] } {
  const gone = new Set(outing.map((item) => item.key));
  return { done: new Set([...state.done, ...gone]), left: state.left.filter((item) => !gone.has(item.key)) };
}

function candidates(state: State, longestFlight: number): Item[][] {
  const flown = state.left.filter((item) => item.flown);
  const ready = flown.filter((item) => isReady(item, state.done, NOBODY));
  const named = [...new Set(ready.map((item) => item.source.planning.load))].filter((load) => load !== 'any');
  const loads: Load[] = named.length > 0 ? named : ['any'];
  return loads.flatMap((load) => {
    const here = flown.filter(({ source }) => source.planning.load === load || source.planning.load === 'any');
    const flights = here
      .filter(opensOrAlone)
      .flatMap((leader) => leadIn(leader, here, state.done))
      .filter((start) => start.length === 1 || flightMinutes(start) <= longestFlight)
      .map((start) => filled(start, here, state.done, longestFlight));
    const plain = flights.length > 0 ? [] : [filled([], here, state.done, longestFlight)];
    return [...flights, ...plain].filter((flight) => flight.length > 0);
  });
}

/** A new thing with what must come before it on the same flight; nothing where that cannot be. */
function leadIn(leader: Item, here: readonly Item[], done: ReadonlySet<string>): Item[][] {
  const flight: Item[] = [];
  const aboard = new Set<string>();
  const take = (item: Item): boolean => {
    if (!item.earlier.every((key) => done.has(key))) return false;
    for (const key of item.before) {
      if (done.has(key) || aboard.has(key)) continue;
      const first = here.find((one) => one.key === key);
      if (!first || opensOrAlone(first) || item.source.planning.alone || !take(first)) return false;
    }
    flight.push(item);
    aboard.add(item.key);
    return true;
  };
  return take(leader) ? [flight] : [];
}

/**
 * The load of a flight: that of the test that asks for one; a test flown at any load rides along.
 * @param items its items, list
 * @returns the load, 'any' where none asks
 */
export function loadOfItems(items: readonly Item[]): Load {
  return items.find((item) => item.source.planning.load !== 'any')?.source.planning.load ?? 'any';
}

const NOBODY: ReadonlySet<string> = new Set();

function opensOrAlone(item: Item): boolean {
  return item.source.planning.opens !== undefined || item.source.planning.alone;
}

/** A flight about one new thing, or none, filled with what is not new while time allows. */
function filled(
  start: readonly Item[],
  here: readonly Item[],
  done: ReadonlySet<string>,
  longestFlight: number,
): Item[] {
  if (start.some((item) => item.source.planning.alone)) return [...start];
  const flight: Item[] = [...start];
  const aboard = new Set(flight.map((item) => item.key));
  const tests = new Set(flight.map((item) => item.test));
  const others = here
    .filter((item) => !opensOrAlone(item))
    .sort((a, b) => b.followers - a.followers || a.source.planning.risk - b.source.planning.risk || a.index - b.index);
  for (let added = true; added; ) {
    added = false;
    for (const item of others) {
      if (tests.has(item.test) || !isReady(item, done, aboard)) continue;
      if (flight.length > 0 && flightMinutes([...flight, item]) > longestFlight) continue;
      flight.push(item);
      aboard.add(item.key);
      tests.add(item.test);
      added = true;
    }
  }
  return inOrder(flight);
}

/**
 * Minutes of a flight, climb and transit included.
 * @param flight its items, list
 * @returns minutes
 */
export function flightMinutes(flight: readonly Item[]): number {
  return flight.reduce((sum, item) => sum + item.minutes, 0) + overheadMinutes(greatestHeight(flight));
}

/**
 * Greatest height a flight asks for.
 * @param flight its items, list
 * @returns m above ground, 0 where none is stated
 */
export function greatestHeight(flight: readonly Item[]): number {
  return Math.max(
    0,
    ...flight.map(({ source }) =>
      source.planning.height ? toSi(source.planning.height.value, source.planning.height.unit) : 0,
    ),
  );
}

/** Within a flight: what it waits for first, then risk rising, then the catalogue. */
function inOrder(flight: readonly Item[]): Item[] {
  const left = [...flight].sort((a, b) => a.source.planning.risk - b.source.planning.risk || a.index - b.index);
  const order: Item[] = [];
  const aboard = new Set(flight.map((item) => item.key));
  while (left.length > 0) {
    const placed = new Set(order.map((item) => item.key));
    const at = left.findIndex((item) => item.before.every((key) => !aboard.has(key) || placed.has(key)));
    order.push(...left.splice(Math.max(0, at), 1));
  }
  return order;
}

/** Flights flown and still needed (one for each new thing left), then changes of load, then risk falling. */
function cost(state: State): number {
  const fresh = state.left.filter((item) => item.flown && opensOrAlone(item)).length;
  const rest = state.left.reduce((sum, item) => sum + (item.flown && !opensOrAlone(item) ? item.minutes : 0), 0);
  return (state.flights + fresh) * 1000 + rest * 2 + state.moves * 30 + state.falls;
}

function best(states: readonly State[]): State {
  return states.reduce((a, b) => (cost(b) < cost(a) ? b : a));
}
