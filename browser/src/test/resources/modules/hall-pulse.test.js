import { Pulse } from '/hall/pulse.js';
import { near, same, test } from './statements.js';

function thirds() {
  const pulse = new Pulse();
  pulse.beats = ['1', '2', '3'].map((said, i) => ({ share: i / 3, said }));
  pulse.rate = 2;
  pulse.begin(10, 0);
  return pulse;
}

test('each count falls at its share of the cycle, cycle after cycle', () => {
  const strokes = thirds().strokes(10, 11);
  same(strokes.map(({ said }) => said), ['1', '2', '3', '1', '2', '3']);
  strokes.forEach(({ time }, i) => near(time, 10 + i / 6));
  same(strokes.map(({ first }) => first), [true, false, false, true, false, false]);
});

test('looked at in pieces, no count is left out and none comes twice', () => {
  const pulse = thirds();
  const said = [];
  for (let i = 0; i < 396; i++) said.push(...pulse.strokes(10 + i * 0.025, 10 + (i + 1) * 0.025));
  same(said.length, 60);
  said.forEach(({ time }, i) => near(time, 10 + i / 6, 1e-8));
});

test('before it begins the moment stands where it will begin, and nothing falls', () => {
  const pulse = thirds();
  near(pulse.share(9), 0);
  same(pulse.strokes(9, 10), []);
  near(pulse.share(10.25), 0.5);
});

test('a loop comes round before its end, and its own counts alone fall', () => {
  const pulse = thirds();
  pulse.from = 1 / 3;
  pulse.to = 2 / 3;
  pulse.begin(20, 1 / 3);
  same(pulse.strokes(20, 20.6).map(({ said }) => said), ['2', '2', '2', '2']);
  near(pulse.share(20.25), 1 / 3 + 0.5 - 1 / 3);
  for (let t = 20; t < 21; t += 0.013) {
    const share = pulse.share(t);
    same(share >= 1 / 3 - 1e-6 && share < 2 / 3, true);
  }
});

test('what begins in the midst of the cycle counts on from there', () => {
  const pulse = thirds();
  pulse.begin(30, 0.5);
  const [first] = pulse.strokes(30, 31);
  same(first.said, '3');
  near(first.time, 30 + (2 / 3 - 0.5) / 2);
  same(pulse.said(0.5), '2');
});
