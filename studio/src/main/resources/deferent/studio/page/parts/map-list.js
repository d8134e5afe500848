import { html, nothing, svg } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { gradeSign, gradeWord } from './set-signs.js';
import { GRADES } from '../state/transitions.js';
import '../stage/thumb.js';

const ORDER = ['easy', 'practised', 'hard'];
const ASIDE = 0.9; // how far lines there and back lie from the straight one, in hundredths of the map
const HEAD = 2.6; // an arrow's length, likewise

/** The shelf as a map: take two patterns, and the gentlest route from the one to the other can be played through. */
class MapList extends Part {
  listed = false;

  connect(desk) {
    super.connect(desk);
    desk.map.addEventListener('state', () => this.soon());
  }

  render() {
    const { map } = this.desk;
    return html`
      <div class="map-how">
        <label for="map-hardest">At most</label>
        <select id="map-hardest" @change=${(e) => map.within(e.target.value)}>
          ${GRADES.map(([grade, says]) => html`<option value=${grade} ?selected=${map.hardest === grade}>${says}</option>`)}
        </select>
      </div>
      ${map.running
        ? html`<p class="quiet seek-state" role="status">${map.progress} … <button type="button" class="link" @click=${() => map.stop()}>Stop</button></p>`
        : nothing}
      ${map.error ? html`<p class="told" data-tone="warn" role="status">${sentence(map.error)}</p>` : nothing}
      ${map.answer ? this.#map(map) : nothing}`;
  }

  #map(map) {
    const { patterns, transitions, told } = map.answer;
    if (!patterns.length) return html`<p class="quiet ways-none">Nothing saved yet: the patterns of the shelf are the places of this map.</p>`;
    const size = patterns.length <= 12 ? 54 : patterns.length <= 16 ? 42 : patterns.length <= 40 ? 38 : 24;
    const route = map.route?.places ?? [];
    const on = new Set(route.slice(1).map((id, i) => route[i] + ' ' + id));
    const x = (id) => map.places.get(id)[0] * 100;
    const y = (id) => map.places.get(id)[1] * 100;
    const out = counts(transitions, 'from');
    const into = counts(transitions, 'to');
    return html`
      <div class="map" role="group" aria-label="Map of the shelf: take two patterns" style="--node: ${size}px" @keydown=${this.#key} @pointerover=${this.#over} @focusin=${this.#over} @pointerleave=${() => this.#hint(null)}>
        <div class="map-field">
          <svg class="map-ways ${this.#from(map) ? 'from-one' : ''}" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
            ${lines(transitions).map((line) => this.#line(line, on, x, y))}
          </svg>
          ${repeat(patterns, (p) => p.id, (p, i) => html`<button type="button" class="place ${p.id === map.from ? 'from' : ''} ${p.id === map.to ? 'to' : ''}" data-id=${p.id}
            tabindex=${(map.from ? p.id === map.from : i === 0) ? 0 : -1} style="left: ${x(p.id)}%; top: ${y(p.id)}%" aria-pressed=${p.id === map.from || p.id === map.to}
            aria-label="${p.name}, leads into ${patternsSaid(out.get(p.id))}, ${patternsSaid(into.get(p.id))} lead${into.get(p.id) === 1 ? 's' : ''} into it" @click=${() => map.take(p.id)}><moving-thumb .moves=${p.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb><span class="place-name ${size > 40 || route.includes(p.id) ? '' : 'far'}">${p.name}</span></button>`)}
        </div>
      </div>
      <p class="quiet map-hint">${this.hinted ? `${map.name(this.hinted)} leads into ${patternsSaid(out.get(this.hinted))} of the others.` : html`Thick is easy, thin with practice, dashed hard. <span class="nowrap">An arrow</span> goes that way only.`}</p>
      <div class="map-ends">
        ${this.#end('from', 'From', map.from, (id) => map.go(id, map.to === id ? null : map.to))}
        ${this.#end('to', 'To', map.to, (id) => map.go(map.from === id ? null : map.from, id))}
      </div>
      ${this.#route(map)}
      ${map.running ? nothing : told.map((one) => html`<p class="told map-told" data-tone=${one.tone}>${one.text}</p>`)}
      <details class="map-list" @toggle=${(e) => this.#list(e.target.open)}><summary>What leads where, as a list</summary>
        ${this.listed ? this.#all(map) : nothing}
      </details>`;
  }

  // What is looked at, or taken first: then what leads out of it stands out.
  #from(map) {
    return this.hinted ?? (map.to ? null : map.from);
  }

  #line({ from, to, grade, both }, on, x, y) {
    const [ax, ay, bx, by] = [x(from), y(from), x(to), y(to)];
    const far = Math.hypot(bx - ax, by - ay) || 1;
    const [dx, dy] = [(bx - ax) / far, (by - ay) / far];
    const aside = both ? 0 : ASIDE;
    const [sx, sy] = [-dy * aside, dx * aside];
    const here = this.#from(this.desk.map);
    const kind = [on.has(from + ' ' + to) || (both && on.has(to + ' ' + from)) ? 'on' : '', here === from || (both && here === to) ? 'out' : ''].join(' ');
    // The arrow stands past the middle, where that of the way back does not.
    const [tx, ty] = [ax + (bx - ax) * 0.62 + sx, ay + (by - ay) * 0.62 + sy];
    const [wx, wy] = [tx - dx * HEAD, ty - dy * HEAD];
    const half = HEAD * 0.42;
    return svg`<g class=${kind} data-way=${grade}><line x1=${ax + sx} y1=${ay + sy} x2=${bx + sx} y2=${by + sy}></line>
      ${both ? nothing : svg`<path d="M${tx} ${ty} L${wx - dy * half} ${wy + dx * half} L${wx + dy * half} ${wy - dx * half} Z"></path>`}</g>`;
  }

  #list(open) {
    this.listed = open;
    this.requestUpdate();
  }

  #all(map) {
    const { patterns, transitions } = map.answer;
    if (!transitions.length) return html`<p>Nothing leads from one of them into another.</p>`;
    const by = grouped(transitions);
    return html`<ul>${patterns.filter((p) => by.has(p.id)).map(
      (p) => html`<li><b>${p.name}</b> into <ul>${by.get(p.id).toSorted((a, b) => ORDER.indexOf(a.grade) - ORDER.indexOf(b.grade)).map(
        (t) => html`<li><button type="button" class="link" @click=${() => map.go(t.from, t.to)}>${map.name(t.to)}</button> <small>${gradeWord(t.grade)}</small></li>`,
      )}</ul></li>`,
    )}</ul>`;
  }

  #end(which, says, value, take) {
    const { patterns } = this.desk.map.answer;
    return html`<label for="map-${which}">${says}</label>
      <select id="map-${which}" @change=${(e) => take(e.target.value || null)}>
        <option value="" ?selected=${!value}>–</option>
        ${patterns.map((p) => html`<option value=${p.id} ?selected=${value === p.id}>${p.name}</option>`)}
      </select>`;
  }

  #route(map) {
    if (!map.from || !map.to) return html`<p class="quiet map-route">Pick two patterns, and the gentlest route from the one to the other can be played.</p>`;
    const { route } = map;
    if (!route) {
      return map.routing
        ? html`<p class="quiet map-route" role="status">Looking for a route${map.sought ? ': ' + map.sought : ''} … <button type="button" class="link" @click=${() => map.stopRoute()}>Stop</button></p>`
        : nothing;
    }
    const { passing } = this.desk.session;
    const played = passing && this.played === route;
    const [told, ...more] = route.told;
    const led = route.set?.transitions ?? [];
    return html`<section class="map-route" aria-label="Route" role="status">
      <p class="told" data-tone=${told.tone}>${told.text}</p>
      ${more.map((one) => html`<p class="told" data-tone=${one.tone}>${one.text}</p>`)}
      ${led.length
        ? html`<p class="seek-verbs"><button type="button" class="primary play-route" @click=${() => this.#play(map, route)}>${played ? 'Play it again' : 'Play it through'}</button>
              <button type="button" class="route-set" @click=${() => this.#set(route)}>Make it a set</button>
              ${played ? html`<button type="button" @click=${() => this.desk.goOn()}>Open the last</button>` : nothing}</p>
            ${this.#leg(map, route)}`
        : nothing}
      <details><summary>Why</summary><p>${told.why}</p>
        ${led.length > 1 ? html`<ol class="route-ways">${led.map((t, i) => html`<li><b>${route.set.steps[i].name} into ${route.set.steps[i + 1].name}.</b> ${t.told.text}</li>`)}</ol>` : nothing}</details>
    </section>`;
  }

  // One change at a time: where from, where to, how one gets there.
  #leg(map, route) {
    const all = route.set.transitions;
    if (this.route !== route) {
      this.route = route;
      this.leg = 0;
    }
    const { leg } = this;
    const thumb = (id) => html`<figure><moving-thumb .moves=${map.answer.patterns.find((p) => p.id === id)?.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb><figcaption>${map.name(id)}</figcaption></figure>`;
    const go = (to) => {
      this.leg = to;
      this.requestUpdate();
    };
    const { grade, told } = all[leg];
    return html`<div class="leg" role="group" aria-label="Change ${leg + 1} of ${all.length}">
      <div class="leg-ends">${thumb(route.places[leg])}<span class="leg-into">${grade ? html`<span class="set-grade" data-grade=${grade} title=${gradeWord(grade)}>${gradeSign(grade)}</span>` : nothing} into</span>${thumb(route.places[leg + 1])}</div>
      <p>${told.text}</p>
      ${all.length > 1
        ? html`<p class="seek-verbs"><button type="button" ?disabled=${leg === 0} @click=${() => go(leg - 1)}>Before</button>
            <button type="button" class="play-leg" @click=${() => this.#playLeg(map, route, leg)}>Play change ${leg + 1} of ${all.length}</button>
            <button type="button" ?disabled=${leg === all.length - 1} @click=${() => go(leg + 1)}>After</button></p>`
        : nothing}
    </div>`;
  }

  async #play(map, route) {
    const answer = await map.play(route);
    if (map.route !== route) return;
    this.played = route;
    this.#put(answer);
  }

  async #playLeg(map, route, leg) {
    const answer = await map.playLeg(route, leg);
    if (map.route === route) this.#put(answer);
  }

  #put(answer) {
    if (answer.error) this.desk.complain(answer.error);
    else this.desk.playPassage(answer);
  }

  // What stood there as a set comes back with undo.
  #set(route) {
    const { set, side } = this.desk;
    set.clear();
    set.add(route.set.steps.map((step, i) => ({ id: route.places[i], name: step.name, counts: step.counts_asked })));
    side.show('set');
  }

  #over = (event) => this.#hint(event.target.closest?.('.place')?.dataset.id ?? null);

  #hint(id) {
    if (this.hinted === id) return;
    this.hinted = id;
    this.requestUpdate();
  }

  // Arrow keys go to the nearest place in that direction.
  #key(event) {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    const button = event.target.closest('.place');
    if (!way || !button) return;
    event.preventDefault();
    event.stopPropagation();
    const { places } = this.desk.map;
    const here = places.get(button.dataset.id);
    let best = null;
    let least = Infinity;
    for (const [id, there] of places) {
      const along = way[0] * (there[0] - here[0]) + way[1] * (there[1] - here[1]);
      const aside = Math.abs(way[1] * (there[0] - here[0]) - way[0] * (there[1] - here[1]));
      if (along > 1e-6 && along + 2 * aside < least) {
        least = along + 2 * aside;
        best = id;
      }
    }
    if (best) this.querySelector(`.place[data-id="${CSS.escape(best)}"]`).focus();
  }
}

/**
 * What is drawn between each two: one line where it goes both ways and is as hard, else one each way.
 *
 * @param {{ from: string, to: string, grade: string }[]} transitions
 */
function lines(transitions) {
  const by = new Map(transitions.map((t) => [t.from + ' ' + t.to, t.grade]));
  const drawn = [];
  for (const { from, to, grade } of transitions) {
    const both = by.get(to + ' ' + from) === grade;
    if (!both || from < to) drawn.push({ from, to, grade, both });
  }
  // What is easy lies above.
  return drawn.sort((a, b) => ORDER.indexOf(b.grade) - ORDER.indexOf(a.grade));
}

function counts(transitions, end) {
  const found = new Map();
  for (const t of transitions) found.set(t[end], (found.get(t[end]) ?? 0) + 1);
  return found;
}

function grouped(transitions) {
  const by = new Map();
  for (const t of transitions) by.set(t.from, [...(by.get(t.from) ?? []), t]);
  return by;
}

const patternsSaid = (n = 0) => (n === 0 ? 'none' : n === 1 ? 'one' : String(n));

customElements.define('map-list', MapList);
