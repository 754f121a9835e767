/** "left front": a position as it is spoken. */
import type { Position } from '../../domain/checks/expects.ts';

export function positionWords(position: Position): string {
  return position.replace('-', ' ');
}

/** ", left front" to end a button's full name with; empty where a check has no position. */
export function atPosition(position: Position | null): string {
  return position === null ? '' : `, ${positionWords(position)}`;
}
