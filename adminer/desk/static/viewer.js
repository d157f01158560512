// The scan on the table: moved and brought nearer by mouse, finger or key; pictures come in tiles as they are needed.
// A box drawn here is given to whoever asked for it, in pixels of the scan.

const NS = "http://www.w3.org/2000/svg";

export class ScanView {
  constructor(frame) {
    this.frame = frame;
    this.id = frame.dataset.id;
    this.width = Number(frame.dataset.width);
    this.height = Number(frame.dataset.height);
    this.levels = Number(frame.dataset.levels);
    this.tile = Number(frame.dataset.tile);
    this.sheet = frame.querySelector(".sheet");
    this.marks = frame.querySelector("svg");
    this.layer = document.createElement("div");
    this.layer.className = "tiles";
    this.sheet.insertBefore(this.layer, this.marks);
    this.tiles = new Map();
    this.pointers = new Map();
    this.onpick = () => {};
    this.ondraw = null;
    frame.classList.add("live");
    this.sheet.style.width = `${this.width}px`;
    this.sheet.style.height = `${this.height}px`;
    this.listen();
    this.fit();
    new ResizeObserver(() => this.place()).observe(frame);
  }

  fit() {
    this.scale = Math.min(this.frame.clientWidth / this.width, this.frame.clientHeight / this.height) || 0.1;
    this.x = (this.frame.clientWidth - this.width * this.scale) / 2;
    this.y = (this.frame.clientHeight - this.height * this.scale) / 2;
    this.place();
  }

  place() {
    this.scale = Math.min(8, Math.max(0.02, this.scale));
    const keep = 60; // some of the scan always stays in sight
    this.x = Math.min(this.frame.clientWidth - keep, Math.max(keep - this.width * this.scale, this.x));
    this.y = Math.min(this.frame.clientHeight - keep, Math.max(keep - this.height * this.scale, this.y));
    this.sheet.style.transform = `translate(${this.x}px, ${this.y}px) scale(${this.scale})`;
    cancelAnimationFrame(this.pending);
    this.pending = requestAnimationFrame(() => this.fetchTiles());
  }

  fetchTiles() {
    const sharp = this.scale * window.devicePixelRatio;
    const level = Math.min(this.levels - 1, Math.max(0, Math.floor(Math.log2(1 / sharp))));
    const span = this.tile * 2 ** level;
    const first = (start) => Math.max(0, Math.floor(-start / this.scale / span));
    const last = (start, seen, whole) => Math.floor(Math.min(whole - 1, (seen - start) / this.scale) / span);
    const wanted = new Set();
    for (let row = first(this.y); row <= last(this.y, this.frame.clientHeight, this.height); row += 1) {
      for (let column = first(this.x); column <= last(this.x, this.frame.clientWidth, this.width); column += 1) {
        const name = `${level}/${column}/${row}`;
        wanted.add(name);
        if (!this.tiles.has(name)) this.addTile(name, level, column * span, row * span, span);
      }
    }
    for (const [name, picture] of this.tiles) {
      const settled = [...wanted].every((each) => this.tiles.get(each).complete);
      if (!wanted.has(name) && (settled || this.tiles.size > 300)) {
        picture.remove();
        this.tiles.delete(name);
      }
    }
  }

  addTile(name, level, left, top, span) {
    const picture = new Image();
    picture.alt = "";
    picture.draggable = false;
    picture.style.left = `${left}px`;
    picture.style.top = `${top}px`;
    picture.style.width = `${Math.min(span, this.width - left)}px`;
    picture.style.height = `${Math.min(span, this.height - top)}px`;
    picture.style.zIndex = String(this.levels - level);
    picture.onload = () => this.fetchTiles();
    picture.src = `/scan/${this.id}/tile/${name}.jpg`;
    this.tiles.set(name, picture);
    this.layer.append(picture);
  }

  zoom(factor, atX = this.frame.clientWidth / 2, atY = this.frame.clientHeight / 2) {
    const scale = Math.min(8, Math.max(0.02, this.scale * factor));
    this.x = atX - ((atX - this.x) * scale) / this.scale;
    this.y = atY - ((atY - this.y) * scale) / this.scale;
    this.scale = scale;
    this.place();
  }

  // Bring a box into sight, near enough to read, and no nearer than it has grain.
  show([x, y, w, h]) {
    const [seenW, seenH] = [this.frame.clientWidth, this.frame.clientHeight];
    const largest = Math.min((seenW * 0.94) / w, (seenH * 0.8) / h, 2);
    const left = x * this.scale + this.x;
    const top = y * this.scale + this.y;
    const inSight = left >= 0 && top >= 0 && left + w * this.scale <= seenW && top + h * this.scale <= seenH;
    const readable = this.scale >= Math.min(largest, 0.7);
    if (inSight && readable) return;
    this.scale = readable && this.scale <= largest ? this.scale : Math.min(largest, Math.max(this.scale, 0.8));
    // in the middle, but for what would show more of the table than of the scan
    const along = (seen, whole, middle) => {
      const start = seen / 2 - middle * this.scale;
      const room = seen - whole * this.scale;
      return room >= 0 ? room / 2 : Math.min(0, Math.max(room, start));
    };
    this.x = along(seenW, this.width, x + w / 2);
    this.y = along(seenH, this.height, y + h / 2);
    this.place();
  }

  // Bring a place into sight that is no fact, and frame it.
  pointOut(box) {
    this.marks.querySelector(".pointed-out")?.remove();
    const rect = document.createElementNS(NS, "rect");
    rect.setAttribute("class", "rubber pointed-out");
    ["x", "y", "width", "height"].forEach((name, n) => rect.setAttribute(name, String(box[n])));
    this.marks.append(rect);
    this.show(box);
  }

  mark(name) {
    for (const each of this.marks.querySelectorAll("[data-fact]")) {
      each.classList.toggle("current", each.dataset.fact === name);
    }
  }

  point(event) {
    const frame = this.frame.getBoundingClientRect();
    return [event.clientX - frame.left, event.clientY - frame.top];
  }

  onScan([x, y]) {
    const within = (value, whole) => Math.min(whole, Math.max(0, Math.round(value)));
    return [within((x - this.x) / this.scale, this.width), within((y - this.y) / this.scale, this.height)];
  }

  // Ask for a box: by dragging, or by keys on a frame that starts in the middle. Escape gives up.
  draw(done) {
    this.ondraw = done;
    this.frame.classList.add("drawing");
    const [left, top] = this.onScan([this.frame.clientWidth * 0.3, this.frame.clientHeight * 0.4]);
    const [right, bottom] = this.onScan([this.frame.clientWidth * 0.7, this.frame.clientHeight * 0.6]);
    this.drawn = [left, top, Math.max(8, right - left), Math.max(8, bottom - top)];
    this.rubber = document.createElementNS(NS, "rect");
    this.rubber.setAttribute("class", "rubber");
    this.marks.append(this.rubber);
    this.showRubber();
    this.frame.focus();
  }

  showRubber() {
    ["x", "y", "width", "height"].forEach((name, n) => this.rubber.setAttribute(name, String(this.drawn[n])));
  }

  endDraw(keep) {
    const done = this.ondraw;
    this.ondraw = null;
    this.rubber.remove();
    this.frame.classList.remove("drawing");
    done(keep && this.drawn[2] > 3 && this.drawn[3] > 3 ? this.drawn : null);
  }

  listen() {
    const frame = this.frame;
    frame.addEventListener("wheel", (event) => {
      event.preventDefault();
      this.zoom(Math.exp(-event.deltaY / 400), ...this.point(event));
    }, { passive: false });
    frame.addEventListener("pointerdown", (event) => {
      if (event.target.closest("button")) return;
      this.pointers.set(event.pointerId, this.point(event));
      this.moved = 0;
      this.from = this.onScan(this.point(event));
      this.dragging = this.ondraw !== null;
    });
    frame.addEventListener("pointermove", (event) => this.move(event));
    const up = (event) => {
      if (!this.pointers.delete(event.pointerId)) return;
      if (this.dragging && this.moved > 6) this.endDraw(true);
      else if (this.moved <= 6 && !this.ondraw && event.type === "pointerup") {
        const hit = document.elementFromPoint(event.clientX, event.clientY);
        if (hit && hit.dataset.fact) this.onpick(hit.dataset.fact);
      }
      this.dragging = false;
    };
    frame.addEventListener("pointerup", up);
    frame.addEventListener("pointercancel", up);
    frame.addEventListener("dblclick", (event) => this.zoom(2, ...this.point(event)));
    frame.addEventListener("keydown", (event) => this.key(event));
  }

  move(event) {
    const before = this.pointers.get(event.pointerId);
    if (!before) return;
    const now = this.point(event);
    this.moved += Math.abs(now[0] - before[0]) + Math.abs(now[1] - before[1]);
    if (this.moved > 6) this.frame.setPointerCapture(event.pointerId);
    if (this.dragging) {
      const to = this.onScan(now);
      const [left, top] = [Math.min(this.from[0], to[0]), Math.min(this.from[1], to[1])];
      this.drawn = [left, top, Math.abs(this.from[0] - to[0]), Math.abs(this.from[1] - to[1])];
      this.showRubber();
    } else if (this.pointers.size === 2) {
      const [other] = [...this.pointers].filter(([id]) => id !== event.pointerId).map(([, place]) => place);
      const far = ([x, y]) => Math.hypot(x - other[0], y - other[1]);
      this.zoom(far(now) / Math.max(1, far(before)), (now[0] + other[0]) / 2, (now[1] + other[1]) / 2);
    } else {
      this.x += now[0] - before[0];
      this.y += now[1] - before[1];
      this.place();
    }
    this.pointers.set(event.pointerId, now);
  }

  key(event) {
    const arrows = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    if (this.ondraw && event.key === "Enter") this.endDraw(true);
    else if (this.ondraw && event.key === "Escape") this.endDraw(false);
    else if (arrows[event.key] && this.ondraw) {
      const step = Math.max(1, Math.round(12 / this.scale));
      const [x, y] = arrows[event.key].map((way) => -way * step);
      if (event.shiftKey) this.drawn = [this.drawn[0], this.drawn[1], this.drawn[2] + x, this.drawn[3] + y];
      else this.drawn = [this.drawn[0] + x, this.drawn[1] + y, this.drawn[2], this.drawn[3]];
      this.showRubber();
    } else if (arrows[event.key]) {
      this.x += arrows[event.key][0] * 60;
      this.y += arrows[event.key][1] * 60;
      this.place();
    } else if (event.key === "+" || event.key === "=") this.zoom(1.4);
    else if (event.key === "-") this.zoom(1 / 1.4);
    else if (event.key === "0") this.fit();
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
}
