import { Steps } from '/state/steps.js';
import { same, sure, test } from './statements.js';

const pattern = (/** @type {string} */ of) => ({ pattern: { of }, said: of, merge: null, shelved: null });
const typed = (/** @type {string} */ of, rests = 0) => ({ ...pattern(of), merge: 'say ' + rests });
const names = (/** @type {import('/state/steps.js').Step[]} */ steps) => steps.map((s) => s.said);

test('going back leads to the pattern before, and on again to the one after', () => {
  const steps = new Steps();
  for (const of of ['isolation', 'triquetra', 'cat-eye']) steps.take(pattern(of));
  same(steps.back()?.said, 'triquetra');
  same(steps.back()?.said, 'isolation');
  same(steps.back(), null);
  same(steps.on()?.said, 'triquetra');
  same(names(steps.future), ['cat-eye']);
});

test('a phrase typed letter by letter is one step', () => {
  const steps = new Steps();
  steps.take(pattern('isolation'));
  for (const of of ['isolation vs c', 'isolation vs ca', 'isolation vs cap']) steps.take(typed(of));
  same(names(steps.past), ['isolation']);
  same(steps.stands?.said, 'isolation vs cap');
});

test('after a rest the next letter begins a step of its own', () => {
  const steps = new Steps();
  steps.take(pattern('isolation'));
  steps.take(typed('extension'));
  steps.take(typed('cat-eye', 1));
  same(names(steps.past), ['isolation', 'extension']);
});

test('what changes nothing is no step, and what was gone back over is still there', () => {
  const steps = new Steps();
  steps.take(pattern('isolation'));
  steps.take(pattern('triquetra'));
  steps.back();
  steps.take(pattern('isolation'));
  same(names(steps.past), []);
  same(names(steps.future), ['triquetra']);
});

test('a change after going back forgets what was gone back over', () => {
  const steps = new Steps();
  steps.take(pattern('isolation'));
  steps.take(pattern('triquetra'));
  steps.back();
  steps.take(pattern('cat-eye'));
  same(names(steps.future), []);
  same(names(steps.past), ['isolation']);
});

test('a step is found by its number from either side, and one that is not known leaves all as it is', () => {
  const steps = new Steps();
  for (const of of ['a', 'b', 'c', 'd']) steps.take(pattern(of));
  const b = /** @type {number} */ (steps.past[1].n);
  same(steps.go(b)?.said, 'b');
  same(names(steps.past), ['a']);
  same(names(steps.future), ['d', 'c']);
  same(steps.go(steps.future[0].n)?.said, 'd');
  same(steps.go(-1), null);
  same(steps.stands?.said, 'd');
});

test('a step keeps its number while it is typed on', () => {
  const steps = new Steps();
  steps.take(typed('isolation v'));
  const n = steps.stands?.n;
  steps.take(typed('isolation vs cap'));
  same(steps.stands?.n, n);
});

test('two hundred steps are kept, the oldest is forgotten first', () => {
  const steps = new Steps();
  for (let i = 0; i <= 205; i++) steps.take(pattern(String(i)));
  same(steps.past.length, 200);
  same(steps.past[0].said, '5');
});

test('what was saved is saved in all steps, so that going back never saves over a revision long gone', () => {
  const steps = new Steps();
  const shelved = { id: 'moth', revision: '1', name: 'Moth', labels: [], content: '' };
  steps.take({ ...pattern('a'), shelved });
  steps.take({ ...pattern('b'), shelved });
  steps.shelve('moth', { ...shelved, revision: '2' });
  same(steps.back()?.shelved?.revision, '2');
  steps.shelve('moth', null);
  same(steps.on()?.shelved, null);
});

test('steps that are kept over a reload go on with numbers of their own', () => {
  const before = new Steps();
  before.take(pattern('a'));
  before.take(pattern('b'));
  const after = new Steps();
  after.restore(JSON.parse(JSON.stringify(before.kept())));
  after.take(pattern('c'));
  sure(new Set([...after.past, after.stands].map((s) => s?.n)).size === 3, 'three numbers');
  same(after.back()?.said, 'b');
});
