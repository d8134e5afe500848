// The colours that a figure is drawn in, as the style sheet has them where it stands.

const NAMES = { ground: '--stage-ground', plain: '--stage-plain', body: '--stage-body', outline: '--stage-outline', left: '--ink-left', right: '--ink-right', link: '--ink-link' };

/**
 * Each as red, green and blue from 0 to 1; and whether light glows there, 1 or 0.
 *
 * @param {Element} element
 */
export function inks(element) {
  const style = getComputedStyle(element);
  /** @type {Record<string, number[]>} */
  const ink = {};
  for (const [name, variable] of Object.entries(NAMES)) {
    const hex = style.getPropertyValue(variable).trim();
    ink[name] = [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16) / 255);
  }
  return { ink, glow: style.getPropertyValue('--stage-glow').trim() === '1' ? 1 : 0 };
}
