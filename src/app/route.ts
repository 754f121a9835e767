/** Places in the app as the part of the address after `#`. Ids are untrusted text: they are only ever looked up. */
import type { RoundKind } from '../domain/checks/check.ts';

export type Route =
  | { readonly at: 'home' }
  | { readonly at: 'units' }
  | { readonly at: 'unit-new' }
  | { readonly at: 'unit-edit'; readonly unit: string }
  | { readonly at: 'unit'; readonly unit: string }
  | { readonly at: 'trends'; readonly unit: string }
  | { readonly at: 'weights'; readonly unit: string }
  | { readonly at: 'start'; readonly unit: string; readonly kind: RoundKind }
  | { readonly at: 'run'; readonly round: string }
  | { readonly at: 'round'; readonly round: string }
  | { readonly at: 'report'; readonly round: string }
  | { readonly at: 'compare'; readonly unit: string }
  | { readonly at: 'rehearsal' }
  | { readonly at: 'files' }
  | { readonly at: 'settings' }
  | { readonly at: 'numbers' };

const KINDS: readonly RoundKind[] = ['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'];

/** @returns home for anything that is not a place */
export function parseRoute(hash: string): Route {
  const [place = '', id = '', more = ''] = hash.replace(/^#\/?/, '').split('/').map(decode);
  switch (place) {
    case 'units':
    case 'rehearsal':
    case 'files':
    case 'settings':
    case 'numbers':
      return { at: place };
    case 'unit':
      if (id === 'new') return { at: 'unit-new' };
      if (id === '') return { at: 'units' };
      if (more === 'edit') return { at: 'unit-edit', unit: id };
      if (more === 'trends' || more === 'weights' || more === 'compare') return { at: more, unit: id };
      return { at: 'unit', unit: id };
    case 'start': {
      const kind = KINDS.find((known) => known === more);
      return id !== '' && kind ? { at: 'start', unit: id, kind } : { at: 'home' };
    }
    case 'run':
    case 'round':
    case 'report':
      return id === '' ? { at: 'home' } : { at: place, round: id };
    default:
      return { at: 'home' };
  }
}

export function hashOf(route: Route): string {
  switch (route.at) {
    case 'home':
      return '#/';
    case 'unit-new':
      return '#/unit/new';
    case 'unit-edit':
      return `#/unit/${encodeURIComponent(route.unit)}/edit`;
    case 'unit':
      return `#/unit/${encodeURIComponent(route.unit)}`;
    case 'trends':
    case 'weights':
    case 'compare':
      return `#/unit/${encodeURIComponent(route.unit)}/${route.at}`;
    case 'start':
      return `#/start/${encodeURIComponent(route.unit)}/${route.kind}`;
    case 'run':
    case 'round':
    case 'report':
      return `#/${route.at}/${encodeURIComponent(route.round)}`;
    default:
      return `#/${route.at}`;
  }
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return '';
  }
}
