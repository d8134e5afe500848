// What a reload must not lose: the steps, the moment, the view, what was open beside the stage. Kept by this tab alone.

const KEY = 'deferent.page';
const MOST = 3_000_000; // characters; a tab may keep about five million

/**
 * @typedef {{ steps: ReturnType<import('./steps.js').Steps['kept']>, phase: number, speed: number, playing: boolean, tab: string,
 *   view: { view: string, turn: number, lift: number, distance: number } }} Kept
 */

/** @param {Kept} kept */
export function keep(kept) {
  let text = JSON.stringify(kept);
  if (text.length > MOST) text = JSON.stringify({ ...kept, steps: { ...kept.steps, past: kept.steps.past.slice(-10), future: [] } });
  try {
    sessionStorage.setItem(KEY, text);
  } catch {
    sessionStorage.removeItem(KEY);
  }
}

/**
 * What was kept of the page, going on at the step that this address shows; null where no step does.
 *
 * @param {string} hash
 * @returns {Kept | null}
 */
export function recalled(hash) {
  let kept;
  try {
    kept = JSON.parse(sessionStorage.getItem(KEY) || 'null');
  } catch {
    return null;
  }
  return kept && steppedTo(kept.steps, hash) ? kept : null;
}

/**
 * @param {Kept['steps']} steps
 * @param {string} hash
 */
function steppedTo(steps, hash) {
  const { past, stands, future } = steps;
  if (!stands) return false;
  if (stands.hash === hash) return true;
  // In the order in which they came: the past, what stands, and what was gone back over, which lies the other way round.
  const all = [...past, stands, ...future.toReversed()];
  const i = all.findLastIndex((step) => step.hash === hash);
  if (i < 0) return false;
  Object.assign(steps, { past: all.slice(0, i), stands: all[i], future: all.slice(i + 1).reverse() });
  return true;
}
