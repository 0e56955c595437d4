"use strict";
(() => {
  const named = (id) => document.getElementById(id);
  const filled = (words, parts) => words.replace(/\{(\w+)\}/g, (whole, name) => parts[name] ?? whole);
  const folded = (text) => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();

  const looking = named("_looking"), search = named("_search"), goal = named("_goal");
  const chapters = [...document.querySelectorAll(".chapter")];
  const entries = [...document.querySelectorAll("article")].map((article) => ({
    article,
    text: folded(article.querySelector(".text").textContent + " " +
      article.querySelector(".particulars dl").textContent + " " + article.dataset.family),
    goals: article.dataset.goals.trim().split(" "),
    tick: article.querySelector(".tick input"),
  }));

  const picked = (name) =>
    [...looking.querySelectorAll(`[name="${name}"]:checked`)].map((box) => box.value);

  function look() {
    const words = folded(search.value).split(/\s+/).filter(Boolean);
    const families = picked("family"), levels = picked("level");
    let shown = 0;
    for (const { article, text, goals } of entries) {
      const fits = words.every((word) => text.includes(word)) &&
        (!families.length || families.includes(article.dataset.family)) &&
        (!levels.length || levels.includes(article.dataset.level)) &&
        (!goal.value || goals.includes(goal.value));
      article.hidden = !fits;
      shown += fits;
    }
    for (const chapter of chapters) {
      chapter.hidden = !chapter.querySelector("article:not([hidden])");
    }
    named("_none").hidden = shown > 0;
    const counted = named("_counted");
    counted.textContent = filled(counted.dataset.words, { shown, all: entries.length });
  }

  function choose() {
    const ticked = entries.filter((entry) => entry.tick.checked);
    const chosen = named("_chosen");
    named("_choice").hidden = !ticked.length;
    chosen.textContent = filled(chosen.dataset.words, { count: ticked.length });
    named("_lines").value = ticked.map((entry) => entry.tick.value).join("\n");
    named("_said").textContent = "";
  }

  async function copy() {
    const lines = named("_lines"), { done, byHand } = named("_copy").dataset;
    let copied = true;
    try {
      await navigator.clipboard.writeText(lines.value);
    } catch {
      lines.select();
      copied = document.execCommand("copy");
    }
    named("_said").textContent = copied ? done : byHand;
  }

  function drop() {
    const first = entries.find((entry) => entry.tick.checked);
    for (const { tick } of entries) tick.checked = false;
    choose();
    first?.tick.focus();
  }

  /* What is wider than its place is scrolled by key too; nothing else is a stop on the way. */
  function reach() {
    for (const wide of document.querySelectorAll("details[open] :is(.equations, .wide)")) {
      if (wide.scrollWidth > wide.clientWidth) wide.tabIndex = 0;
      else wide.removeAttribute("tabindex");
    }
  }

  function open() {
    const article = named(decodeURIComponent(location.hash.slice(1)));
    if (article?.localName !== "article") return;
    if (article.hidden) {
      looking.reset();
      look();
    }
    article.querySelector("details").open = true;
    article.scrollIntoView();
  }

  looking.addEventListener("input", look);
  looking.addEventListener("reset", () => setTimeout(look));
  looking.addEventListener("submit", (event) => event.preventDefault());
  for (const { article, tick } of entries) {
    tick.addEventListener("change", choose);
    tick.parentElement.hidden = false;
    article.querySelector("details").addEventListener("toggle", reach);
    article.querySelector("h3 a").addEventListener("click", () => setTimeout(open));
  }
  named("_copy").addEventListener("click", copy);
  named("_drop").addEventListener("click", drop);
  addEventListener("hashchange", open);
  addEventListener("resize", reach);
  looking.hidden = false;
  look();
  choose();
  open();
})();
