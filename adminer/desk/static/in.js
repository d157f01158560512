// Dropped files and folders go up with the form; the progress is asked for while something is being read.

const drop = document.getElementById("drop");
const said = document.getElementById("in-said");
document.getElementById("folder-choice").hidden = false;

async function filesOf(entry) {
  if (entry.isFile) return [await new Promise((done, failed) => entry.file(done, failed))];
  const reader = entry.createReader();
  const files = [];
  for (;;) {
    const part = await new Promise((done, failed) => reader.readEntries(done, failed));
    if (!part.length) return files;
    for (const each of part) files.push(...(await filesOf(each)));
  }
}

for (const name of ["dragover", "dragleave", "drop"]) {
  drop.addEventListener(name, (event) => {
    event.preventDefault();
    drop.classList.toggle("over", name === "dragover");
  });
}
drop.addEventListener("drop", (event) => {
  bring(event).catch((error) => { said.textContent = `Not brought in: the desk does not answer (${error.message}).`; });
});

async function bring(event) {
  const entries = [...event.dataTransfer.items].map((item) => item.webkitGetAsEntry()).filter(Boolean);
  const body = new FormData();
  for (const entry of entries) for (const file of await filesOf(entry)) body.append("scans", file);
  said.textContent = "Bringing them in.";
  const answer = await fetch(drop.action, { method: "POST", body });
  if (answer.ok) location.reload();
  else {
    const read = new DOMParser().parseFromString(await answer.text(), "text/html");
    said.textContent = read.getElementById("in-said")?.textContent ?? "No scan was taken in.";
    document.querySelector(".refused")?.remove();
    const refused = read.querySelector(".refused");
    if (refused) said.after(refused);
  }
}

document.getElementById("main").addEventListener("change", (event) => {
  if (event.target.id !== "all") return;
  document.querySelectorAll('#notes input[name="file"]').forEach((box) => { box.checked = event.target.checked; });
});

const place = () => document.getElementById("progress");
const busy = (state) => ["reading", "building", "pausing"].includes(state);

// When the reading ends, what it changed on this page is put in, unless a hand is in it.
async function renew() {
  // a refused form stands under the address it was sent to
  const answer = await fetch(location.pathname === "/in" ? location.href : "/in");
  const read = new DOMParser().parseFromString(await answer.text(), "text/html");
  document.getElementById("reading").replaceWith(read.getElementById("reading"));
  const scans = document.getElementById("scans");
  const typed = [...scans.querySelectorAll("input")].some((each) => (each.type === "checkbox" ? each.checked : each.value));
  if (!typed && !scans.contains(document.activeElement)) scans.replaceWith(read.getElementById("scans"));
}

async function look() {
  const answer = await fetch("/in/progress");
  if (!answer.ok) return;
  const read = new DOMParser().parseFromString(await answer.text(), "text/html");
  const before = place().dataset.state;
  place().dataset.state = answer.headers.get("x-state");
  place().replaceChildren(...read.body.childNodes);
  if (busy(before) && !busy(place().dataset.state)) await renew();
}

async function ask() {
  await look().catch(() => {}); // the page is being left, or the desk does not answer now; it is asked again
  if (busy(place().dataset.state)) setTimeout(ask, 700);
}
if (busy(place().dataset.state)) setTimeout(ask, 500);
