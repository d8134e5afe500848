import { html, nothing } from 'lit';
import { Part } from './part.js';

/** @type {[how: 'aloud' | 'click' | 'not', says: string][]} */
const COUNTED = [['aloud', 'Count aloud'], ['click', 'Click'], ['not', 'Silent']];

/** In the look for students: the pattern's name, mirrored or not, counted or not, and the way out. */
class LessonBar extends Part {
  render() {
    const { lesson, pulse, session } = this.desk;
    if (!lesson.on) return nothing;
    const danger = (session.answer?.readings.told || []).some((/** @type {{ tone: string }} */ t) => t.tone === 'danger');
    return html`
      <p class="lesson-name">${lesson.name}</p>
      ${danger ? html`<p class="lesson-danger">!! Danger: not as it stands. Leave the lesson look to read why.</p>` : nothing}
      <div class="lesson-tools">
        <label class="lesson-mirror"><input type="checkbox" .checked=${lesson.mirrored} @change=${(/** @type {any} */ e) => lesson.mirror(e.target.checked)}> Mirrored</label>
        <fieldset class="choice">
          <legend class="spoken">How it is counted</legend>
          ${COUNTED.map(
            ([how, says]) => html`<label title=${how === 'aloud' && !pulse.voice ? 'No voice here: it clicks' : says}><input type="radio" name="counted" value=${how}
              .checked=${lesson.counted === how} @change=${() => lesson.count(how)}><span>${says}</span></label>`,
          )}
        </fieldset>
        <button type="button" class="lesson-leave" title="Leave the lesson look (J)" aria-keyshortcuts="J" @click=${() => lesson.turn(false)}>Leave</button>
      </div>`;
  }
}

customElements.define('lesson-bar', LessonBar);
