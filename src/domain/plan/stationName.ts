/** What is said on arriving at a station. */
import { spokenPosition } from '../checks/phrasing.ts';
import type { Place } from './ground.ts';

/** @param visit 0 for the first time at this station */
export function stationName(place: Place, visit: number): string {
  return `${firstName(place)}${visit === 0 ? '' : ' again'}.`;
}

function firstName({ kind, position }: Place): string {
  switch (kind) {
    case 'inside':
      return 'Inside';
    case 'doorway':
      return 'At the door';
    case 'tongue':
      return 'At the tongue';
    case 'left-lift':
      return 'Left lift';
    case 'right-lift':
      return 'Right lift';
    case 'left-side':
      return 'Along the left side';
    case 'right-side':
      return 'Along the right side';
    case 'rear':
      return 'At the rear';
    case 'tow-vehicle':
      return 'At the truck';
    case 'wheel': {
      if (position === null) return 'At the wheel';
      const [side, row] = spokenPosition(position).split(' ');
      const name = side === 'right' ? 'Right' : 'Left';
      return row === undefined ? `${name} wheel` : `${name} side, ${row} wheel`;
    }
  }
}
