// The look for students, one switch: the figure large, the pattern's name, counts to hear, and no measured number anywhere.

const KEPT = 'deferent.lesson';

export class LessonLook {
  /** @param {import('./main.js').Desk} desk */
  constructor(desk) {
    this.desk = desk;
    this.on = false;
    const kept = JSON.parse(localStorage.getItem(KEPT) || '{}');
    this.mirrored = kept.mirrored ?? true;
    /** How it is counted. @type {'aloud' | 'click' | 'not'} */
    this.counted = kept.counted ?? 'aloud';
  }

  /** Into the look and out of it; what was seen and heard before comes back. */
  turn(on = !this.on) {
    if (on === this.on) return;
    const { stage, pulse, side, strip } = this.desk;
    if (on) {
      this.before = { view: stage.camera.view, always: stage.always, count: pulse.on, aloud: pulse.aloud, drawer: side.open, strip: !strip.shut };
      side.draw(false);
      strip.turn(true);
      stage.ask(true);
    }
    this.on = on;
    document.body.classList.toggle('lesson', on);
    const { before } = this;
    if (on) {
      this.#take();
    } else if (before) {
      stage.see(before.view);
      stage.ask(before.always);
      pulse.aloud = before.aloud;
      pulse.turn(before.count);
      side.draw(before.drawer);
      strip.turn(!before.strip);
    }
    this.#told();
    stage.frame(true);
  }

  /** @param {boolean} mirrored */
  mirror(mirrored) {
    this.mirrored = mirrored;
    this.#take();
    this.#told();
  }

  /** @param {'aloud' | 'click' | 'not'} counted */
  count(counted) {
    this.counted = counted;
    this.#take();
    this.#told();
  }

  /** What a student calls it: the phrase up to its sizes. */
  get name() {
    const { answer } = this.desk.session;
    return answer ? (answer.phrase || answer.name).split(',')[0] : '';
  }

  #take() {
    const { stage, pulse } = this.desk;
    stage.see(this.mirrored ? 'mirror' : 'audience');
    pulse.aloud = this.counted === 'aloud';
    pulse.turn(this.counted !== 'not');
  }

  #told() {
    localStorage.setItem(KEPT, JSON.stringify({ mirrored: this.mirrored, counted: this.counted }));
    this.desk.session.dispatchEvent(new Event('state'));
    this.desk.clock.dispatchEvent(new Event('tick'));
  }
}
