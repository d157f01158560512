// The checking page: facts and scan tied together, and every act one key. Without this script the page works by forms.

import { ScanView } from "./viewer.js";

const facts = document.getElementById("facts");
const tools = document.querySelector(".tools");
tools.hidden = false; // before the scan is fitted into what room they leave
const scan = new ScanView(document.getElementById("scan"));
let current = null;

const boxOf = (element) => element.dataset.box.split(",").map(Number);
const cardOf = (name) => facts.querySelector(`[data-fact="${CSS.escape(name)}"]`);

function go(card, focus = true) {
  if (!card) return;
  facts.querySelector(".card.current")?.classList.remove("current");
  card.classList.add("current");
  current = card.dataset.fact;
  scan.mark(current);
  scan.show(boxOf(card));
  if (focus) {
    card.focus({ preventScroll: true });
    card.scrollIntoView({ block: "nearest" });
  }
}

function step(by) {
  const cards = [...facts.querySelectorAll(".card[data-fact]")];
  const at = cards.findIndex((card) => card.dataset.fact === current);
  go(cards[Math.min(cards.length - 1, Math.max(0, at + by))]);
}

function remark() {
  facts.querySelectorAll("button.draw").forEach((button) => { button.hidden = false; });
  scan.marks.querySelectorAll("[data-fact], .pointed-out").forEach((each) => each.remove());
  const area = (card) => boxOf(card)[2] * boxOf(card)[3];
  // a small place lies over the large one around it, or no pointer would reach it
  const cards = [...facts.querySelectorAll(".card[data-fact]")].sort((one, other) => area(other) - area(one));
  for (const card of cards) {
    const [x, y, width, height] = boxOf(card);
    const rect = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    rect.setAttribute("class", card.classList.contains("advert") ? `advert ${statusOf(card)}` : `offer ${statusOf(card)}`);
    rect.dataset.fact = card.dataset.fact;
    Object.entries({ x, y, width, height }).forEach(([name, value]) => rect.setAttribute(name, String(value)));
    scan.marks.append(rect);
  }
}

const statusOf = (card) => ["read", "confirmed", "corrected", "rejected"].find((s) => card.classList.contains(s)) ?? "";

// One act at a time: a key pressed while one is being saved waits for it, and then counts for the fact that is next.
let busy = false;
const waiting = [];

async function send(form) {
  busy = true;
  try {
    await post(form);
  } catch (error) {
    say(`Not saved: the desk does not answer (${error.message}).`);
  }
  busy = false;
  if (waiting.length) press(waiting.shift());
}

function say(text) {
  const place = document.getElementById("said");
  if (place) place.textContent = text;
}

async function post(form) {
  const answer = await fetch(form.action, {
    method: "POST",
    body: new URLSearchParams(new FormData(form)),
    headers: { "x-part": "facts" },
  });
  const text = await answer.text();
  if (!answer.headers.get("content-type")?.includes("text/html")) {
    say(text || "It did not work.");
    return;
  }
  if (answer.status === 422) {
    // what was typed stays in the form; only the sentence changes
    say(new DOMParser().parseFromString(text, "text/html").getElementById("said")?.textContent ?? "Not saved.");
    return;
  }
  show(text, answer.headers.get("x-next"));
}

function show(text, next) {
  const read = new DOMParser().parseFromString(text, "text/html");
  facts.replaceChildren(...read.body.childNodes);
  remark();
  const drawn = document.getElementById("drawn");
  if (drawn) {
    scan.pointOut(boxOf(drawn));
    drawn.scrollIntoView({ block: "nearest" });
    drawn.querySelector("input:not([type=hidden])")?.focus();
    return;
  }
  const card = next ? cardOf(next) : facts.querySelector(".rest a, .card");
  if (card?.dataset.fact) go(card);
  else card?.focus();
}

function drawInto(form) {
  say("Draw on the scan by dragging, or with arrow keys (Shift for its size), then Enter. Escape gives up.");
  scan.draw((box) => {
    if (!box) {
      say("Nothing was drawn.");
      go(cardOf(current ?? ""));
      return;
    }
    ["x", "y", "w", "h"].forEach((name, n) => { form.elements[name].value = String(box[n]); });
    say("Reading the box.");
    send(form);
  });
}

facts.addEventListener("submit", (event) => {
  const form = event.target;
  if (form.method !== "post") return;
  event.preventDefault();
  send(form);
});
facts.addEventListener("focusin", (event) => {
  const card = event.target.closest(".card[data-fact]");
  if (card && card.dataset.fact !== current) go(card, false);
});
facts.addEventListener("pointerover", (event) => {
  const place = event.target.closest("[data-box]");
  const card = event.target.closest(".card[data-fact]");
  if (card) scan.mark(card.dataset.fact);
  if (place && place !== card) scan.mark(card?.dataset.fact ?? "");
});
facts.addEventListener("pointerleave", () => scan.mark(current ?? ""));
facts.addEventListener("click", (event) => {
  if (event.target.closest("button.draw")) drawInto(event.target.closest("form"));
  const card = event.target.closest(".card[data-fact]");
  if (card && !event.target.closest("button, input, select, a, summary")) go(card, false);
});
scan.marks.addEventListener("pointerover", (event) => {
  const name = event.target.dataset?.fact;
  for (const card of facts.querySelectorAll(".card[data-fact]")) card.classList.toggle("pointed", card.dataset.fact === name);
});
scan.onpick = (name) => go(cardOf(name));

// Single keys count only while the hand is on the facts, so that speech and typing elsewhere set nothing off.
facts.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.target.closest("input, select, textarea")) {
    if (event.key === "Escape") go(event.target.closest(".card[data-fact]") ?? cardOf(current ?? ""));
    return;
  }
  if (press(event.key)) event.preventDefault();
});

function press(key) {
  const card = cardOf(current ?? "");
  const named = `form[data-key="${CSS.escape(key)}"]`;
  const form = card?.querySelector(named) ?? facts.querySelector(`.slip ${named}`);
  const known = form || "cxunjpked]".includes(key);
  if (busy && known) waiting.push(key);
  else if (form && !form.querySelector("button").disabled) send(form);
  else if (key === "n" || key === "j") step(1);
  else if (key === "p" || key === "k") step(-1);
  else if (key === "e" && card) {
    const edit = card.querySelector("details.edit");
    edit.open = true;
    edit.querySelector("input:not([type=hidden])").focus();
  } else if (key === "d") drawNew();
  else if (key === "]") facts.querySelector('a[rel="next"]')?.click();
  return Boolean(known);
}

function drawNew() {
  const form = facts.querySelector('form[action$="/read-box"]');
  drawInto(form);
}

tools.addEventListener("click", (event) => {
  const tool = event.target.closest("button")?.dataset.tool;
  if (tool === "in") scan.zoom(1.4);
  if (tool === "out") scan.zoom(1 / 1.4);
  if (tool === "fit") scan.fit();
  if (tool === "draw") drawNew();
});

remark();
const query = new URLSearchParams(location.search);
go(cardOf(query.get("fact") ?? "") || facts.querySelector(".card[data-fact]"));
const place = query.get("box")?.split(",").map(Number);
if (place?.length === 4 && place.every(Number.isFinite)) scan.pointOut(place);
