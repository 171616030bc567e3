// Everything here is a convenience: each page reads, filters and scales without it.
"use strict";
document.documentElement.classList.add("has-script");

// An address that names a place inside a closed part opens it, also where the browser does not.
(() => {
  const open = () => {
    const drawer = document.getElementById(decodeURIComponent(location.hash.slice(1)))?.closest("details");
    if (drawer) drawer.open = true;
  };
  addEventListener("hashchange", open);
  open();
})();

// Search and the count on the index.
(() => {
  const cards = [...document.querySelectorAll("#cards > .card")];
  const form = document.querySelector("form.sieve");
  if (!form || !cards.length) return;
  const find = form.querySelector("#find");
  const count = document.getElementById("count");
  const none = document.getElementById("none-left");
  const fold = (text) => text.toLowerCase().normalize("NFD").replace(/[\u0300-\u036f]/g, "");
  const words = cards.map((card) => fold(card.textContent + " " + card.dataset.words));
  const tokens = cards.map((card) => new Set(card.dataset.is.split(" ")));
  const sift = () => {
    const asked = fold(find.value).split(/\s+/).filter(Boolean);
    const chosen = [...form.querySelectorAll("input[type=radio]:checked, input[type=checkbox]:checked")].map((i) => i.value).filter((v) => !v.startsWith("any-"));
    let left = 0;
    cards.forEach((card, i) => {
      const stays = asked.every((word) => words[i].includes(word)) && chosen.every((token) => tokens[i].has(token));
      if (card.hidden === stays) card.hidden = !stays;
      left += stays;
    });
    none.hidden = left > 0;
    count.textContent = left === 1 ? "1 recipe" : left + " recipes";
  };
  // Letters typed faster than the screen is drawn are looked for once.
  let waiting = 0;
  form.addEventListener("input", (event) => {
    if (event.target !== find) return sift();
    cancelAnimationFrame(waiting);
    waiting = requestAnimationFrame(sift);
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    sift();
    find.blur(); // a phone's keyboard goes away and shows what was found
  });
  if (location.hash.startsWith("#find=")) find.value = decodeURIComponent(location.hash.slice(6));
  sift();
})();

// Timers: one line in the title and in a live region when time is up; no sound unless the page may play one.
(() => {
  const running = new Map();
  const clock = (s) => Math.floor(s / 60) + ":" + String(s % 60).padStart(2, "0");
  const live = document.createElement("p");
  live.className = "seen-not";
  live.setAttribute("role", "status");
  document.body.append(live);
  const title = document.title;
  const tick = () => {
    for (const [button, run] of running) {
      const left = Math.max(0, Math.round((run.end - Date.now()) / 1000));
      button.textContent = left ? clock(left) + " left, tap to stop" : "Time is up: try the squash test";
      if (!left) {
        running.delete(button);
        delete button.dataset.on;
        button.dataset.done = "";
        live.textContent = "Time is up for step " + button.dataset.step + ".";
        document.title = "Time is up · " + title;
        if (navigator.vibrate) navigator.vibrate([200, 100, 200]);
      }
    }
    if (running.size) setTimeout(tick, 250);
  };
  for (const button of document.querySelectorAll(".timer")) {
    const label = button.textContent;
    button.addEventListener("click", () => {
      document.title = title;
      if (running.delete(button)) {
        delete button.dataset.on;
        button.textContent = label;
        return;
      }
      delete button.dataset.done;
      button.dataset.on = "";
      running.set(button, { end: Date.now() + 1000 * Number(button.dataset.seconds) });
      live.textContent = "Timer runs for step " + button.dataset.step + ".";
      if (running.size === 1) tick();
    });
  }
})();

// The film: chapters are found in the player, from the list or from an address with ?t=seconds.
(() => {
  const film = document.getElementById("film-itself");
  if (!film) return;
  const go = (seconds) => {
    film.currentTime = seconds;
    film.play().catch(() => {}); // a browser may refuse to start by itself; the place is found all the same
  };
  for (const link of document.querySelectorAll("a[data-at]")) {
    link.addEventListener("click", (event) => {
      event.preventDefault();
      film.focus();
      go(Number(link.dataset.at));
    });
  }
  const asked = Number(new URLSearchParams(location.search).get("t"));
  if (asked > 0) {
    film.preload = "metadata";
    film.scrollIntoView();
    go(asked);
  }
})();
