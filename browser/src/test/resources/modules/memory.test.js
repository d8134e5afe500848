import { keep, recalled } from '/state/memory.js';
import { same, test } from './statements.js';

const step = (/** @type {number} */ n) => ({ n, pattern: { n }, said: String(n), merge: null, shelved: null, hash: '#' + n });
const kept = () => ({
  steps: { past: [step(1), step(2)], stands: step(3), future: [step(5), step(4)] },
  phase: 0.3, speed: 0.5, playing: false, tab: 'shelf', view: { view: 'audience', turn: 0, lift: 0, distance: 5 },
});
const ns = (/** @type {{ n: number }[] | undefined} */ steps) => steps?.map((s) => s.n);

test('a reload of the same address goes on where it was left', () => {
  keep(kept());
  const back = recalled('#3');
  same(back, kept());
});

test('the browser’s back after a reload goes on at the step of that address, with the later ones to go on to', () => {
  keep(kept());
  const back = recalled('#1');
  same(back?.steps.stands?.n, 1);
  same(ns(back?.steps.past), []);
  same(ns(back?.steps.future), [5, 4, 3, 2]);
  const on = recalled('#4');
  same(ns(on?.steps.past), [1, 2, 3]);
  same(ns(on?.steps.future), [5]);
});

test('another address knows nothing of what was kept', () => {
  keep(kept());
  same(recalled('#9'), null);
  sessionStorage.clear();
  same(recalled('#3'), null);
});

test('steps too long for a tab’s memory are kept as far as they go', () => {
  const long = kept();
  long.steps.past = Array.from({ length: 40 }, (_, i) => ({ ...step(i - 40), said: 'x'.repeat(100_000) }));
  keep(long);
  same(recalled('#3')?.steps.past.length, 10);
});
