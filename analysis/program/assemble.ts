/** Outings into the program that is shown: minutes, fuel, loading, positions, reasons, hours and gates. */
import type { Airplane } from '../airplane/index.ts';
import { factsFor, type Known, missingFor, STAGE_TITLES, STAGES, wordsFor } from '../catalogue/index.ts';
import type { Chosen } from './applicable.ts';
import { whyHere, whyOuting } from './explain.ts';
import { flightMinutes, greatestHeight, loadOfItems } from './flight-search.ts';
import { burnOf, type FuelFigures, fuelFigures } from './fuel-plan.ts';
import { gatesFor } from './gate.ts';
import { hoursOf } from './hours.ts';
import type { Item } from './items.ts';
import { type LoadingFigures, loadingFigures, loadingOf } from './loads.ts';
import { followersOf, unlocksOf, type Waits } from './prerequisites.ts';
import type { Outing, OutingFuel, OutingLoad, Program, ProgramTest } from './program.ts';

export interface Parts {
  airplane: Airplane;
  chosen: Chosen;
  waits: ReadonlyMap<string, Waits>;
  outings: readonly (readonly Item[])[];
  /** every item, by its key */
  items: ReadonlyMap<string, Item>;
  /** longest flight the tanks and the rules allow, min */
  longestFlight: number;
  own: ReadonlySet<string>;
  known: Known;
}

/**
 * The program of outings already arranged.
 * @param parts the airplane, the tests chosen, what waits for what, and the outings, object
 * @returns the program
 */
export function assemble(parts: Parts): Program {
  const { airplane, chosen, waits } = parts;
  const facts = factsFor(airplane);
  const titles = new Map([...chosen.in, ...chosen.out].map(({ test }) => [test.id, wordsFor(test.title, airplane)]));
  const order = [...new Set(parts.outings.flatMap((outing) => outing.map((item) => item.test)))];
  const positions = new Map(order.map((id, i) => [id, i + 1]));
  const outings = outingsOf(parts, titles);
  const places = placesOf(parts.outings, outings);
  const unlocks = unlocksOf(waits);
  const followers = followersOf(waits);
  const tests = order.flatMap((id): ProgramTest[] => {
    const found = chosen.in.find((one) => one.test.id === id);
    const place = places.get(id)?.[0];
    const wait = waits.get(id);
    if (!found || !place || !wait) return [];
    const { test, answer } = found;
    return [
      {
        id,
        title: titles.get(id) ?? id,
        stage: test.stage,
        system: test.system,
        position: positions.get(id) ?? 0,
        purpose: wordsFor(test.purpose, airplane),
        because: answer.because,
        paths: answer.paths,
        why: whyHere({
          item: place.item,
          waits: wait,
          titles,
          positions,
          followers: followers.get(id) ?? 0,
          outing: place.outing,
        }),
        needs: [...wait.all],
        unlocks: unlocks.get(id) ?? [],
        produces: test.produces,
        consumes: wait.makers.map((one) => one.product),
        outing: place.outing.number,
        outings: (places.get(id) ?? []).map((one) => one.outing.number),
        reduction: test.reductions[0] ?? null,
        reductions: test.reductions,
        flightMinutes: test.flightMinutes,
        groundMinutes: test.groundMinutes,
        opens: test.planning.opens ?? null,
        risk: test.planning.risk,
        load: test.planning.load,
        missing: missingFor(test, airplane, parts.known, facts),
        own: parts.own.has(id),
      },
    ];
  });
  return {
    airplane: { name: airplane.name, registration: airplane.registration },
    stages: STAGES.map((stage) => ({
      stage,
      title: STAGE_TITLES[stage],
      tests: tests.filter((test) => test.stage === stage),
    })),
    order,
    notApplicable: chosen.out.map(({ test, answer, by }) => ({
      id: test.id,
      title: titles.get(test.id) ?? test.id,
      stage: test.stage,
      reason: answer.because,
      paths: answer.paths,
      by,
    })),
    outings,
    hours: hoursOf(airplane, tests, outings),
    // a test the person leaves out stays in the evidence of its gate
    gates: gatesFor(
      new Map(
        [...chosen.in, ...chosen.out.filter((one) => one.by === 'person')].map(({ test }) => [
          test.id,
          titles.get(test.id) ?? test.id,
        ]),
      ),
    ),
    operatingLimitations: airplane.limits.operatingLimitations,
  };
}

function outingsOf({ airplane, outings }: Parts, titles: ReadonlyMap<string, string>): Outing[] {
  const fuel = fuelFigures(airplane);
  const loading = loadingFigures(airplane);
  let flight = 0;
  return outings.map((items, i): Outing => {
    const kind = kindOf(items);
    if (kind === 'flight') flight += 1;
    const first = items[0];
    const minutesOnCondition = items.reduce((sum, item) => sum + item.minutes, 0);
    const flown = kind === 'flight';
    const minutesTotal = flown ? flightMinutes(items) : minutesOnCondition;
    const height = greatestHeight(items);
    const burn = flown && fuel ? fuelOf(minutesTotal, height, fuel) : null;
    const load = loadOfItems(items);
    // the test that asks for a load says which step of it this is
    const lead = items.find((item) => item.source.planning.load === load) ?? first;
    const aboard = flown && lead ? loadOf(lead, burn, loading) : null;
    return {
      number: i + 1,
      flight: flown ? flight : null,
      kind,
      title: titleOf(items, kind, flight, titles),
      stage: first?.source.stage ?? 'shop',
      tests: items.map((item) => item.test),
      parts: items.map(({ test, part, of }) => ({ test, part, of })),
      minutesOnCondition,
      minutesTotal: Math.round(minutesTotal),
      why: whyOuting(items, kind, titles, outings[i + 1]),
      opens: items.find((item) => item.source.planning.opens)?.source.planning.opens ?? null,
      load,
      loading: aboard,
      fuel: burn,
      height: flown && height > 0 ? height : null,
      daylight: items.some((item) => item.source.planning.daylight),
      remarks: remarksOn(flown, burn, aboard),
    };
  });
}

/** What kind of outing its items make. */
export function kindOf(items: readonly Item[]): Outing['kind'] {
  if (items.some((item) => item.flown)) return 'flight';
  return items[0]?.source.stage === 'shop' ? 'shop' : 'ground';
}

function titleOf(
  items: readonly Item[],
  kind: Outing['kind'],
  flight: number,
  titles: ReadonlyMap<string, string>,
): string {
  const lead = items.find((item) => item.source.planning.opens) ?? items[0];
  const title = lead
    ? `${titles.get(lead.test) ?? lead.test}${lead.of > 1 ? `, part ${lead.part} of ${lead.of}` : ''}`
    : '';
  const more = items.length > 1 ? ` and ${items.length - 1} more` : '';
  return kind === 'flight' ? `Flight ${flight}: ${title}${more}` : `${title}${more}`;
}

function fuelOf(minutes: number, height: number, figures: FuelFigures): OutingFuel {
  const burn = burnOf(minutes, height, figures);
  const wanted = burn + figures.reserve;
  return {
    takeoff: Math.min(wanted, figures.usable),
    burn,
    reserve: figures.reserve,
    usable: figures.usable,
    words: figures.words,
  };
}

const LOADINGS = new WeakMap<LoadingFigures, Map<string, OutingLoad>>();

function loadOf(item: Item, fuel: OutingFuel | null, figures: LoadingFigures): OutingLoad | null {
  if (fuel === null) return null;
  const known = LOADINGS.get(figures) ?? new Map<string, OutingLoad>();
  LOADINGS.set(figures, known);
  const { load } = item.source.planning;
  const key = `${load} ${item.part}/${item.of} ${fuel.takeoff.toFixed(6)} ${fuel.burn.toFixed(6)}`;
  const found =
    known.get(key) ??
    loadingOf(load, item.part, item.of, { takeoff: fuel.takeoff, burn: fuel.burn, full: fuel.usable }, figures);
  known.set(key, found);
  return found;
}

function remarksOn(flown: boolean, fuel: OutingFuel | null, load: OutingLoad | null): string[] {
  if (!flown) return [];
  const remarks: string[] = [];
  if (fuel === null) remarks.push('Fuel not worked out: enter the burn at take-off power.');
  else if (fuel.burn + fuel.reserve > fuel.usable) {
    remarks.push('The tanks do not hold this flight with its reserve: land and refuel between its tests.');
  }
  if (load?.inside === false)
    remarks.push('Take-off or landing is not inside the envelope with its uncertainty: plan another load.');
  if (load !== null && load.inside === null) remarks.push(`Weight and balance: ${load.words}.`);
  return remarks;
}

function placesOf(arranged: readonly (readonly Item[])[], outings: readonly Outing[]) {
  const places = new Map<
    string,
    { item: Item; outing: Pick<Outing, 'number' | 'flight' | 'kind'> & { items: readonly Item[] } }[]
  >();
  for (const [i, items] of arranged.entries()) {
    const outing = outings[i];
    if (!outing) continue;
    for (const item of items) {
      const list = places.get(item.test) ?? [];
      list.push({ item, outing: { number: outing.number, flight: outing.flight, kind: outing.kind, items } });
      places.set(item.test, list);
    }
  }
  return places;
}
