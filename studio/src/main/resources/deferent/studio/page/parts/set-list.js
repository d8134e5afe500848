import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { savedLine } from './saved-line.js';
import { cautions, cautionSigns, GRADE_KEY, gradeOf, gradeSign, gradeWord, turnSign } from './set-signs.js';
import { countsOf, follow, lengthSaid, nameOf, tellOf, turnOf } from './set-line.js';
import { lasting, minutes } from '../set-player.js';
import { EIGHT, MOST_BEATS, turnSaid } from '../state/set.js';
import { shown } from '../state/shelf.js';
import { trimmed } from './units.js';
import '../stage/thumb.js';

const NARROW = matchMedia('(max-width: 860px)'); // as in css/layout.css
const AHEAD = '200px'; // how far out of sight a picture is made ready
const FEW = 7; // from so many patterns on they are searched
const EDGE = 44; // pixels at either end where a carried row pulls the list along

/** @typedef {import('../state/shelf.js').Listed} Listed */
/** @typedef {import('../state/set.js').Block} Block */
/** @typedef {import('../state/set.js').Joint} Joint */

/** The set's drawer: its name, what can be done to it, and the shelf to add from. On a narrow page its patterns stand here one below the other. */
class SetList extends Part {
  find = '';
  suggested = 6;
  /** @type {{ key: number, by: number, to: number } | null} */
  drag = null;
  spoken = '';
  watch = new IntersectionObserver((entries) => entries.forEach((entry) => this.#seen(entry)), { rootMargin: AHEAD });
  /** @type {Set<Element>} */
  watched = new Set();

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.set.addEventListener('state', () => this.requestUpdate());
    desk.shelf.addEventListener('state', () => this.soon());
    desk.side.addEventListener('turned', () => this.requestUpdate());
    NARROW.addEventListener('change', () => this.requestUpdate());
  }

  // Hundreds of cards are not made before somebody looks, nor drawn anew while nobody does.
  shouldUpdate() {
    return !!this.desk && !this.hidden && this.desk.side.open;
  }

  render() {
    const { set } = this.desk;
    const narrow = NARROW.matches;
    return html`
      ${narrow && set.steps.length ? nothing : this.#name()}
      ${set.steps.length ? this.#verbs(narrow) : html`<p class="set-begin">A set is patterns in order, each for so many counts: press one below and it begins.</p>`}
      ${set.error ? html`<p class="told" data-tone="warn" role="status">${sentence(set.error)} <button type="button" class="link" @click=${() => set.again()}>Ask again</button></p>` : nothing}
      ${set.steps.length || set.stands.song ? this.#song() : nothing}
      ${narrow ? this.#rows() : this.#chosen()}
      ${narrow && set.steps.length ? this.#name() : nothing}
      ${this.#add()}
      ${set.known && set.answer && set.answer.told.length > 1
        ? html`<h2 class="shelf-head">What it asks</h2><ul class="set-asks">${set.answer.told.slice(1).map((told) => html`<li class="told" data-tone=${told.tone ?? ''}>${told.text}</li>`)}</ul>`
        : nothing}
      ${set.steps.length ? GRADE_KEY : nothing}
      ${this.#others()}
      <p class="spoken" role="status">${this.spoken}</p>`;
  }

  #name() {
    const { set } = this.desk;
    const { steps, kept, unsaved } = set;
    return html`<form class="save" @submit=${this.#save}>
      <label for="set-name">Set</label>
      <div class="save-row">
        <input id="set-name" type="text" maxlength="120" autocomplete="off" placeholder="name of the set" .value=${set.name}
          @input=${(/** @type {any} */ e) => set.rename(e.target.value.trim())}>
        <button type="submit" class=${unsaved ? 'primary' : ''} ?disabled=${!steps.length || !unsaved}>${kept && !unsaved ? 'Saved' : 'Save'}</button>
      </div>
      ${set.changed
        ? html`<p class="told" data-tone="warn" role="status">It was changed elsewhere since you opened it.
            <button type="button" class="link" @click=${() => set.save(true)}>Save this one as a new set</button></p>`
        : nothing}
    </form>`;
  }

  /** @param {boolean} narrow */
  #verbs(narrow) {
    const { set, player, pulse } = this.desk;
    const told = set.known ? set.answer?.told?.[0] : null;
    return html`${narrow || !set.shown ? html`<p class="set-sum told" role="status" data-tone=${told?.tone ?? ''}>${told?.text ?? (set.working ? 'Working out how each passes into the next …' : '')}</p>` : nothing}
      <p class="set-do">
        <button type="button" class="primary set-turn" ?disabled=${!set.known || player.loading} @click=${() => player.turn()}>${player.playing ? 'Pause' : 'Play the set'}</button>
        <button type="button" class="icon" aria-label="Undo" title="Undo (Ctrl+Z)" ?disabled=${!set.past.length} @click=${() => set.undo()}>${BACK}</button>
        <button type="button" class="icon" aria-label="Redo" title="Redo (Ctrl+Shift+Z)" ?disabled=${!set.future.length} @click=${() => set.redo()}>${ON}</button>
        <button type="button" class="count" aria-pressed=${pulse.on} aria-keyshortcuts="C" title="Count out loud (C)" @click=${() => this.desk.act('count')}>Count</button>
        ${set.shown || narrow ? nothing : html`<button type="button" @click=${() => set.show(true)}>Lay it out below</button>`}
        ${set.loop ? html`<button type="button" @click=${() => set.setLoop(null)}>Play all of it</button>` : nothing}
        <button type="button" data-as="mp4" ?disabled=${!set.known} @click=${() => set.take({ key: 'mp4', filmed: true })}>Save as a clip</button>
        <button type="button" data-as="pdf" ?disabled=${!set.known} @click=${() => set.take({ key: 'pdf', filmed: false })}>Save as a sheet</button>
      </p>
      ${set.saving ? savedLine(set.saving) : nothing}
      ${this.#files()}`;
  }

  // All that it can be taken away as beside the two above.
  #files() {
    const { set } = this.desk;
    const others = set.endings.filter(({ key, form, sung }) => key !== 'mp4' && form !== 'sheet' && (!sung || set.stands.song));
    return html`<details class="set-files" @toggle=${(/** @type {any} */ e) => e.target.open && set.lookEndings()}>
      <summary>Save as another file</summary>
      <ul>${others.map((one) => html`<li><button type="button" data-as=${one.form ?? one.key} ?disabled=${!set.known} @click=${() => set.take(one)}>${one.key.toUpperCase()}</button> <span>${one.words}</span></li>`)}</ul>
    </details>`;
  }

  // The song that it goes by, of those on the shelf.
  #song() {
    const { set, shelf } = this.desk;
    const { song } = set.stands;
    const gone = song && !shelf.songs.some((one) => one.id === song.id);
    return html`<p class="set-do set-counts set-song">
      ${shelf.songs.length || song
        ? html`<label>To the song <select @change=${(/** @type {any} */ e) => this.#sing(e.target.value)}>
            <option value="" .selected=${!song}>none</option>
            ${gone ? html`<option value=${song.id} .selected=${true}>${song.name}</option>` : nothing}
            ${shelf.songs.map((one) => html`<option value=${one.id} .selected=${song?.id === one.id}>${one.name}, ${lasting(one.seconds)}, ${Math.round(one.beats_per_min)} beats a minute</option>`)}</select></label>`
        : nothing}
      ${song
        ? html`<label>from beat <input type="number" min="1" max="40000" .value=${String((song.from_beat ?? 0) + 1)} @change=${(/** @type {any} */ e) => this.#fromBeat(song, e.target)}></label>`
        : nothing}
      <button type="button" class="link set-beats-of" @click=${() => this.desk.act('song')}>${shelf.songs.length ? 'Another song' : 'Spin it to a song'}</button></p>`;
  }

  /** @param {string} id */
  #sing(id) {
    const { set, shelf } = this.desk;
    const one = shelf.songs.find((listed) => listed.id === id);
    set.sing(one && { id, name: one.name });
  }

  /** @param {import('../state/set.js').Song} song @param {HTMLInputElement} field */
  #fromBeat(song, field) {
    const beat = Math.round(Number(field.value)) - 1;
    if (beat >= 0) this.desk.set.sing({ ...song, from_beat: beat });
    field.value = String((this.desk.set.stands.song?.from_beat ?? 0) + 1);
  }

  // What is chosen, and what can be done with it.
  #chosen() {
    const { set, player } = this.desk;
    const joint = set.joint === null ? undefined : set.laid.joints[set.at(set.joint)];
    if (joint) {
      const { blocks } = set.laid;
      const [text, tone] = tellOf(set);
      const grade = gradeOf(joint.said);
      return html`<section class="set-chosen" aria-label="Transition">
        <h2><span class="set-grade" data-grade=${grade}>${gradeSign(grade)} ${gradeWord(grade)}</span> ${nameOf(blocks[joint.after])} into ${nameOf(blocks[joint.after + 1])}</h2>
        ${text ? html`<p class="told" data-tone=${tone}>${text}</p>` : nothing}
        ${joint.said && !joint.said.none ? html`<p class="set-do"><button type="button" @click=${() => player.passage(joint)}>Play it</button></p>` : nothing}
      </section>`;
    }
    const i = set.at(set.chosen);
    return i < 0 ? nothing : html`<section class="set-chosen" aria-label="Chosen pattern"><h2>${nameOf(set.laid.blocks[i])}</h2>${this.#works(set.laid.blocks[i], i)}</section>`;
  }

  /** @param {Block} block @param {number} i */
  #works(block, i) {
    const { set, player, session } = this.desk;
    const { step, starts, seconds, said } = block;
    const by = (/** @type {number} */ way, /** @type {string} */ sign) => html`<button type="button" class="icon" aria-label="${way > 0 ? 'Eight counts longer' : 'Eight counts shorter'}"
      @click=${() => this.#stretch(step.key, way)}>${sign}</button>`;
    return html`
      ${cautions(block).map(({ told, kind }) => (told ? html`<p class="told" data-tone=${kind === 'danger' ? 'danger' : 'warn'}>${told}</p>` : nothing))}
      <p class="set-do set-counts">${by(-1, '−')}<label><span class="spoken">Counts of ${nameOf(block)}</span><input type="number" min="1" max="1000" .value=${String(step.counts)}
        @change=${(/** @type {any} */ e) => this.#counts(step.key, e.target)}> counts</label>${by(1, '+')}</p>
      <p class="set-do set-counts set-body"><button type="button" class="set-body-turn" aria-label="Turn of the body: ${turnSaid(step.turn?.turn_deg)}" title="A turn of the body: quarter, half, to the left, to the right, none (Z)" @click=${() => this.#turn(step.key)}>${step.turn ? html`${turnSign(step.turn.turn_deg)} ` : nothing}${step.turn ? capital(turnSaid(step.turn.turn_deg)) : 'Turn the body'}</button>${step.turn
        ? html`<label>on count<span class="spoken"> of ${nameOf(block)} on which the body turns</span> <input type="number" min="1" max=${step.counts} .value=${String(step.turn.count)} @change=${(/** @type {any} */ e) => this.#turnOn(step.key, e.target)}></label>`
        : nothing}</p>
      ${set.stands.song ? html`<p class="set-do set-counts set-beats"><label>a cycle lasts<span class="spoken">, of ${nameOf(block)},</span> <input type="number" min="1" max=${MOST_BEATS} placeholder=${set.known && said?.in_song ? trimmed(said.in_song.beats_a_cycle, 2) : ''} .value=${step.beats_a_cycle ? String(step.beats_a_cycle) : ''}
        @change=${(/** @type {any} */ e) => set.beat(step.key, Number(e.target.value) || 0)}> song beats</label></p>` : nothing}
      ${set.known && said?.in_song ? [said.in_song.told, ...said.in_song.asked].map((told) => html`<p class="told" data-tone=${told.tone ?? ''}>${told.text}</p>`) : nothing}
      ${step.turn && set.known ? (said?.turn?.told ?? []).map((told) => html`<p class="told" data-tone=${told.tone ?? ''}>${told.text}</p>`) : nothing}
      <p class="set-do">
        <button type="button" class="play-from" ?disabled=${!set.known} @click=${() => player.play(starts)}>Play from here</button>
        <button type="button" ?disabled=${!set.known} @click=${() => this.#loop(starts, starts + seconds)}>Loop it</button>
        ${said?.pattern || step.pattern ? html`<button type="button" @click=${() => this.#open(said?.pattern ?? step.pattern, step.id)}>Open it on the stage</button>` : nothing}
        ${session.pattern ? html`<button type="button" @click=${() => this.#replace(step.key)}>Put what is on the stage in its place</button>` : nothing}
        <button type="button" ?disabled=${i === 0} @click=${() => this.#move(step.key, i - 1)}>Sooner</button>
        <button type="button" ?disabled=${i === set.steps.length - 1} @click=${() => this.#move(step.key, i + 1)}>Later</button>
        <button type="button" @click=${() => this.desk.setLine.takeOut(step.key)}>Take it out</button>
      </p>`;
  }

  // One below the other, for thumbs -----------------------------------------------------------------------------------------------

  #rows() {
    const { set } = this.desk;
    const { blocks, joints } = set.laid;
    if (!blocks.length) return nothing;
    return html`<ol class="set-order" aria-label="Patterns in order">${repeat(blocks, (/** @type {Block} */ { step }) => step.key, (/** @type {Block} */ block, /** @type {number} */ i) => this.#row(block, i, joints[i]))}</ol>`;
  }

  /** @param {Block} block @param {number} i @param {Joint | undefined} joint */
  #row(block, i, joint) {
    const { set, player } = this.desk;
    const { step, said, starts } = block;
    const { key } = step;
    const chosen = set.chosen === key;
    const grade = gradeOf(joint?.said);
    const passing = joint && set.joint === key;
    const told = (joint?.said?.told ?? joint?.said?.none)?.text;
    const held = this.drag?.key === key;
    const drop = this.drag && this.#dropsOn() === i;
    return html`<li class="set-row ${chosen ? 'chosen' : ''} ${held ? 'held' : ''} ${drop ? (this.drag && this.drag.to > i ? 'drop-below' : 'drop-above') : ''}" data-key=${key} style=${held && this.drag ? `translate: 0 ${this.drag.by}px` : ''}>
      <div class="set-one">
        <button type="button" class="set-handle" aria-label="Carry ${nameOf(block)}, ${i + 1} of ${set.steps.length}; arrow keys move it" @pointerdown=${(/** @type {PointerEvent} */ e) => this.#carry(e, key)}
          @keydown=${(/** @type {KeyboardEvent} */ e) => this.#handleKey(e, key)}>${GRIP}</button>
        <button type="button" class="set-pick ${said?.missing ? 'missing' : ''}" aria-expanded=${chosen} @click=${() => (chosen ? set.choose(null) : this.#pick(key, starts))}>
          ${said?.moves ? html`<moving-thumb .moves=${said.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb>` : html`<span class="set-blank"></span>`}
          <span class="set-said"><b>${nameOf(block)}</b><small>${said?.missing ? '' : html`${minutes(starts)}, ${countsOf(block, set.known)}`}</small>${cautionSigns(cautions(block))}</span>
        </button>
        <button type="button" class="icon" aria-label="Eight counts shorter: ${nameOf(block)}" ?disabled=${step.counts <= 1} @click=${() => this.#stretch(key, -1)}>−</button>
        <button type="button" class="icon" aria-label="Eight counts longer: ${nameOf(block)}" @click=${() => this.#stretch(key, 1)}>+</button>
      </div>
      ${chosen ? html`<div class="set-works">${this.#works(block, i)}</div>` : nothing}
      ${joint
        ? html`<button type="button" class="set-into" data-grade=${grade} @click=${() => this.#pass(joint, key)}>${gradeSign(grade)}<span>${gradeWord(grade)}</span></button>
            ${passing && told ? html`<p class="set-works told">${told}${player.loading ? html` <span class="quiet">Getting ready …</span>` : nothing}</p>` : nothing}`
        : nothing}
    </li>`;
  }

  /** @param {number} key @param {number} starts */
  #pick(key, starts) {
    this.desk.set.choose(key);
    this.desk.player.seek(starts);
  }

  /** @param {Joint} joint @param {number} key */
  #pass(joint, key) {
    this.desk.set.chooseJoint(key);
    if (joint.said && !joint.said.none) this.desk.player.passage(joint);
  }

  #dropsOn() {
    return this.drag ? this.drag.to : -1;
  }

  /** @param {PointerEvent} event @param {number} key */
  #carry(event, key) {
    if (event.button > 0) return;
    event.preventDefault();
    const handle = /** @type {HTMLElement} */ (event.currentTarget);
    const list = /** @type {HTMLElement} */ (this.querySelector('.set-order'));
    const panel = /** @type {HTMLElement} */ (this.closest('.panels'));
    const from = event.clientY + panel.scrollTop;
    let y = event.clientY;
    const carried = () => {
      const middles = [...list.children].filter((row) => Number(/** @type {HTMLElement} */ (row).dataset.key) !== key).map((row) => {
        const box = /** @type {HTMLElement} */ (row.querySelector('.set-one')).getBoundingClientRect();
        return box.top + box.height / 2;
      });
      this.drag = { key, by: y + panel.scrollTop - from, to: middles.filter((middle) => middle < y).length };
      this.requestUpdate();
    };
    const edge = setInterval(() => {
      const box = panel.getBoundingClientRect();
      const pull = y < box.top + EDGE ? -10 : y > box.bottom - EDGE ? 10 : 0;
      if (!this.drag || !pull) return;
      panel.scrollTop += pull;
      carried();
    }, 16);
    follow(event, handle, (e) => {
      y = e.clientY;
      carried();
    }, (lifted) => {
      clearInterval(edge);
      const { drag } = this;
      this.drag = null;
      if (drag && lifted) this.#move(key, drag.to);
      this.requestUpdate();
    });
  }

  /** @param {KeyboardEvent} event @param {number} key */
  async #handleKey(event, key) {
    const by = { ArrowUp: -1, ArrowLeft: -1, ArrowDown: 1, ArrowRight: 1 }[event.key];
    if (!by && event.key !== 'Delete') return;
    event.preventDefault();
    event.stopPropagation();
    if (!by) {
      this.desk.setLine.takeOut(key);
      return;
    }
    this.#move(key, this.desk.set.at(key) + by);
    await this.updateComplete;
    /** @type {HTMLElement | null} */ (this.querySelector(`.set-row[data-key="${key}"] .set-handle`))?.focus();
  }

  // Changes -----------------------------------------------------------------------------------------------------------------------

  /** @param {number} key @param {number} to */
  #move(key, to) {
    this.#say(this.desk.moveInSet(key, to));
  }

  /** @param {string} text */
  #say(text) {
    if (!text) return;
    this.spoken = text;
    this.requestUpdate();
  }

  /** @param {number} key @param {number} way */
  #stretch(key, way) {
    const { set } = this.desk;
    set.stretchBy(key, way, set.steps[set.at(key)].counts < EIGHT);
    this.#say(lengthSaid(set, key));
  }

  /** @param {number} key @param {HTMLInputElement} field */
  #counts(key, field) {
    const { set } = this.desk;
    if (Number(field.value) >= 1) set.stretch(key, Number(field.value));
    field.value = String(set.steps[set.at(key)].counts);
    this.#say(lengthSaid(set, key));
  }

  /** @param {number} key */
  #turn(key) {
    const { set } = this.desk;
    set.turnOn(key);
    this.#say(turnOf(set, key));
  }

  /** @param {number} key @param {HTMLInputElement} field */
  #turnOn(key, field) {
    const { set } = this.desk;
    const { turn } = set.steps[set.at(key)];
    if (turn && Number(field.value) >= 1) set.turnBody(key, { ...turn, count: Number(field.value) });
    field.value = String(set.steps[set.at(key)].turn?.count ?? 1);
    this.#say(turnOf(set, key));
  }

  /** @param {number} from @param {number} to */
  #loop(from, to) {
    const { set, player } = this.desk;
    set.loop = { from, to };
    player.play(from);
  }

  /** @param {any} pattern @param {string | undefined} id */
  #open(pattern, id) {
    const { shelf, saving, session, stage } = this.desk;
    const listed = id ? shelf.patterns.find((p) => p.id === id) : undefined;
    if (listed) saving.open(listed);
    else session.open(pattern, { shelved: null, then: () => stage.frame() });
  }

  /** @param {number} key */
  #replace(key) {
    const { set } = this.desk;
    const standing = this.desk.standing();
    set.replace(key, standing);
    this.#say(`${standing.name} is in its place.`);
  }

  /** @param {Event} event */
  #save = async (event) => {
    event.preventDefault();
    const { set, notices } = this.desk;
    if (await set.save()) notices.say('Saved: ' + (set.name || 'Set'));
  };

  // The shelf to add from ---------------------------------------------------------------------------------------------------------

  #add() {
    const { shelf, session, set } = this.desk;
    const [{ patterns }] = shown(shelf.patterns, { find: this.find });
    return html`<h2 class="shelf-head">Add</h2>
      <p class="set-do"><button type="button" class="set-add-stage" aria-keyshortcuts="8" title="Put it into the set (8)" ?disabled=${!session.pattern} @click=${() => this.#addStanding()}>What is on the stage</button></p>
      ${shelf.patterns.length >= FEW
        ? html`<label class="spoken" for="set-find">Find on the shelf</label>
            <input id="set-find" class="set-find" type="text" autocomplete="off" placeholder="Find by name, phrase or label" .value=${this.find} @input=${this.#look}>`
        : nothing}
      ${shelf.patterns.length
        ? html`<ul class="finds set-cards" aria-label="Patterns to add">${repeat(patterns, (/** @type {Listed} */ p) => p.id, (/** @type {Listed} */ p) => html`<li>
            <button type="button" class="find set-card" title="Add ${p.name}" @click=${() => this.#addListed(p)}>
              <span class="set-thumb" data-id=${p.id} data-revision=${p.revision} aria-hidden="true"></span><span class="find-said"><span class="spoken">Add </span>${p.name}</span>
            </button></li>`)}</ul>
            ${patterns.length ? nothing : html`<p class="quiet">Nothing on the shelf says all of that.</p>`}`
        : html`<p class="quiet">Nothing is on the shelf yet: save patterns, and they can be picked here.</p>`}
      ${shelf.patterns.length > 1
        ? html`<form class="set-suggest" @submit=${this.#suggest}><label>Suggest <input type="number" min="2" max="100" .value=${String(this.suggested)}
            @change=${(/** @type {any} */ e) => (this.suggested = Math.max(2, Math.min(100, Math.round(Number(e.target.value)) || 6)))}> from the shelf, the hardest in the middle</label>
            <button type="submit" ?disabled=${!!set.suggesting}>Suggest</button></form>
            ${set.suggesting ? html`<p class="quiet" role="status">${set.suggesting} … <button type="button" class="link" @click=${() => set.stopSuggesting()}>Stop</button></p>` : nothing}`
        : nothing}`;
  }

  #addStanding() {
    const one = this.desk.standing();
    this.desk.set.add([one]);
    this.#added(one.name);
  }

  /** @param {Listed} listed */
  #addListed({ id, name }) {
    this.desk.set.add([{ id, name }]);
    this.#added(name);
  }

  /** @param {string} name */
  #added(name) {
    const { set } = this.desk;
    this.#say(`${name} is ${set.at(set.chosen) + 1} of ${set.steps.length}.`);
  }

  /** @param {Event} event */
  #look = (event) => {
    this.find = /** @type {HTMLInputElement} */ (event.target).value;
    this.requestUpdate();
  };

  /** @param {Event} event */
  #suggest = async (event) => {
    event.preventDefault();
    const { set, notices } = this.desk;
    const had = set.steps.length;
    if ((await set.suggest(this.suggested)) && had) notices.say('A new set stands here now', () => set.undo());
  };

  // Sets of the shelf, and a new one.
  #others() {
    const { shelf, set } = this.desk;
    const others = shelf.sets.filter((s) => s.id !== set.kept?.id);
    if (!others.length && !set.steps.length) return nothing;
    return html`<h2 class="shelf-head">Other sets</h2>
      <ul class="set-others">${others.map((s) => html`<li><button type="button" class="link set-other" @click=${() => this.#openSet(s)}>${s.name}</button>
        <button type="button" class="link" aria-label="Remove ${s.name}" @click=${() => this.#removeSet(s)}>Remove</button></li>`)}</ul>
      ${set.steps.length ? html`<p class="set-do"><button type="button" @click=${() => this.#new()}>Begin a new set</button></p>` : nothing}`;
  }

  /** @param {{ id: string, name: string }} other */
  async #openSet({ id, name }) {
    const { set, notices } = this.desk;
    const leaves = set.unsaved && set.steps.length;
    if ((await set.open(id)) && leaves) notices.say(name + ' is open; the one before was not saved', () => set.undo());
  }

  /** @param {{ id: string, name: string, revision: string }} other */
  async #removeSet(other) {
    const back = await this.desk.set.removeSaved(other);
    if (back) this.desk.notices.say('Removed: ' + other.name, back);
  }

  #new() {
    const { set, notices } = this.desk;
    const unsaved = set.unsaved;
    set.clear();
    if (unsaved) notices.say('A new set; the one before was not saved', () => set.undo());
  }

  // Pictures of what is near to being seen.
  updated() {
    for (const place of this.querySelectorAll('.set-thumb')) {
      if (this.watched.has(place)) continue;
      this.watched.add(place);
      this.watch.observe(place);
    }
    for (const place of this.watched) {
      if (place.isConnected) continue;
      this.watch.unobserve(place);
      this.watched.delete(place);
    }
  }

  /** @param {IntersectionObserverEntry} entry */
  async #seen({ target, isIntersecting }) {
    const place = /** @type {HTMLElement} */ (target);
    const { id = '', revision = '' } = place.dataset;
    if (!isIntersecting || place.firstChild) return;
    const moves = await this.desk.shelf.moves(id, revision).catch(() => null);
    if (!moves || place.firstChild) return;
    const thumb = /** @type {import('../stage/thumb.js').MovingThumb} */ (document.createElement('moving-thumb'));
    const card = place.closest('.set-card');
    if (card) thumb.under = card;
    thumb.moves = moves;
    place.append(thumb);
  }
}

const BACK = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M8 4 4 8l4 4M4 8h7a5 5 0 0 1 0 10H8" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round" stroke-linejoin="round"/></svg>`;
const ON = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="m12 4 4 4-4 4M16 8H9a5 5 0 0 0 0 10h3" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round" stroke-linejoin="round"/></svg>`;
const GRIP = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M4 7h12M4 10h12M4 13h12" fill="none" stroke="currentColor" stroke-width="1.6" stroke-linecap="round"/></svg>`;

/** @param {string} text */
const capital = (text) => text[0].toUpperCase() + text.slice(1);

customElements.define('set-list', SetList);
