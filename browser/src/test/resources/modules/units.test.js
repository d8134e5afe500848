import { bare, cm, degrees, gap, shown, typeset, withUnit } from '/parts/units.js';
import { same, test } from './statements.js';

test('lengths are read in centimetres, with a minus that is one', () => {
  same(cm(0.304), '30.4\u202fcm');
  same(cm(-0.5, 0), '\u221250\u202fcm');
});

test('a gap below ten centimetres is told to the millimetre, a larger one is not', () => {
  same(gap(0.0712), '7.1\u202fcm');
  same(gap(0.304), '30\u202fcm');
  same(gap(0.0996), '10\u202fcm');
});

test('an angle has its sign beside the number and nothing between', () => same(degrees(-12.34), '\u221212.3°'));

test('a size goes into its field in the unit people type, and with the same number beside its unit', () => {
  const tether = { unit: 'm', value: 0.605 };
  same(shown(tether).unit, 'cm');
  same(bare(tether, tether.value), '60.5');
  same(withUnit(tether), '60.5\u202fcm');
  same(withUnit({ unit: 'deg', value: 90 }), '90°');
  same(withUnit({ unit: 'cycles', value: 0.25 }), '0.25\u202fof a cycle');
});

test('nothing in a table is a dash', () => {
  same(typeset(''), '–');
  same(typeset('-3 cm'), '\u22123\u202fcm');
});
