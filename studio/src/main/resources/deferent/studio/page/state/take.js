// What is taken away: which patterns, as which file, with which wishes; its preview, and the writing of it.

import { post } from './live.js';

const REST = 120; // milliseconds of quiet before a preview is asked for
const UNREACHED = { what: 'does not answer', where: 'the studio', right: 'see that it still runs, then ask again' };

export class TakeAway extends EventTarget {
  /** @param {import('../main.js').Desk} desk */
  constructor(desk) {
    super();
    this.desk = desk;
    this.panel = Math.random().toString(36).slice(2);
    this.families = [];
    this.endings = [];
    this.mode = 'file'; // or 'photo'
    this.what = 'this'; // or 'shelf', or 'route'
    this.as = 'png';
    this.said = {}; // wishes by key, as the user said them
    this.stage = {}; // wishes as the stage stands
    this.led = { hertz: '', duty: '50', shutter: '' };
    this.photo = null;
    this.preview = null;
    this.error = null; // of the preview
    this.failed = null; // of the writing
    this.looking = false;
    this.writing = null; // { share, told }
    this.done = null;
    this.isOpen = false;
    this.motion = matchMedia('(prefers-reduced-motion: reduce)');
  }

  /** Opens on what the stage shows now. */
  async open() {
    this.isOpen = true;
    if (this.what === 'route' && !this.route) this.what = 'this';
    await this.#stand();
    this.look(0);
  }

  // As the stage stands, and with what may be written.
  async #stand() {
    const { session, stage, clock } = this.desk;
    const c = stage.camera;
    const phase = session.aside ? 0 : clock.phase;
    this.stage = {
      view: c.view,
      turn: String(tenth((c.turn * c.flip * 180) / Math.PI)),
      lift: String(tenth((c.lift * 180) / Math.PI)),
      dark: document.documentElement.dataset.theme === 'dark' ? 'yes' : 'no',
      cord: session.show,
      at: String(Number(phase.toFixed(3))),
    };
    this.#forget();
    this.#tell();
    if (!this.endings.length) {
      try {
        const reply = await fetch('api/endings');
        const answer = await reply.json();
        this.families = answer.families;
        this.endings = answer.endings;
      } catch {
        this.error = UNREACHED;
      }
    }
  }

  /** What is being written goes on. */
  close() {
    this.isOpen = false;
    clearTimeout(this.resting);
    if (this.asking) this.asking.abort();
  }

  /** Whether somebody looks at what becomes of the writing. */
  get seen() {
    return this.isOpen || this.desk.sharing.dialog.open;
  }

  get ending() {
    return this.endings.find((e) => e.key === this.as);
  }

  /** The route that was last found on the map, as names. */
  get route() {
    const { map } = this.desk;
    return map.route && map.route.places && map.route.places.length > 1 ? map.route.places : null;
  }

  get many() {
    return this.what !== 'this';
  }

  show(mode) {
    this.mode = mode;
    this.#forget();
    this.look(0);
  }

  choose(what) {
    this.what = what;
    if (this.many) this.as = this.endings.find((e) => e.family === 'print').key;
    this.look(0);
  }

  take(as) {
    this.as = as;
    this.look(0);
  }

  /**
   * Writes this pattern as a file with wishes that fit where it goes; what was wished before is forgotten.
   *
   * @param {string} as
   * @param {Record<string, string>} wishes
   */
  async send(as, wishes) {
    if (this.writing) return;
    this.mode = 'file';
    this.what = 'this';
    this.as = as;
    this.said = { ...wishes };
    await this.#stand();
    if (this.error) {
      this.failed = this.error;
      this.#tell();
    } else {
      await this.write();
    }
  }

  /** Says a wish, or unsays it. */
  wish(key, value) {
    this.said = { ...this.said, [key]: value };
    const offer = this.ending.wishes.find((w) => w.key === key);
    if (offer && value !== '') {
      for (const w of this.ending.wishes) {
        if (w.instead_of === key || offer.instead_of === w.key) delete this.said[w.key];
      }
    }
    this.look();
  }

  blink(key, value) {
    this.led = { ...this.led, [key]: value };
    this.look();
  }

  /** What may be wished of the ending in its form. */
  get offers() {
    if (!this.ending) return [];
    const form = this.value(this.ending.wishes.find((w) => w.key === 'form'));
    return this.ending.wishes.filter((w) => !w.forms.length || w.forms.includes(form));
  }

  choices(offer) {
    return this.many && offer.many.length ? offer.choices.filter((c) => offer.many.includes(c.value)) : offer.choices;
  }

  /** What holds for a wish: as said, as the stage stands, or as usual. */
  value(offer) {
    if (!offer) return '';
    const choices = this.choices(offer);
    const fits = (value) => value !== undefined && (offer.kind !== 'word' || offer.open || choices.some((c) => c.value === value));
    const said = this.said[offer.key];
    if (fits(said)) return said;
    const stands = this.#stands(offer.key);
    if (fits(stands)) return stands;
    return fits(offer.unsaid) || !choices.length ? offer.unsaid : choices[0].value;
  }

  #stands(key) {
    const paper = this.ending.family === 'print';
    if (key === 'dark' && paper) return undefined;
    if (key === 'at' && !['moment', 'exposure'].includes(this.value(this.ending.wishes.find((w) => w.key === 'form')))) return undefined;
    return this.stage[key];
  }

  wishes() {
    const wishes = {};
    for (const offer of this.offers) {
      const value = this.value(offer);
      if (value !== '' && value !== offer.unsaid) wishes[offer.key] = value;
    }
    return wishes;
  }

  get exposure() {
    const { hertz, duty, shutter } = this.led;
    return {
      form: 'exposure',
      dark: 'yes',
      view: this.stage.view,
      ...(hertz && { led: hertz + ',' + (duty || '50') + '%' }),
      ...(shutter && { shutter }),
    };
  }

  /** @returns {Promise<Protocol.Said<Protocol.Take>>} */
  async #body() {
    const { session, shelf } = this.desk;
    if (this.mode === 'photo') return { as: 'png', wishes: { ...this.exposure, caption: 'no' }, pattern: session.pattern };
    const { as } = this;
    const wishes = this.wishes();
    if (this.what === 'shelf') return { as, wishes, shelf: true };
    if (this.what === 'route') {
      const all = await Promise.all(this.route.map((id) => shelf.load(id)));
      const patterns = all.map((a) => a.pattern);
      return { as, wishes, patterns, title: patterns[0].name + ' to ' + patterns[patterns.length - 1].name, route: true };
    }
    return { as, wishes, pattern: session.pattern };
  }

  /** Asks for a preview once things rest; the newest wins. */
  look(rest = REST) {
    if (!this.isOpen) return;
    this.failed = null;
    this.done = null;
    this.looking = true;
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.#look(), rest);
    this.#tell();
  }

  async #look() {
    if (this.asking) this.asking.abort();
    const asking = (this.asking = new AbortController());
    if (!this.ending || !this.desk.session.pattern) return;
    const calm = this.motion.matches ? 'always' : this.desk.lights.known ? 'never' : 'fast';
    try {
      if (this.mode === 'photo') this.#photo(asking);
      const body = { ...(await this.#body()), panel: this.panel, calm };
      const reply = await fetch('api/preview', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(body),
        signal: asking.signal,
      });
      const answer = await reply.json();
      if (this.asking !== asking || answer.dropped) return;
      this.error = answer.error || null;
      if (!answer.error) this.preview = { ...answer, as: this.as, mode: this.mode };
    } catch (problem) {
      if (this.asking !== asking || problem.name === 'AbortError') return;
      this.error = problem.error || problem.what ? problem.error || problem : UNREACHED;
    }
    this.looking = false;
    this.#tell();
  }

  async #photo(asking) {
    const { hertz, duty, shutter } = this.led;
    const photo = await post({
      ask: 'photo',
      pattern: this.desk.session.pattern,
      led_hz: hertz ? Number(hertz) : null,
      duty: hertz ? Number(duty || 50) / 100 : null,
      shutter_s: shutter ? number(shutter) : null,
    }).catch(() => ({ error: UNREACHED }));
    if (this.asking !== asking) return;
    if (!photo.error) this.photo = photo;
    this.photoError = photo.error || null;
    this.#tell();
  }

  /** On to a file of the exposure that is previewed. */
  keepExposure() {
    const { form, dark, led = '', shutter = '' } = this.exposure;
    this.what = 'this';
    this.as = 'png';
    this.said = { ...this.said, form, dark, led, shutter };
    this.show('file');
  }

  async write() {
    if (this.writing || !this.ending) return;
    this.done = null;
    this.failed = null;
    this.writing = { share: 0, told: '' };
    const writing = this.writing;
    this.#tell();
    let body;
    try {
      body = await this.#body();
    } catch (problem) {
      this.writing = null;
      this.failed = problem.error || UNREACHED;
      this.#tell();
      return;
    }
    this.desk.session.live.stream({ ask: 'take', ...body }, (part) => this.writing === writing && this.#heard(part));
  }

  #heard(part) {
    if (part.waiting) this.writing.told = part.told;
    if (part.progress) Object.assign(this.writing, part.progress);
    if (part.error) {
      this.failed = part.error;
      if (!this.seen) this.desk.complain(part.error);
    }
    if (part.done || part.dropped || part.error) this.writing = null;
    if (part.file) {
      this.done = part;
      fetched(part);
      if (!this.seen) this.desk.notices.say('Saved as ' + part.name);
    } else if (part.stopped) {
      this.done = { stopped: true };
    }
    this.#tell();
  }

  stop() {
    if (this.writing) this.desk.session.live.stop('take');
  }

  #forget() {
    this.done = null;
    this.failed = null;
    this.error = null;
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}

/** Starts the download of a file that was written. */
export function fetched({ file, name }) {
  const link = document.createElement('a');
  link.href = file;
  link.download = name;
  link.click();
}

const tenth = (degrees) => Math.round(degrees * 10) / 10 + 0;

/** "1/2" and "0.5" alike. */
function number(text) {
  const [top, bottom] = text.split('/').map(Number);
  return bottom ? top / bottom : top;
}
