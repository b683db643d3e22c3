// Comfort only: the page does all its work without this file.
"use strict";
(function () {
  const form = document.querySelector("form.paste");
  if (!form) return;
  const box = form.querySelector("textarea");
  const file = form.querySelector("input[type=file]");
  const said = document.getElementById("said");
  const largest = Number(form.dataset.largest) * 1024 * 1024;

  function say(text) {
    said.textContent = text;
  }

  function look() {
    const chosen = file.files[0];
    if (!chosen) return;
    if (chosen.size > largest) {
      say("“" + chosen.name + "” is larger than " + form.dataset.largest + " MB. Keep the last boot of it.");
      file.value = "";
    } else {
      say("“" + chosen.name + "” will be read.");
    }
  }

  form.addEventListener("dragover", function (event) {
    event.preventDefault();
    form.classList.add("over");
  });
  form.addEventListener("dragleave", function () {
    form.classList.remove("over");
  });
  form.addEventListener("drop", function (event) {
    form.classList.remove("over");
    if (event.dataTransfer.files.length) {
      event.preventDefault();
      file.files = event.dataTransfer.files;
      look();
    }
  });
  file.addEventListener("change", look);
  form.addEventListener("submit", function (event) {
    if (!box.value.trim() && !file.files.length) {
      event.preventDefault();
      say("There is nothing to read yet. Paste the text or choose a file.");
      box.focus();
    } else {
      say("Reading …");
    }
  });
})();
(function () {
  if (!navigator.clipboard) return;
  document.querySelectorAll("textarea[data-copy]").forEach(function (area) {
    const button = document.createElement("button");
    const line = document.createElement("p");
    button.type = "button";
    button.textContent = "Copy";
    line.className = "copy";
    line.append(button);
    area.after(line);
    button.addEventListener("click", function () {
      navigator.clipboard.writeText(area.value).then(
        function () { button.textContent = "Copied"; },
        function () { area.select(); }
      );
    });
  });
})();

(function () {
  const box = document.querySelector("form.find input[type=search]");
  const list = document.getElementById("suggestions");
  if (!box || !list) return;
  let waiting = 0;
  let last = "";

  async function suggest() {
    const typed = box.value.trim();
    if (typed.length < 2 || typed === last) return;
    last = typed;
    try {
      const answer = await fetch("/api/suggest?q=" + encodeURIComponent(typed.slice(0, 200)));
      if (!answer.ok || box.value.trim() !== typed) return;
      const found = (await answer.json()).suggestions;
      list.replaceChildren(
        ...found.map(function (text) {
          const option = document.createElement("option");
          option.value = text;
          return option;
        })
      );
    } catch (e) {
      // Without suggestions the search works just as well.
    }
  }

  box.addEventListener("input", function () {
    clearTimeout(waiting);
    waiting = setTimeout(suggest, 150);
  });
})();

(function () {
  const form = document.querySelector("form.editor");
  if (!form) return;
  const text = document.getElementById("text");
  const place = document.getElementById("problems");
  let waiting = 0;
  let number = 0;

  function show(problems) {
    const title = document.createElement("h3");
    title.textContent = problems.length ? "What is wrong with the text" : "The text has no problems";
    const list = document.createElement("ul");
    problems.forEach(function (problem) {
      const item = document.createElement("li");
      if (problem.grave) item.className = "grave";
      const where = document.createElement("strong");
      where.textContent = problem.place;
      item.append(where, " " + problem.message);
      if (problem.excerpt) {
        const excerpt = document.createElement("pre");
        excerpt.textContent = problem.excerpt;
        item.append(excerpt);
      }
      if (problem.advice) {
        const advice = document.createElement("span");
        advice.className = "hint";
        advice.textContent = problem.advice;
        item.append(advice);
      }
      list.append(item);
    });
    place.replaceChildren(title, list);
  }

  async function check() {
    const asked = ++number;
    const body = new URLSearchParams();
    ["token", "file", "from", "text"].forEach(function (name) {
      body.set(name, form.elements[name].value);
    });
    try {
      const answer = await fetch(form.dataset.check, { method: "POST", body: body });
      if (answer.ok && !answer.redirected && asked === number) show((await answer.json()).problems);
    } catch (error) {
      // Without an answer the list stays; the button does the same.
    }
  }

  text.addEventListener("input", function () {
    clearTimeout(waiting);
    waiting = setTimeout(check, 700);
  });
})();
