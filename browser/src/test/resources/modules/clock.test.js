import { Clock, SPEEDS } from '/state/clock.js';
import { near, same, sure, test } from './statements.js';

test('the moment is a share of the cycle, whichever way round it is asked for', () => {
  const clock = new Clock();
  clock.seek(1.25);
  near(clock.phase, 0.25);
  clock.seek(-0.25);
  near(clock.phase, 0.75);
});

test('another tempo leaves the moment where it is', () => {
  const clock = new Clock();
  clock.seek(0.4);
  clock.period = 3;
  near(clock.phase, 0.4);
});

test('slower and faster go through the speeds and stop at either end', () => {
  const clock = new Clock();
  sure(clock.slower(1), 'slower');
  same(clock.speed, 0.25);
  sure(clock.slower(1), 'slowest');
  same(clock.slower(1), false);
  same(clock.speed, SPEEDS[0]);
  while (clock.slower(-1));
  same(clock.speed, 1);
});

test('what plays once and has come to its end begins anew when it is played again', () => {
  const clock = new Clock();
  clock.once = true;
  clock.seek(0.99995);
  clock.play(true);
  same(clock.phase, 0);
  clock.play(false);
});

test('playing goes on by real time, its speed and the length of the cycle', async () => {
  const clock = new Clock();
  clock.period = 2;
  clock.speed = 0.5;
  let from = 0;
  let to = 0;
  await new Promise((done) => {
    clock.addEventListener('tick', () => {
      from ||= performance.now();
      to = performance.now();
      if (clock.phase > 0.02) done(null);
    });
    clock.play(true);
  });
  clock.play(false);
  near(clock.phase, ((to - from) / 1000) * 0.25, 0.02);
});
