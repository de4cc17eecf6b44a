// What a page keeps of one lane. Everything is bounded: an hour at five moments a second, 20 km at a cell a metre.
const MOMENTS = 18000;
const CELLS = 20000;
const DROP = 1800;
export const NOTHING = 255;
export const TOLD = ["t", "x", "h", "rate", "p", "cv"];

/** Numbers by moment, the oldest dropped when full; can be cut back to a number and go on from there. */
class Track {
  constructor(names) {
    this.names = names;
    this.columns = Object.fromEntries(names.map((name) => [name, new Float32Array(MOMENTS)]));
    this.clear();
  }

  clear() {
    this.base = 0;
    this.n = 0;
  }

  cutTo(number) {
    if (number < this.base) {
      this.base = number;
      this.n = 0;
    } else {
      this.n = Math.min(this.n, number - this.base);
    }
    if (this.n === 0) this.base = number;
  }

  add(moment) {
    if (this.n === MOMENTS) {
      for (const name of this.names) this.columns[name].copyWithin(0, DROP, MOMENTS);
      this.n -= DROP;
      this.base += DROP;
    }
    for (const name of this.names) this.columns[name][this.n] = moment[name] ?? NaN;
    this.n++;
  }

  last(name) {
    return this.n ? this.columns[name][this.n - 1] : null;
  }
}

/** Bytes by metre of way; a ring, so that a long drive overwrites its beginning. */
class Ground {
  constructor(rows) {
    this.rows = rows;
    this.cells = new Uint8Array(CELLS * rows).fill(NOTHING);
    this.end = 0;
  }

  put(fromM, toM, bytes) {
    const first = Math.max(0, Math.floor(fromM) + 1, Math.floor(toM) - CELLS + 1);
    for (let cell = Math.min(first, Math.floor(toM)); cell <= toM; cell++) this.cells.set(bytes, (cell % CELLS) * this.rows);
    this.end = Math.max(this.end, Math.floor(toM) + 1);
  }

  cutTo(m) {
    const keep = Math.max(0, Math.floor(m) + 1);
    for (let cell = keep; cell < this.end; cell++) this.cells.fill(NOTHING, (cell % CELLS) * this.rows, (cell % CELLS + 1) * this.rows);
    this.end = Math.min(this.end, keep);
  }

  /** Where the bytes of a cell begin in {@code cells}; -1 where nothing is known of it. */
  from(cell) {
    return cell < 0 || cell >= this.end || cell < this.end - CELLS ? -1 : (cell % CELLS) * this.rows;
  }

  at(cell, row) {
    const from = this.from(cell);
    return from < 0 ? NOTHING : this.cells[from + row];
  }
}

export class Lane {
  constructor(name) {
    this.name = name;
    this.about = null;
    this.live = null;
    this.told = new Track(TOLD);
    this.truth = new Track(TOLD);
    this.parts = new Ground(3);
    this.rows = null;
    this.bytes = null;
    this.row0 = 0;
    this.picture = null;
    this.before = null;
    this.pictureAt = 0;
    this.version = 0;
  }

  describe(about) {
    this.about = about;
    this.picture = this.before = null;
  }

  hearTold(chunk) {
    this.told.cutTo(chunk.from);
    let x = this.told.last("x") ?? -1;
    this.parts.cutTo(x);
    for (const moment of chunk.moments) {
      this.told.add(moment);
      this.parts.put(x, moment.x, moment.parts.length === 3 ? moment.parts.map((cv) => (cv === null ? NOTHING : Math.min(250, Math.round(cv * 250)))) : [NOTHING, NOTHING, NOTHING]);
      x = moment.x;
    }
    this.version++;
  }

  hearTruth(chunk) {
    this.truth.cutTo(chunk.from);
    let x = this.truth.last("x") ?? -1;
    this.rows?.cutTo(x);
    for (const moment of chunk.moments) {
      const text = atob(moment.rows);
      this.rows ??= new Ground(text.length);
      const bytes = (this.bytes ??= new Uint8Array(this.rows.rows));
      for (let i = 0; i < bytes.length; i++) bytes[i] = text.charCodeAt(i);
      this.row0 = moment.row0;
      this.truth.add(moment);
      this.rows.put(x, moment.x, bytes);
      x = moment.x;
    }
    this.version++;
  }

  /** Forgets the truth: hidden means that it is not here. */
  hide() {
    this.truth.clear();
    this.rows = this.bytes = null;
    this.picture = this.before = null;
    this.version++;
  }

  hearPicture(picture) {
    this.before = this.picture && this.picture.lands.length === picture.lands.length ? this.picture : picture;
    this.picture = picture;
    this.pictureAt = performance.now();
  }
}
