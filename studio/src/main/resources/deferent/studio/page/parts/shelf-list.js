import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';

/** The saved patterns. Removing can be undone; saving over somebody else's change asks first. */
class ShelfList extends Part {
  connect(desk) {
    super.connect(desk);
    desk.shelf.addEventListener('state', () => this.soon());
  }

  render() {
    const { session, shelf } = this.desk;
    const name = session.shelved ? session.shelved.name : '';
    return html`
      <form class="save" @submit=${this.#save}>
        <label for="save-name">Name</label>
        <div class="save-row">
          <input id="save-name" type="text" maxlength="120" autocomplete="off" placeholder=${session.answer ? session.answer.phrase || session.answer.name : 'name of the pattern'} .value=${this.typed ?? name}
            @input=${(e) => (this.typed = e.target.value)}>
          <button type="submit" class="primary" ?disabled=${!session.pattern}>${session.shelved ? 'Save' : 'Save as new'}</button>
        </div>
        ${session.shelved
          ? html`<p class="quiet">Saves over <em>${session.shelved.name}</em>. <button type="button" class="link" @click=${() => this.desk.saving.save({ copy: true, name: this.#name() })}>Save as a new pattern instead</button></p>`
          : html`<p class="quiet">Patterns are files in your shelf folder.</p>`}
      </form>
      ${this.#conflict()}
      ${shelf.problem ? html`<p class="told" data-tone="warn">${sentence(shelf.problem)}</p>` : nothing}
      <ul class="shelf" aria-label="Shelf">
        ${repeat(shelf.patterns, (p) => p.id, (p) => this.#card(p))}
      </ul>
      ${shelf.patterns.length ? nothing : html`<p class="quiet">Nothing saved yet.</p>`}
      ${this.#motions()}
      ${this.#notListed()}`;
  }

  // One quiet line; unfolded, each file of the folder that is not on the shelf with what keeps it off.
  #notListed() {
    const others = this.desk.shelf.notListed;
    if (!others.length) return nothing;
    return html`<details class="not-listed quiet">
      <summary>${others.length === 1 ? 'One file' : others.length + ' files'} in the folder ${others.length === 1 ? 'is' : 'are'} not on the shelf</summary>
      <ul>${others.map((n) => html`<li><b>${n.file}</b>: ${n.why}</li>`)}</ul>
    </details>`;
  }

  #card(pattern) {
    const theme = document.documentElement.dataset.theme;
    const open = this.desk.session.shelved && this.desk.session.shelved.id === pattern.id;
    if (this.renaming === pattern.id) {
      return html`<li class="card"><form class="rename" @submit=${(e) => this.#rename(e, pattern)}>
        <label class="spoken" for="rename">New name of ${pattern.name}</label>
        <input id="rename" type="text" maxlength="120" .value=${pattern.name} @keydown=${(e) => e.key === 'Escape' && this.#stopRenaming()}>
        <button type="submit" class="primary">Rename</button> <button type="button" @click=${() => this.#stopRenaming()}>Leave it</button></form></li>`;
    }
    return html`
      <li class="card ${open ? 'open' : ''}" data-id=${pattern.id}>
        <button type="button" class="card-open" @click=${() => this.desk.saving.openShelved(pattern)} aria-current=${open ? 'true' : 'false'}>
          <img alt="" width="72" height="72" loading="lazy" src="api/shelf/${encodeURIComponent(pattern.id)}/thumbnail?theme=${theme}&revision=${encodeURIComponent(pattern.revision)}">
          <span class="card-words"><b>${pattern.name}</b><span>${pattern.phrase && pattern.phrase !== pattern.name ? pattern.phrase : pattern.note || ''}</span>${pattern.disagrees ? html`<span>${pattern.disagrees}</span>` : nothing}</span>
        </button>
        <span class="card-verbs">
          <button type="button" class="link" aria-label="Rename ${pattern.name}" @click=${() => this.#startRenaming(pattern)}>Rename</button>
          <button type="button" class="link" aria-label="Remove ${pattern.name}" @click=${() => this.desk.saving.remove(pattern)}>Remove</button>
        </span>
      </li>`;
  }

  // Motions under names of the user's own, which phrases can say.
  #motions() {
    const { session, shelf } = this.desk;
    const pairing = session.pattern && session.pattern.pairing;
    return html`
      <h2 class="shelf-head">Motions of your own</h2>
      <p class="quiet">Give a hand’s motion a name, and phrases can say it.</p>
      ${pairing
        ? html`<form class="name-motion" @submit=${this.#nameMotion}>
            <label class="spoken" for="motion-side">Whose motion</label>
            <select id="motion-side">${['left', 'right'].map((side) => html`<option value=${side} ?disabled=${pairing[side].hand.path === 'riding'}>${side} hand</option>`)}</select>
            <label class="spoken" for="motion-name">Its name</label>
            <input id="motion-name" type="text" maxlength="60" required placeholder="a name to say" autocomplete="off">
            <button type="submit">Name it</button>
          </form>`
        : nothing}
      ${shelf.motions.length
        ? html`<ul class="shelf" aria-label="Named motions">${repeat(shelf.motions, (m) => m.id, (m) => html`<li class="card motion"><span class="card-words"><b>${m.name}</b><span>${m.note || ''}</span></span>
            <span class="card-verbs"><button type="button" class="link" aria-label="Remove ${m.name}" @click=${() => this.desk.saving.removeMotion(m)}>Remove</button></span></li>`)}</ul>`
        : nothing}`;
  }

  async #nameMotion(event) {
    event.preventDefault();
    const name = this.querySelector('#motion-name').value.trim();
    if (!name) return;
    await this.desk.saving.nameMotion(this.querySelector('#motion-side').value, name);
    this.querySelector('#motion-name').value = '';
  }

  #conflict() {
    const conflict = this.desk.saving.conflict;
    if (!conflict) return nothing;
    return html`<div class="conflict" role="alert">
      <p><b>${conflict.name}</b> was changed elsewhere since you opened it. Nothing of either is lost; say which to keep.</p>
      <button type="button" @click=${() => this.desk.saving.settleConflict('copy')}>Keep both: save mine as a new pattern</button>
      <button type="button" @click=${() => this.desk.saving.settleConflict('theirs')}>Open the other one</button>
      <button type="button" @click=${() => this.desk.saving.settleConflict('mine')}>Save mine over it</button>
    </div>`;
  }

  #name() {
    return (this.typed ?? '').trim();
  }

  #save(event) {
    event.preventDefault();
    this.desk.saving.save({ name: this.#name() });
    this.typed = undefined;
  }

  #startRenaming(pattern) {
    this.renaming = pattern.id;
    this.requestUpdate();
    this.updateComplete.then(() => this.querySelector('#rename').select());
  }

  #stopRenaming() {
    this.renaming = null;
    this.requestUpdate();
  }

  async #rename(event, pattern) {
    event.preventDefault();
    const name = this.querySelector('#rename').value.trim();
    this.renaming = null;
    if (name && name !== pattern.name) await this.desk.saving.rename(pattern, name);
    this.requestUpdate();
  }
}

customElements.define('shelf-list', ShelfList);
