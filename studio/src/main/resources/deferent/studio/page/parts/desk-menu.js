import { html } from 'lit';
import { Part } from './part.js';
import './cord-tools.js';
import './stage-tools.js';
import './time-tools.js';
import './verbs.js';

const THEMES = { auto: 'As the system', dark: 'Dark', light: 'Light' };

/** All that is rare, two presses away: the one menu, which opens where the drawer does. */
class DeskMenu extends Part {
  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    this.updateComplete.then(() => {
      for (const part of this.querySelectorAll('cord-tools, stage-tools, time-tools, pattern-verbs')) /** @type {Part} */ (part).connect(desk);
    });
  }

  render() {
    const { desk } = this;
    /** @type {(act: Parameters<import("../main.js").Desk["act"]>[0], text: string, key: string, means: string) => unknown} */
    const line = (act, text, key, means) => html`<button type="button" class="menu-line" title=${means} aria-keyshortcuts=${key.replace('Ctrl ', 'Control+').replace('Shift ', 'Shift+')}
      @click=${() => desk.act(act)}><span>${text}</span><kbd aria-hidden="true">${key}</kbd></button>`;
    return html`
      <section class="block menu-lines" aria-label="Page">
        ${line('save', 'Save', 'P', 'Save on the shelf (Ctrl S too)')}
        ${line('share', 'Share', 'Y', 'The file that fits where it goes')}
        ${line('take', 'Save as a file', 'E', 'Pictures, sheets, clips and pages of it')}
        ${line('film', 'Watch a film', 'I', 'What is off in a film of practice')}
        ${line('song', 'Beats of a song', 'Shift I', 'Finds them, so that a set can go by them')}
        ${line('practice', 'Practice over the weeks', 'U', 'The log, and how much closer it came')}
        ${line('learn', 'An order to learn in', 'Shift U', 'Its drills, and the days they take')}
        ${line('words', 'Words', 'W', 'What a phrase can say')}
        ${line('lesson', 'Lesson look', 'J', 'Large, mirrored and counted, for students')}
        ${line('guide', 'Guide and keys', '?', 'The guide in pictures, and every key of the page')}
      </section>
      <section class="block"><h2>Pattern</h2><pattern-verbs></pattern-verbs></section>
      <section class="block"><h2>Cord</h2><cord-tools></cord-tools></section>
      <section class="block"><h2>Stage</h2><stage-tools></stage-tools></section>
      <section class="block"><h2>Time</h2><time-tools></time-tools></section>
      <section class="block">
        <h2>Colours</h2>
        <fieldset class="choice">
          <legend class="spoken">Colours of the page</legend>
          ${Object.entries(THEMES).map(
            ([theme, says]) => html`<label><input type="radio" name="theme" value=${theme} .checked=${desk.theme === theme} @change=${() => desk.setTheme(theme)}><span>${says}</span></label>`,
          )}
        </fieldset>
      </section>
      <section class="block">
        <h2>Take care</h2>
        <button type="button" class="cautions-again" @click=${() => desk.mindCautions(true)}>Show the cautions</button>
      </section>
      <p class="quiet about">Deferent: the circle that carries a smaller circle, as a hand carries its poi.</p>`;
  }
}

customElements.define('desk-menu', DeskMenu);
