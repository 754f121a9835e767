/** Measures the page that is shown: text contrast, target sizes and gaps. Runs in the browser. */

export interface Measured {
  /** Breaches, each a sentence. */
  readonly breaches: readonly string[];
  readonly lowestContrast: number;
  readonly smallestTarget: number;
}

/**
 * Contrast by WCAG 2.2 relative luminance over the nearest opaque ground.
 * @param isStrict the round: 7:1, 96 px targets, 12 px between them, 32 px question; else 4.5:1 and 24 px
 */
export function measurePage(isStrict: boolean): Measured {
  const channels = (color: string) => (color.match(/[\d.]+/g) ?? []).map(Number);
  const luminance = ([r = 0, g = 0, b = 0]: number[]) => {
    const linear = [r, g, b].map((channel) => {
      const value = channel / 255;
      return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * (linear[0] ?? 0) + 0.7152 * (linear[1] ?? 0) + 0.0722 * (linear[2] ?? 0);
  };
  const groundOf = (element: Element): number[] => {
    for (let at: Element | null = element; at; at = at.parentElement) {
      const ground = channels(getComputedStyle(at).backgroundColor);
      if (ground[3] === undefined || ground[3] === 1) return ground;
    }
    return [255, 255, 255];
  };
  /** What is cut off by something that scrolls cannot be hit. */
  const visiblePart = (element: Element): DOMRect => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const seen = { left, right, top, bottom };
    for (let at = element.parentElement; at; at = at.parentElement) {
      if (getComputedStyle(at).overflowY === 'visible') continue;
      const clip = at.getBoundingClientRect();
      seen.top = Math.max(seen.top, clip.top);
      seen.bottom = Math.min(seen.bottom, clip.bottom);
    }
    return new DOMRect(seen.left, seen.top, seen.right - seen.left, Math.max(0, seen.bottom - seen.top));
  };
  const breaches: string[] = [];
  let lowestContrast = Number.POSITIVE_INFINITY;
  let smallestTarget = Number.POSITIVE_INFINITY;
  const minimum = isStrict ? 7 : 4.5;
  for (const element of document.querySelectorAll('body *')) {
    const own = [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim());
    if (!own || element.closest('.unseen')) continue;
    const box = element.getBoundingClientRect();
    if (box.width === 0) continue;
    const [a, b] = [luminance(channels(getComputedStyle(element).color)), luminance(groundOf(element))];
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    lowestContrast = Math.min(lowestContrast, ratio);
    if (ratio < minimum) breaches.push(`contrast ${ratio.toFixed(1)} of "${element.textContent?.slice(0, 30)}"`);
  }
  if (document.documentElement.scrollWidth > document.documentElement.clientWidth + 1) breaches.push('scrolls sideways');
  const targets = [...document.querySelectorAll('button, label.slab, a.slab')].map((target) => ({
    box: visiblePart(target),
    name: target.textContent?.slice(0, 24) ?? '',
    element: target,
  }));
  const least = isStrict ? 96 : 24;
  for (const { name, element } of targets) {
    const whole = element.getBoundingClientRect();
    const side = Math.min(whole.width, whole.height);
    smallestTarget = Math.min(smallestTarget, side);
    if (side < least - 0.5) breaches.push(`target "${name}" is ${whole.width.toFixed(0)} × ${whole.height.toFixed(0)}`);
    if (element.scrollWidth > element.clientWidth + 1) breaches.push(`"${name}" does not fit its target`);
  }
  if (isStrict) {
    for (const [index, { box, name }] of targets.entries()) {
      for (const other of targets.slice(index + 1)) {
        if (box.height === 0 || other.box.height === 0) continue;
        const dx = Math.max(other.box.left - box.right, box.left - other.box.right);
        const dy = Math.max(other.box.top - box.bottom, box.top - other.box.bottom);
        const gap = Math.max(dx, dy);
        if (gap < 11.5) breaches.push(`"${name}" and "${other.name}" are ${gap.toFixed(0)} px apart`);
      }
    }
    const title = document.querySelector('h1');
    if (title && Number.parseFloat(getComputedStyle(title).fontSize) < 32) breaches.push('the question is under 32 px');
  }
  return { breaches, lowestContrast, smallestTarget };
}
