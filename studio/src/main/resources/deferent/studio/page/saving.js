// What goes to the shelf and comes from it, with a word to say so and a way back.

export class Saving {
  /** @param {import('./main.js').Desk} desk */
  constructor(desk) {
    this.desk = desk;
    /** What was changed elsewhere since it was opened, until somebody says which of the two is to stand. */
    this.conflict = null;
  }

  /** Saves over the pattern it was opened from, or as a new one. */
  async save({ name = '', copy = false }) {
    const { session, shelf } = this.desk;
    if (!session.pattern) return;
    const over = copy ? null : session.shelved;
    const called = name || (over ? over.name : session.answer.phrase || session.answer.name);
    const id = over ? over.id : shelf.freeId(called);
    const pattern = { ...session.pattern, name: called };
    try {
      const revision = await shelf.put(id, pattern, over ? over.revision : null);
      session.shelved = { id, revision, name: called };
      this.conflict = null;
      this.desk.notices.say('Saved: ' + called);
    } catch (problem) {
      if (problem.status === 412) {
        await shelf.refresh();
        if (!over) return this.save({ name: called, copy: true });
        this.conflict = { id, name: over.name, pattern, called };
      } else {
        this.desk.complain(problem);
      }
    }
    session.dispatchEvent(new Event('state'));
  }

  async settleConflict(how) {
    const { id, pattern, called } = this.conflict;
    this.conflict = null;
    if (how === 'copy') {
      await this.save({ name: called + ', mine', copy: true });
    } else {
      const standing = this.desk.shelf.patterns.find((p) => p.id === id);
      if (!standing) await this.save({ name: called, copy: true });
      else if (how === 'theirs') await this.openShelved(standing);
      else {
        this.desk.session.shelved = { id, revision: standing.revision, name: called };
        await this.save({ name: pattern.name });
      }
    }
    this.desk.session.dispatchEvent(new Event('state'));
  }

  async openShelved({ id, name }) {
    try {
      const { pattern, revision } = await this.desk.shelf.load(id);
      this.desk.session.open(pattern, { shelved: { id, revision, name }, then: () => this.desk.stage.frame() });
    } catch (problem) {
      this.desk.complain(problem);
    }
  }

  /** Puts one hand's motion on the shelf under a name that phrases can then say. */
  async nameMotion(side, name) {
    const { hand, spin, tether_m } = this.desk.session.pattern.pairing[side];
    try {
      await this.desk.shelf.add({ format: 1, kind: 'motion', name, hand, spin, tether_m });
      this.desk.notices.say('Named: ' + name + '; say it in a phrase');
    } catch (problem) {
      this.desk.complain(problem);
    }
  }

  /** Puts what a seek has found on the shelf. */
  async saveFound(answer) {
    const { seek } = this.desk;
    if (!answer || seek.saved.has(answer.key)) return;
    seek.saved.add(answer.key);
    try {
      await this.desk.shelf.add(answer.pattern);
      this.desk.notices.say('Saved: ' + answer.said);
    } catch (problem) {
      seek.saved.delete(answer.key);
      this.desk.complain(problem);
    }
    seek.dispatchEvent(new Event('state'));
  }

  async removeMotion({ id, name, revision }) {
    try {
      const { pattern } = await this.desk.shelf.load(id);
      await this.desk.shelf.remove(id, revision);
      this.desk.notices.say('Removed: ' + name, () => this.desk.shelf.put(id, pattern, null).catch((problem) => this.desk.complain(problem)));
    } catch (problem) {
      this.desk.complain(problem);
      this.desk.shelf.refresh();
    }
  }

  async rename({ id }, name) {
    try {
      const { pattern, revision } = await this.desk.shelf.load(id);
      const next = await this.desk.shelf.put(id, { ...pattern, name }, revision);
      if (this.desk.session.shelved?.id === id) this.desk.session.shelved = { id, revision: next, name };
    } catch (problem) {
      if (problem.status === 412) this.desk.notices.say('It was changed elsewhere just now; try once more.');
      else this.desk.complain(problem);
      this.desk.shelf.refresh();
    }
  }

  async remove({ id, name }) {
    try {
      const { pattern, revision } = await this.desk.shelf.load(id);
      await this.desk.shelf.remove(id, revision);
      if (this.desk.session.shelved?.id === id) this.desk.session.shelved = null;
      this.desk.notices.say('Removed: ' + name, async () => {
        try {
          await this.desk.shelf.put(id, pattern, null);
        } catch (problem) {
          if (problem.status === 412) await this.desk.shelf.put(this.desk.shelf.freeId(name), pattern, null);
          else this.desk.complain(problem);
        }
      });
    } catch (problem) {
      this.desk.complain(problem);
      this.desk.shelf.refresh();
    }
    this.desk.session.dispatchEvent(new Event('state'));
  }
}
