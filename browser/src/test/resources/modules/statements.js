// What a test of a module of the page needs: statements with a name, and what they hold something to. Our own, since no kept library of
// the kind comes as a package of the build's repository.

/** @type {{ says: string, holds: () => void | Promise<void> }[]} */
export const statements = [];

/**
 * @param {string} says
 * @param {() => void | Promise<void>} holds
 */
export function test(says, holds) {
  statements.push({ says, holds });
}

/**
 * The very same, all parts of lists and objects alike.
 *
 * @param {unknown} is
 * @param {unknown} wanted
 */
export function same(is, wanted) {
  const [a, b] = [said(is), said(wanted)];
  if (a !== b) throw new Error(`is ${a}, not ${b}`);
}

/**
 * @param {number} is
 * @param {number} wanted
 */
export function near(is, wanted, within = 1e-9) {
  if (!(Math.abs(is - wanted) <= within)) throw new Error(`is ${is}, not within ${within} of ${wanted}`);
}

/**
 * @param {unknown} is
 * @param {string} what
 */
export function sure(is, what) {
  if (is !== true) throw new Error(`${what}: is ${said(is)}`);
}

// undefined is told from null, and a number that is none from both.
/** @param {unknown} value */
function said(value) {
  return JSON.stringify(value, (_, v) => (v === undefined ? '(undefined)' : typeof v === 'number' && !Number.isFinite(v) ? `(${v})` : v)) ?? '(undefined)';
}
