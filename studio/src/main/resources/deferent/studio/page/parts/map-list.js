import { html, nothing, svg } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { trimmed } from './units.js';
import { NEAR } from '../state/map.js';
import '../stage/thumb.js';

const GENTLE = 0.5; // weights
const ROUGH = 2;

/** The shelf as a map: take two patterns, and the gentlest route between them can be played through. */
class MapList extends Part {
  connect(desk) {
    super.connect(desk);
    desk.map.addEventListener('state', () => this.soon());
  }

  render() {
    const { map } = this.desk;
    return html`
      <div class="map-how">
        <label for="map-near">A crossing may be apart by</label>
        <select id="map-near" @change=${(e) => map.within(Number(e.target.value))}>
          ${NEAR.map((near, i) => html`<option value=${i} ?selected=${map.near === i}>${near.says} (${near.more})</option>`)}
        </select>
      </div>
      ${map.running
        ? html`<p class="quiet seek-state" role="status">${map.progress} … <button type="button" class="link" @click=${() => map.stop()}>Stop</button></p>`
        : nothing}
      ${map.error ? html`<p class="told" data-tone="warn" role="status">${sentence(map.error)}</p>` : nothing}
      ${map.answer ? this.#map(map) : nothing}`;
  }

  #map(map) {
    const { patterns, crossings, complete } = map.answer;
    if (!patterns.length) return html`<p class="quiet ways-none">Nothing saved yet: the patterns of the shelf are the places of this map.</p>`;
    const size = patterns.length <= 12 ? 54 : patterns.length <= 16 ? 42 : patterns.length <= 40 ? 38 : 24;
    const on = this.#onRoute(map);
    const x = (id) => map.places.get(id)[0] * 100;
    const y = (id) => map.places.get(id)[1] * 100;
    return html`
      <div class="map" role="group" aria-label="Map of the shelf: take two patterns" style="--node: ${size}px" @keydown=${this.#key} @pointerover=${this.#over} @focusin=${this.#over} @pointerleave=${() => this.#hint(null)}>
        <div class="map-field">
          <svg class="map-crossings" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
            ${crossings.map((crossing) => svg`<line x1=${x(crossing.from)} y1=${y(crossing.from)} x2=${x(crossing.to)} y2=${y(crossing.to)}
              class="${crossing.roughness_weights <= GENTLE ? 'gentle' : crossing.roughness_weights <= ROUGH ? '' : 'rough'} ${on.has(pair(crossing.from, crossing.to)) ? 'on' : ''}"></line>`)}
          </svg>
          ${repeat(patterns, (p) => p.id, (p, i) => html`<button type="button" class="place ${p.id === map.from ? 'from' : ''} ${p.id === map.to ? 'to' : ''}" data-id=${p.id}
            tabindex=${(map.from ? p.id === map.from : i === 0) ? 0 : -1} style="left: ${x(p.id)}%; top: ${y(p.id)}%" aria-pressed=${p.id === map.from || p.id === map.to}
            aria-label="${p.name}, ${count(crossings, p.id)}" @click=${() => map.take(p.id)}><moving-thumb .moves=${p.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb><span class="place-name ${size > 40 || on.size && (map.route.places.includes(p.id)) ? '' : 'far'}">${p.name}</span></button>`)}
        </div>
      </div>
      <p class="quiet map-hint">${this.hinted ? map.name(this.hinted) : 'Thick: goes over easily, with an extra pull of half the head’s weight at most. Dashed: more than twice it.'}</p>
      <div class="map-ends">
        ${this.#end('from', 'From', map.from, (id) => map.go(id, map.to === id ? null : map.to))}
        ${this.#end('to', 'To', map.to, (id) => map.go(map.from === id ? null : map.from, id))}
      </div>
      ${complete ? nothing : html`<p class="told">Stopped before all patterns were compared, so there may be more crossings.</p>`}
      ${this.#route(map)}
      <details class="map-list"><summary>All crossings as a list</summary>
        ${crossings.length ? nothing : html`<p>None within that.</p>`}
        <ul>${[...crossings].sort((a, b) => a.roughness_weights - b.roughness_weights).map(
          (crossing) => html`<li><button type="button" class="link" @click=${() => map.go(crossing.from, crossing.to)}>${map.name(crossing.from)} – ${map.name(crossing.to)}</button> <small>${trimmed(crossing.roughness_weights, 2)} weights</small></li>`,
        )}</ul>
      </details>`;
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
    if (!route) return map.error ? nothing : html`<p class="quiet map-route" role="status">Looking for a route …</p>`;
    const { passing } = this.desk.session;
    const played = passing === route;
    const told = route.told[0];
    return html`<section class="map-route" aria-label="Route" role="status">
      <p class="told" data-tone=${told.tone}>${told.text}</p>
      ${route.scene
        ? html`<p class="seek-verbs"><button type="button" class="primary play-route" @click=${() => this.desk.playPassage(route)}>${played ? 'Play it again' : 'Play it through'}</button>
              ${played ? html`<button type="button" @click=${() => this.desk.goOn()}>Open the last</button>` : nothing}</p>
            <p class="passage-told">${route.passage.told.text}</p>`
        : nothing}
      ${route.route?.crossings.length ? this.#leg(map, route) : nothing}
      <details><summary>Why</summary><p>${told.why}</p>
        ${route.route ? html`<ol class="route-crossings">${route.route.crossings.map((c) => html`<li><b>${c.from} into ${c.to}.</b> ${c.told.text}</li>`)}</ol>` : nothing}</details>
    </section>`;
  }

  // One leg at a time: where from, where to, how one gets there.
  #leg(map, route) {
    const all = route.route.crossings;
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
    return html`<div class="leg" role="group" aria-label="Leg ${leg + 1} of ${all.length}">
      <div class="leg-ends">${thumb(route.places[leg])}<span class="leg-into">into</span>${thumb(route.places[leg + 1])}</div>
      <p>${all[leg].told.text}</p>
      <p class="seek-verbs"><button type="button" ?disabled=${leg === 0} @click=${() => go(leg - 1)}>Leg before</button>
        <button type="button" class="play-leg" @click=${() => this.#playLeg(map, route, leg)}>Play leg ${leg + 1} of ${all.length}</button>
        <button type="button" ?disabled=${leg === all.length - 1} @click=${() => go(leg + 1)}>Leg after</button></p>
    </div>`;
  }

  async #playLeg(map, route, leg) {
    const answer = await map.passage(route.places[leg], route.places[leg + 1], this.desk.shelf);
    if (this.route !== route) return;
    if (answer.error) this.desk.complain(answer.error);
    else this.desk.playPassage(answer);
  }

  #onRoute(map) {
    const places = (map.route && map.route.places) || [];
    return new Set(places.slice(1).map((id, i) => pair(places[i], id)));
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

const pair = (a, b) => (a < b ? a + ' ' + b : b + ' ' + a);

function count(crossings, id) {
  const n = crossings.filter((w) => w.from === id || w.to === id).length;
  return n === 1 ? 'one crossing' : n ? n + ' crossings' : 'no crossing';
}

customElements.define('map-list', MapList);
