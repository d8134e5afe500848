import { Camera } from '/stage/camera.js';
import { near, sure, test } from './statements.js';

/** @param {(camera: Camera) => void} [placed] */
function camera(placed) {
  const c = new Camera();
  c.resize(800, 600);
  placed?.(c);
  return c;
}

/**
 * @param {Camera} c
 * @param {[number, number, number]} at
 */
function seen(c, at) {
  const out = [0, 0, 0];
  sure(c.project(...at, out), 'in front of the onlooker');
  return out;
}

test('to the audience the performer’s left is on the right, in a mirror on the left', () => {
  sure(seen(camera(), [0.5, 0, 0])[0] > 400, 'right of the middle');
  sure(seen(camera((c) => c.see('mirror')), [0.5, 0, 0])[0] < 400, 'left of the middle');
});

test('what is higher stands higher on the screen', () => {
  const c = camera();
  sure(seen(c, [0, 0.5, 0])[1] < seen(c, [0, -0.5, 0])[1], 'above');
});

test('what is nearer to the audience is larger', () => {
  const c = camera();
  const wide = (/** @type {number} */ z) => seen(c, [0.3, 0, z])[0] - seen(c, [-0.3, 0, z])[0];
  sure(wide(0.8) > wide(-0.8), 'larger');
});

test('a ray through where a point is seen leads to the point', () => {
  const c = camera((v) => v.orbit(0.4, 0.3));
  const at = /** @type {[number, number, number]} */ ([0.3, 0.2, 0.1]);
  const [x, y] = seen(c, at);
  c.meet(x, y, at, [0, 0, 1]).forEach((/** @type {number} */ v, /** @type {number} */ i) => near(v, at[i], 1e-9));
});

test('a figure is framed within the margins', () => {
  const c = camera((v) => v.frame([-1, -1.2, -0.3], [1, 0.9, 0.3], { above: 80, right: 300, below: 60, left: 10 }));
  for (const x of [-1, 1]) {
    for (const y of [-1.2, 0.9]) {
      const [px, py] = seen(c, [x, y, 0.3]);
      sure(px >= 9 && px <= 501 && py >= 79 && py <= 541, `corner at ${px}, ${py}`);
    }
  }
});

test('no zoom goes through the performer or out of the room', () => {
  const c = camera();
  for (let i = 0; i < 50; i++) c.zoom(0.8);
  near(c.distance, 1.2);
  for (let i = 0; i < 50; i++) c.zoom(1.3);
  near(c.distance, 14);
});
