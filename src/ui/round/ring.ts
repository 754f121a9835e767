/** The order in which a clicker steps through the buttons on the screen: `data-ring`, lowest first. */

export function ringOf(root: ParentNode): readonly HTMLElement[] {
  return [...root.querySelectorAll<HTMLElement>('[data-ring]')]
    .map((element, index) => ({ element, index, order: Number(element.dataset.ring) }))
    .sort((a, b) => a.order - b.order || a.index - b.index)
    .map(({ element }) => element);
}

/** The button that a press would hit: the one with the focus, else the first. */
export function markedIn(ring: readonly HTMLElement[], focused: Element | null): HTMLElement | null {
  return ring.find((element) => element === focused) ?? ring[0] ?? null;
}

/** The button after or before the marked one, round and round. */
export function movedMark(ring: readonly HTMLElement[], focused: Element | null, by: 1 | -1): HTMLElement | null {
  if (ring.length === 0) return null;
  const at = Math.max(0, focused instanceof HTMLElement ? ring.indexOf(focused) : -1);
  return ring[(at + by + ring.length) % ring.length] ?? null;
}
