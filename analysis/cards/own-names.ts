/** Names of what the airplane has several of, as the rows of a table call them. */
import type { Airplane } from '../airplane/index.ts';
import type { Own } from './row-plans/index.ts';

/** The legs of the gear, or its wheels. */
export function wheelNames(airplane: Airplane): string[] {
  return [airplane.gear.layout === 'tail' ? 'tail' : 'nose', 'left', 'right'];
}

/** The tanks, as the description names them. */
export function tankNames(airplane: Airplane): string[] {
  return airplane.fuel.tanks.map((tank) => tank.name);
}

/**
 * Names of one's own parts.
 * @param own what they are, text
 * @param airplane the description, object
 * @returns names; none where the airplane has none
 */
export function ownNames(own: Own, airplane: Airplane): string[] {
  switch (own) {
    case 'tank':
      return tankNames(airplane);
    case 'source':
      return airplane.fuel.tanks.filter((tank) => tank.transfersTo === undefined).map((tank) => tank.name);
    case 'battery':
      return airplane.electrical.batteries.map((battery) => battery.name);
    case 'wheel':
      return wheelNames(airplane);
    case 'radio':
      return numbered('com', airplane.avionics.radios);
    case 'recorder':
      return airplane.recorders.map((recorder) => recorder.name);
    case 'flap':
      return airplane.flaps === false ? [] : [...airplane.flaps.settings];
    case 'blade':
      return numbered('blade', airplane.propeller.blades);
    case 'surface': {
      const flaps = airplane.flaps === false ? [] : ['left flap', 'right flap'];
      return ['elevator', 'left aileron', 'right aileron', 'rudder', ...flaps];
    }
  }
}

function numbered(name: string, count: number): string[] {
  return Array.from({ length: count }, (_, i) => `${name} ${i + 1}`);
}
