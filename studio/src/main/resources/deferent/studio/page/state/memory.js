// What a reload must not lose: the steps, the moment, the view, what was open beside the stage. Kept by this tab alone.

const KEY = 'deferent.page';
const ENTRY = 'deferent.entry'; // the step of the history's entry that was loaded anew, as the way in found it
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
 * What was kept of the page, going on at the step whose entry of the browser's history was loaded anew, or else at the one that this
 * address shows; null where there is neither. An address that is written while a reload begins is not that of the reload.
 *
 * @param {string} hash
 * @returns {Kept | null}
 */
export function recalled(hash) {
  let kept;
  let n;
  try {
    kept = JSON.parse(sessionStorage.getItem(KEY) || 'null');
    n = Number(sessionStorage.getItem(ENTRY));
    sessionStorage.removeItem(ENTRY);
  } catch {
    return null;
  }
  if (!kept) return null;
  return steppedTo(kept.steps, (step) => step.n === n) || steppedTo(kept.steps, (step) => step.hash === hash) ? kept : null;
}

/**
 * @param {Kept['steps']} steps
 * @param {(step: import('./steps.js').Step) => boolean} is
 */
function steppedTo(steps, is) {
  const { past, stands, future } = steps;
  if (!stands) return false;
  if (is(stands)) return true;
  // In the order in which they came: the past, what stands, and what was gone back over, which lies the other way round.
  const all = [...past, stands, ...future.toReversed()];
  const i = all.findLastIndex(is);
  if (i < 0) return false;
  Object.assign(steps, { past: all.slice(0, i), stands: all[i], future: all.slice(i + 1).reverse() });
  return true;
}
