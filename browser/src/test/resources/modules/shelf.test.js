import { labels, Shelf, shown, UNLABELLED } from '/state/shelf.js';
import { same, test } from './statements.js';

/**
 * @param {string} name
 * @param {Partial<import('/state/shelf.js').Listed>} [more]
 * @returns {import('/state/shelf.js').Listed}
 */
const kept = (name, more) => ({ id: name.toLowerCase(), name, note: '', revision: '1', tags: [], phrase: '', tempo_cycles_per_min: 60, ...more });

const moth = kept('Moth 10', { tags: ['fire', 'duo'], phrase: 'isolation vs triquetra', tempo_cycles_per_min: 40, changed: '2026-01-02T00:00:00Z' });
const second = kept('moth 9', { tags: ['duo'], tempo_cycles_per_min: 90, changed: '2026-01-03T00:00:00Z' });
const clover = kept('Clôver', { phrase: 'cat-eye vs triquetra', changed: '2026-01-01T00:00:00Z' });
const all = [moth, second, clover];
const names = (/** @type {Parameters<typeof shown>[1]} */ how) => shown(all, how).map((g) => g.patterns.map((p) => p.name));

test('every word that is looked for has to stand in name, phrase or labels', () => {
  same(names({ find: 'triquetra' }), [['Clôver', 'Moth 10']]);
  same(names({ find: 'TRIQ duo' }), [['Moth 10']]);
  same(names({ find: 'fire cat-eye' }), [[]]);
});

test('an accent that is not typed is found all the same', () => same(names({ find: 'clover' }), [['Clôver']]));

test('by name, nine stands before ten', () => same(names({}), [['Clôver', 'moth 9', 'Moth 10']]));

test('last changed is first', () => same(names({ order: 'changed' }), [['moth 9', 'Moth 10', 'Clôver']]));

test('slowest first is fastest last', () => {
  same(names({ order: 'slow' }), [['Moth 10', 'Clôver', 'moth 9']]);
  same(names({ order: 'fast' }), [['moth 9', 'Clôver', 'Moth 10']]);
});

test('a pattern of two labels stands in both groups, one of none in the last', () => {
  same(
    shown(all, { grouped: true }).map((g) => [g.label, ...g.patterns.map((p) => p.name)]),
    [['duo', 'moth 9', 'Moth 10'], ['fire', 'Moth 10'], [UNLABELLED, 'Clôver']],
  );
});

test('the shelf itself keeps its order while it is shown in another', () => {
  shown(all, { order: 'fast' });
  same(all, [moth, second, clover]);
});

test('labels are typed with commas between them, and each counts once', () => same(labels(' fire, two bells,,fire '), ['fire', 'two bells']));

test('a name is taken whatever the case of its letters, but not by the pattern itself', () => {
  const shelf = new Shelf();
  shelf.patterns = all;
  same(shelf.called(' MOTH 9 ')?.name, 'moth 9');
  same(shelf.called('clover')?.name, 'Clôver');
  same(shelf.called('moth 9', 'moth 9'), null);
  same(shelf.called('moth'), null);
});

test('a free name is the name itself, or the first number that is free', () => {
  const shelf = new Shelf();
  shelf.patterns = [kept('Moth'), kept('moth 2')];
  same(shelf.freeName('Moth'), 'Moth 3');
  same(shelf.freeName('Clover'), 'Clover');
});

test('an id is spelt with plain letters, and free among patterns, motions and files that cannot be read', () => {
  const shelf = new Shelf();
  shelf.patterns = [kept('moth')];
  shelf.motions = [{ id: 'moth-2', name: 'm', note: '', revision: '', tags: [] }];
  shelf.notListed = [{ file: 'moth-3.json', why: 'is torn' }];
  same(shelf.freeId('Moth'), 'moth-4');
  same(shelf.freeId('  Ring & bell!  '), 'ring-bell');
  same(shelf.freeId('火'), 'pattern');
});
