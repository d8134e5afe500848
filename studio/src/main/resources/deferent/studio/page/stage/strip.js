// One cycle from left to right, or what plays once instead. At the foot of the page a quiet line with its counts, on which one goes to
// a moment and sets the ends of a loop; pulled up, the strip over it: how far head and hand are apart, what each cord pulls, marks for
// beats, petals and stalls.

import uPlot from 'uplot';
import { length, seconds, signed, trimmed } from '../parts/units.js';

const LINE = 14; // pixels left free at both ends of the line
const PULL = 26; // pixels that a pull up or down goes before it opens or shuts the strip
const ROOM = 15; // pixels that a count takes on the line
const TIME = 36; // and a time
const NEAR = 0.04; // the least share of the cycle that the strip shows when it is drawn closer
const PAD = { left: 52, right: 14, top: 2, bottom: 22 };
const CALM = 100; // milliseconds between drawings while dragging
const MARKS = 22; // pixels for the marks of both hands
const CORDS = 32; // pixels for the pull of both cords
const LANES = MARKS + CORDS; // above the plot
const sign = (drawn) => `<svg viewBox="0 0 10 10" aria-hidden="true">${drawn}</svg>`;
const MARK_KEYS = {
  cycle: `<span>| beat</span> <span>${sign('<circle cx="5" cy="5" r="4" fill="none" stroke="currentColor" stroke-width="1.4"/>')} petal</span> <span>${sign('<path d="M1 1h8v8H1z" fill="currentColor"/>')} stall</span>`,
  letting: `<span>${sign('<path d="m1 1 8 8M1 9l8-8" stroke="currentColor" stroke-width="1.4"/>')} snaps taut</span>`,
  passing: '<span>↑ leaves</span> <span>↓ joins</span>',
};

export class StripElement extends HTMLElement {
  /**
   * @param {import('../state/session.js').Session} session
   * @param {import('../state/clock.js').Clock} clock
   */
  connect(session, clock) {
    this.session = session;
    this.clock = clock;
    session.addEventListener('scene', () => this.#later());
    clock.addEventListener('tick', () => this.#moment());
    clock.addEventListener('state', () => this.#moment());
  }

  /** A quiet line of the cycle, or all that is told over it. */
  turn(shut = !this.shut) {
    this.shut = shut;
    this.full.hidden = shut;
    localStorage.setItem('deferent.strip', shut ? 'shut' : 'open');
    if (!this.session) return;
    this.session.dispatchEvent(new Event('state'));
    this.dispatchEvent(new Event('turned'));
    if (!shut) this.#show();
  }

  connectedCallback() {
    if (this.plotPlace) return;
    this.id = 'strip';
    this.innerHTML = `
      <div class="strip-full">
        <p class="strip-key"><b>Apart now</b> <span data-what="this"><i></i><span></span></span> <span data-what="other"><i></i><span></span></span>
          <span data-what="breadth"><i></i>a hand’s breadth</span>
          <span class="strip-pull"><b>Pull</b> <span data-what="pull"><i></i><span></span></span> <span data-what="slack"><i></i>slack</span></span>
          <span class="strip-marks">${MARK_KEYS.cycle}</span></p>
        <span class="strip-zoom" role="group" aria-label="How much of the cycle the strip shows">
          <button type="button" data-zoom="2" aria-label="Closer" title="Closer round this moment">+</button>
          <button type="button" data-zoom="0.5" aria-label="Wider" title="Wider">−</button></span>
        <div class="strip-plot" aria-hidden="true"></div>
        <div class="strip-now" aria-hidden="true"><i></i></div>
      </div>
      <div class="strip-line">
        <div class="line-track" aria-hidden="true"></div>
        <div class="line-counts" aria-hidden="true"></div>
        <div class="line-now" aria-hidden="true"></div>
        <input class="strip-scrub" type="range" min="0" max="1" step="0.001" value="0" aria-label="Moment of the cycle">
        <div class="strip-gates" role="group" aria-label="Moments at which another pattern could begin"></div>
        <div class="loop-end" data-end="from" role="slider" tabindex="0" aria-label="Loop from" aria-valuemin="0" aria-valuemax="100" aria-valuenow="0"></div>
        <div class="loop-end" data-end="to" role="slider" tabindex="0" aria-label="Loop to" aria-valuemin="0" aria-valuemax="100" aria-valuenow="100"></div>
      </div>`;
    const $ = (name) => this.querySelector(name);
    this.full = $('.strip-full');
    this.line = $('.strip-line');
    this.turn(localStorage.getItem('deferent.strip') !== 'open');
    this.plotPlace = $('.strip-plot');
    this.pullKey = $('[data-what=pull] span');
    this.markKey = $('.strip-marks');
    this.keys = ['this', 'other'].map((what) => $(`[data-what=${what}] span`));
    this.now = $('.strip-now');
    this.dot = $('.line-now');
    this.dot.hidden = true;
    this.counts = $('.line-counts');
    this.scrub = $('.strip-scrub');
    this.gateRack = $('.strip-gates');
    this.ends = [...this.querySelectorAll('.loop-end')];
    this.window = { from: 0, to: 1 }; // the share of the cycle that the strip shows
    this.gateRack.addEventListener('pointerdown', (event) => event.stopPropagation());
    this.scrub.addEventListener('input', () => {
      this.clock.play(false);
      this.#go(Math.min(0.9999, Number(this.scrub.value)), this.line);
    });
    for (const end of this.ends) this.#loopEnd(end);
    this.line.addEventListener('pointerdown', (event) => this.#grab(event, this.line));
    this.plotPlace.addEventListener('pointerdown', (event) => this.#grab(event, this.plotPlace));
    this.plotPlace.addEventListener('wheel', (event) => {
      event.preventDefault();
      this.#zoom(event.deltaY < 0 ? 1.25 : 0.8, this.#share(event, this.plotPlace));
    }, { passive: false });
    for (const button of this.querySelectorAll('[data-zoom]')) button.addEventListener('click', () => this.#zoom(Number(button.dataset.zoom), this.clock.phase));
    const sized = new ResizeObserver(() => {
      if (this.plot && !this.shut) this.plot.setSize(this.#size());
      if (!this.session) return;
      this.#moment();
      this.#gates();
      this.#beats();
    });
    sized.observe(this.line);
    sized.observe(this.full);
  }

  // A press goes to a moment, and a drag goes on with it; a pull up opens the strip, a pull down shuts it, and leaves the moment be.
  #grab(event, on) {
    if (event.button > 0) return;
    event.preventDefault();
    on.setPointerCapture(event.pointerId);
    const { clock } = this;
    const was = { phase: clock.phase, playing: clock.playing, x: event.clientX, y: event.clientY };
    let along = false;
    clock.play(false);
    this.#go(this.#share(event, on), on);
    const move = (e) => {
      along ||= Math.abs(e.clientX - was.x) > PULL / 2;
      const up = was.y - e.clientY;
      if (!along && Math.abs(up) > PULL && up > 0 === this.shut) {
        end();
        clock.seek(was.phase);
        clock.play(was.playing);
        this.turn(up < 0);
        return;
      }
      this.#go(this.#share(e, on), on);
    };
    const end = () => on.removeEventListener('pointermove', move);
    on.addEventListener('pointermove', move);
    on.addEventListener('pointerup', end, { once: true });
    on.addEventListener('pointercancel', end, { once: true });
  }

  // To a moment; the line of a set is longer than what is on the stage of it.
  #go(share, on) {
    const { along } = this.session.aside || {};
    if (along && on === this.line) along.seek(share);
    else this.clock.seek(share);
  }

  // One end of the part that plays over and over.
  #loopEnd(end) {
    const first = end.dataset.end === 'from';
    const put = (phase) => (first ? this.clock.loopFrom(Math.min(phase, this.clock.to - 0.02)) : this.clock.loopTo(Math.max(phase, this.clock.from + 0.02)));
    end.addEventListener('pointerdown', (event) => {
      event.stopPropagation();
      end.setPointerCapture(event.pointerId);
      const move = (e) => put(this.#share(e, this.line, 1));
      end.addEventListener('pointermove', move);
      const done = () => end.removeEventListener('pointermove', move);
      end.addEventListener('pointerup', done, { once: true });
      end.addEventListener('pointercancel', done, { once: true });
    });
    end.addEventListener('keydown', (event) => {
      const by = { ArrowLeft: -0.01, ArrowDown: -0.01, ArrowRight: 0.01, ArrowUp: 0.01, PageDown: -0.125, PageUp: 0.125 }[event.key];
      if (!by) return;
      event.preventDefault();
      put(this.clock[end.dataset.end] + by);
    });
  }

  // Which share of the cycle a pointer is over.
  #share(event, on, most = 0.9999) {
    const box = on.getBoundingClientRect();
    const { left, right } = on === this.line ? { left: LINE, right: LINE } : PAD;
    const share = (event.clientX - box.left - left) / (box.width - left - right);
    const { from, to } = on === this.line ? { from: 0, to: 1 } : this.window;
    return Math.max(0, Math.min(most, from + share * (to - from)));
  }

  // Shows less or more of the cycle; what is at that moment stays where it is.
  #zoom(by, round) {
    const { from, to } = this.window;
    const wide = Math.max(NEAR, Math.min(1, (to - from) / by));
    const at = (round - from) / (to - from);
    const begin = Math.max(0, Math.min(1 - wide, at >= 0 && at <= 1 ? round - at * wide : round - wide / 2));
    this.window = { from: begin, to: begin + wide };
    if (this.plot) this.plot.setData(this.data, true);
    this.#moment();
  }

  // The counts along the line, where they fall; those between, and then all, only where there is room for them.
  #beats() {
    const { scene, answer, aside } = this.session;
    // A set has its time; a passage the counts of the pattern that it leaves and of the one it joins.
    const all = aside ? (aside.along?.ticks ?? aside.strip.counts ?? []) : answer ? answer.strip.counts : [];
    const lasts = aside?.along?.seconds ?? scene.period;
    const width = this.#track();
    const whole = all.filter((count) => /\d/.test(count.text));
    const every = Math.ceil(((aside?.along ? TIME : ROOM) * all.length) / Math.max(TIME, width));
    const shown = aside ? all.filter((_, i) => i % every === 0) : [all, whole].find((counts) => width / counts.length >= ROOM) || [];
    const said = shown.map((count) => `${count.text} ${((100 * count.time_s) / lasts).toFixed(2)}`).join();
    if (this.counted === said) return;
    this.counted = said;
    this.counts.replaceChildren(
      ...shown.map((count) => {
        const place = document.createElement('span');
        place.textContent = count.text;
        place.style.left = `${(100 * count.time_s) / lasts}%`;
        return place;
      }),
    );
  }

  #track() {
    return this.line.clientWidth - 2 * LINE;
  }

  recolour() {
    const style = getComputedStyle(this);
    const get = (name) => style.getPropertyValue(name).trim();
    this.ink = { text: get('--muted'), line: get('--line'), link: get('--link'), left: get('--left'), right: get('--right'), band: get('--band'), other: get('--faint'), slack: get('--wrong'), ground: get('--paper') };
    if (this.plot) {
      this.plot.destroy();
      this.plot = null;
      this.#show();
    }
  }

  #size() {
    return { width: this.plotPlace.clientWidth, height: Math.max(70, this.plotPlace.clientHeight) };
  }

  // After the stage, in a frame of its own; while a hand drags, ten times a second.
  #later() {
    if (this.due) return;
    this.due = true;
    const show = () => {
      this.due = false;
      this.showed = performance.now();
      this.#show();
    };
    const wait = this.session.dragging ? CALM - (performance.now() - (this.showed || 0)) : 0;
    if (wait > 0) setTimeout(show, wait);
    else requestAnimationFrame(show);
  }

  #show() {
    const answer = this.session.now;
    if (!answer) return;
    if (!this.ink) this.recolour();
    const { strip } = answer;
    const period = this.session.scene.period;
    const n = strip.gap_m.length;
    if (!this.data || this.data[0].length !== n + 1) this.data = [new Float64Array(n + 1), new Float64Array(n + 1), new Float64Array(n + 1)];
    const other = strip.links && strip.links.find((t) => t.carrier !== strip.carrier);
    let most = 0;
    const last = this.session.scene.closed ? 0 : n - 1; // where the line ends: at its start again, or where it stands
    for (let i = 0; i <= n; i++) {
      this.data[0][i] = (period * i) / n;
      this.data[1][i] = strip.gap_m[i < n ? i : last] * 100;
      this.data[2][i] = other ? other.gap_m[i < n ? i : last] * 100 : NaN;
      most = Math.max(most, this.data[1][i]);
    }
    const tolerance = (strip.tolerance_m ?? 0.08) * 100;
    const top = nice(Math.max(most * 1.08, tolerance * 2.5));
    if (!this.top || top > this.top || !this.session.dragging) this.top = top;
    this.tolerance = tolerance;
    const { letting, passing } = this.session;
    this.marks = letting
      ? letting.events.map((e) => ({ ...e, side: letting.side }))
      : passing
        ? passing.led ? [] : passing.passages.flatMap((p) => p.moments)
        : strip.marks || [];
    const kind = letting ? 'letting' : passing ? 'passing' : 'cycle';
    if (this.kind !== kind) {
      this.kind = kind;
      this.markKey.innerHTML = MARK_KEYS[kind];
    }
    this.#gates();
    this.#cords(answer.pull);
    if (this.carrier !== strip.carrier) {
      this.carrier = strip.carrier;
      const rider = { left: 'right', right: 'left' };
      this.keys[0].textContent = `${strip.carrier} head to ${rider[strip.carrier]} hand`;
      this.keys[1].textContent = `${rider[strip.carrier]} head to ${strip.carrier} hand`;
    }
    this.#beats();
    this.#moment();
    if (this.shut) return;
    if (!this.plot) this.#make();
    this.plot.setData(this.data, true);
    this.#moment();
  }

  /** Marks moments at which another pattern could begin: [{ time_s, says, chosen, smooth }]; `chose(i)` is called with the one taken. */
  gates(list, chose) {
    this.gateList = list;
    this.chose = chose;
    this.#gates();
  }

  #gates() {
    const { passing } = this.session;
    const moments = passing && !passing.led ? passing.passages.flatMap((p) => p.moments) : [];
    const list = passing
      ? moments.map(({ time_s, side, kind, count }) => ({ time_s, kind, says: `${side} hand ${kind} ${count}` }))
      : this.kind === 'cycle' || !this.kind ? this.gateList || [] : [];
    this.choose = passing ? (i) => this.clock.seek(moments[i].time_s / this.session.scene.period) : (i) => this.chose(i);
    const rack = this.gateRack;
    rack.setAttribute('aria-label', passing ? 'Moments at which a hand leaves or joins' : 'Moments at which another pattern could begin');
    while (rack.children.length > list.length) rack.lastChild.remove();
    const width = this.#track();
    list.forEach((gate, i) => {
      let button = rack.children[i];
      if (!button) {
        button = document.createElement('button');
        button.type = 'button';
        button.className = 'gate';
        button.addEventListener('click', () => this.choose(i));
        rack.append(button);
      }
      button.style.transform = `translateX(${(LINE + (width * gate.time_s) / this.session.scene.period).toFixed(1)}px)`;
      button.classList.toggle('chosen', !!gate.chosen);
      button.classList.toggle('joins', gate.kind === 'joins');
      if (button.title !== gate.says) {
        button.title = gate.says;
        button.setAttribute('aria-label', gate.says);
      }
    });
  }

  // How wide a ribbon is goes with the root of the pull, as the tether on the stage does, so that a light pull beside a hard one is still
  // seen. The hardest pull of the cycle fills its lane, and keeps doing so while a hand drags.
  #cords(pull) {
    this.pull = pull;
    const most = Math.max(...['left', 'right'].map((side) => pull[side]?.greatest_weights ?? 0), 1);
    if (!this.mostPull || most > this.mostPull || !this.session.dragging) this.mostPull = most;
    const text = `up to ${trimmed(most, most < 9.95 ? 1 : 0)} head weights`;
    if (this.pullText !== text) this.pullKey.textContent = this.pullText = text;
  }

  #drawCords(u) {
    const ratio = devicePixelRatio;
    const { ctx } = u;
    const { left, width, top } = u.bbox;
    const { closed, period } = this.session.scene;
    const x = (at) => u.valToPos(at, 'x', true);
    ctx.save();
    ctx.beginPath();
    ctx.rect(left, 0, width, u.ctx.canvas.height);
    ctx.clip();
    ctx.setLineDash([]);
    ['left', 'right'].forEach((side, lane) => {
      if (!this.pull[side]) return; // its pull could not be worked out, which the readings say
      const { weights, slack } = this.pull[side];
      const middle = top + (-CORDS - 1 + 8 + lane * 15) * ratio;
      const half = 6 * ratio;
      const n = closed ? weights.length : weights.length - 1;
      const wide = (i) => Math.max(0.5 * ratio, half * Math.sqrt(Math.max(0, weights[i % weights.length]) / this.mostPull));
      const line = (way) => {
        for (let k = 0; k <= n; k++) {
          const i = way > 0 ? k : n - k;
          ctx.lineTo(x((period * i) / n), middle - way * wide(i));
        }
      };
      ctx.fillStyle = this.ink[side];
      ctx.beginPath();
      line(1);
      line(-1);
      ctx.fill();
      // Slack in plain sight: the lane is struck through from edge to edge.
      for (const s of slack) {
        const from = x(s.from_s);
        const across = Math.max(2 * ratio, x(s.to_s) - from);
        ctx.save();
        ctx.beginPath();
        ctx.rect(from, middle - half, across, 2 * half);
        ctx.clip();
        ctx.fillStyle = this.ink.ground;
        ctx.fillRect(from, middle - half, across, 2 * half);
        ctx.strokeStyle = this.ink.slack;
        ctx.lineWidth = 1.4 * ratio;
        ctx.beginPath();
        const step = 5 * ratio;
        for (let at = Math.floor((from - 2 * half) / step) * step; at < from + across; at += step) {
          ctx.moveTo(at, middle + half);
          ctx.lineTo(at + 2 * half, middle - half);
        }
        ctx.stroke();
        ctx.strokeRect(from, middle - half, across, 2 * half);
        ctx.restore();
      }
    });
    ctx.restore();
  }

  #make() {
    const grid = { stroke: this.ink.line, width: 1 };
    const font = '11px ' + getComputedStyle(this).fontFamily;
    this.plot = new uPlot(
      {
        ...this.#size(),
        padding: [PAD.top + LANES, PAD.right, 0, 0],
        legend: { show: false },
        cursor: { show: false },
        select: { show: false },
        scales: {
          x: { time: false, range: (u, least, most) => [most * this.window.from, most * this.window.to] },
          y: { range: () => [0, this.top] },
        },
        axes: [
          { stroke: this.ink.text, font, size: PAD.bottom, grid: { show: false }, ticks: { ...grid, size: 4 }, gap: 3, space: 64, values: (u, at) => at.map((v) => Number(v.toFixed(3)) + ' s') },
          { stroke: this.ink.text, font, size: PAD.left, grid, ticks: { show: false }, gap: 6, space: 26, values: (u, at) => at.map((v) => v + ' cm') },
        ],
        series: [
          {},
          { stroke: this.ink.link, width: 2, points: { show: false } },
          { stroke: this.ink.other, width: 1, dash: [3, 4], points: { show: false } },
        ],
        hooks: { drawClear: [(u) => this.#band(u)], draw: [(u) => this.#drawCords(u), (u) => this.#drawMarks(u)] },
      },
      this.data,
      this.plotPlace,
    );
    // A canvas is not drawn anew by itself when its letters have come.
    document.fonts.load(font).then(() => this.plot.redraw(false));
  }

  // The breadth of a hand: while the line runs in this band, the link counts as closed.
  #band(u) {
    const { left, width } = u.bbox;
    const y = u.valToPos(this.tolerance, 'y', true);
    const bottom = u.valToPos(0, 'y', true);
    u.ctx.save();
    u.ctx.fillStyle = this.ink.band;
    u.ctx.fillRect(left, y, width, bottom - y);
    u.ctx.restore();
  }

  #drawMarks(u) {
    const ratio = devicePixelRatio;
    const ctx = u.ctx;
    const { top, left, width } = u.bbox;
    ctx.save();
    ctx.beginPath();
    ctx.rect(left - 4 * ratio, 0, width + 8 * ratio, ctx.canvas.height);
    ctx.clip();
    ctx.setLineDash([]);
    ctx.lineWidth = 1.5 * ratio;
    for (const mark of this.marks) {
      const x = u.valToPos(mark.time_s, 'x', true);
      const lane = mark.side === 'right' ? 1 : 0;
      const y = top + (-LANES - 1 + 6 + lane * 10) * ratio;
      const r = 3.4 * ratio;
      ctx.strokeStyle = ctx.fillStyle = this.ink[mark.side] || this.ink.text;
      ctx.beginPath();
      if (mark.kind === 'beat') {
        ctx.moveTo(x, y - r * 1.1);
        ctx.lineTo(x, y + r * 1.1);
        ctx.stroke();
      } else if (mark.kind === 'snap') {
        ctx.moveTo(x - r, y - r);
        ctx.lineTo(x + r, y + r);
        ctx.moveTo(x - r, y + r);
        ctx.lineTo(x + r, y - r);
        ctx.stroke();
      } else if (mark.kind === 'leaves' || mark.kind === 'joins') {
        const up = mark.kind === 'leaves' ? -1 : 1;
        ctx.moveTo(x, y - r);
        ctx.lineTo(x, y + r);
        ctx.moveTo(x - r, y);
        ctx.lineTo(x, y + up * r);
        ctx.lineTo(x + r, y);
        ctx.stroke();
      } else if (mark.kind === 'slack') {
        continue; // the ribbon shows it
      } else if (mark.kind === 'stall') {
        ctx.rect(x - r * 0.8, y - r * 0.8, r * 1.6, r * 1.6);
        ctx.fill();
      } else {
        ctx.arc(x, y, r * 0.78, 0, 2 * Math.PI);
        ctx.stroke();
      }
    }
    ctx.restore();
  }

  #moment() {
    const answer = this.session && this.session.now;
    this.dot.hidden = !answer;
    if (!answer) return;
    const { phase, from, to } = this.clock;
    const width = this.#track();
    const { along } = this.session.aside || {};
    const share = along ? along.share() : phase;
    this.dot.style.transform = `translateX(${(LINE + share * width).toFixed(1)}px)`;
    this.#loop(from, to, width);
    if (!this.shut) {
      const { from: first, to: last } = this.window;
      const at = (phase - first) / (last - first);
      this.now.hidden = at < 0 || at > 1;
      this.now.style.transform = `translateX(${(PAD.left + at * (this.plotPlace.clientWidth - PAD.left - PAD.right)).toFixed(1)}px)`;
    }
    if (document.activeElement !== this.scrub || this.clock.playing) this.scrub.value = share;
    if (!this.clock.playing && along) {
      this.scrub.setAttribute('aria-valuetext', along.says());
    } else if (!this.clock.playing) {
      const gaps = answer.strip.gap_m;
      const period = this.session.scene.period;
      const text = `${seconds(phase * period)} of ${seconds(period)}, apart now ${length(gaps[Math.floor(phase * gaps.length) % gaps.length])}, ${this.#says('left', phase)}, ${this.#says('right', phase)}`;
      this.scrub.setAttribute('aria-valuetext', text);
    }
  }

  // The ends of the part that plays over and over; what plays once has none.
  #loop(from, to, width) {
    const { scene, aside } = this.session;
    const said = `${from} ${to} ${width} ${scene.period} ${!!aside}`;
    if (this.looping === said) return;
    this.looping = said;
    this.ends.forEach((end, i) => {
      const at = i ? to : from;
      end.hidden = !!aside;
      end.style.transform = `translateX(${(LINE + at * width).toFixed(1)}px)`;
      end.setAttribute('aria-valuenow', String(Math.round(at * 100)));
      end.setAttribute('aria-valuetext', seconds(at * scene.period));
    });
    this.line.classList.toggle('looped', this.clock.looped && !aside);
    this.line.style.setProperty('--from', String(aside ? 0 : from));
    this.line.style.setProperty('--to', String(aside ? 1 : to));
  }

  #says(side, phase) {
    if (!this.pull[side]) return `${side} cord's pull not worked out`;
    const { weights, slack } = this.session.scene.pullAt(side, phase);
    return slack ? `${side} cord slack` : `${side} cord pulls ${signed(trimmed(weights, 1))} head weights`;
  }
}

function nice(value) {
  for (const step of [10, 20, 30, 50, 80, 100, 150, 200, 300, 400, 500, 800]) if (value <= step) return step;
  return Math.ceil(value / 1000) * 1000;
}

customElements.define('deferent-strip', StripElement);
