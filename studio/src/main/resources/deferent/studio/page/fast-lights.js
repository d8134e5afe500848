// Fast lights ask once before they play, wherever they come from.

import { FLASHES } from './state/care.js';

export class FastLights {
  /** @param {import('./main.js').Desk} desk */
  constructor(desk) {
    this.desk = desk;
    this.known = localStorage.getItem('deferent.care') === 'known';
    desk.clock.addEventListener('state', () => this.mind());
  }

  /** Plays; asks first where the lights are fast and nobody was told of it. */
  async play() {
    const { clock, session, notices } = this.desk;
    if (!this.known && this.fast()) {
      const answer = await notices.care();
      if (answer === 'stay') return;
      this.know();
      if (answer === 'slow') while (this.fast() && clock.slower(1)) session.dispatchEvent(new Event('state'));
    }
    clock.play(true);
  }

  /** Lights that have become fast while they play stop first and ask. */
  mind() {
    const { clock } = this.desk;
    if (this.known || !clock.playing || !this.fast()) return;
    clock.play(false);
    this.play();
  }

  fast() {
    const { clock, session } = this.desk;
    return session.answer !== null && session.scene.turnsPerSecond() * clock.speed > FLASHES;
  }

  /** Whoever was told of fast lights is not told again. */
  know() {
    this.known = true;
    localStorage.setItem('deferent.care', 'known');
  }
}
