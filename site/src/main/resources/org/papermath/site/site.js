/* Search over all pages, and filters of long tables. The pages can be read without it. */
(function () {
  "use strict";
  var MOST = 25;

  function words(text) {
    return text.toLowerCase().split(/[\s,;]+/).filter(Boolean);
  }

  function element(name, text, parent) {
    var made = document.createElement(name);
    made.textContent = text;
    parent.appendChild(made);
    return made;
  }

  /* ---------------------------------------------------------------- search */

  var form = document.getElementById("search");
  var field = document.getElementById("seek");
  var found = document.getElementById("found");

  function withIndex(then) {
    if (window.papermathIndex) {
      then(window.papermathIndex);
      return;
    }
    var script = document.createElement("script");
    script.src = "search-index.js";
    script.onload = function () { then(window.papermathIndex); };
    document.head.appendChild(script);
  }

  function score(entry, wanted) {
    var head = entry.h.toLowerCase();
    var text = entry.t.toLowerCase();
    var sum = 0;
    for (var i = 0; i < wanted.length; i++) {
      var word = wanted[i];
      var inHead = head.indexOf(word) >= 0;
      var at = text.indexOf(word);
      if (!inHead && at < 0) {
        return 0;
      }
      sum += (inHead ? 20 : 0) + (at >= 0 ? 2 + Math.min(6, text.split(word).length) : 0);
    }
    return sum;
  }

  function excerpt(entry, wanted, parent) {
    var text = entry.t;
    var at = text.toLowerCase().indexOf(wanted[0]);
    var from = at < 60 ? 0 : text.lastIndexOf(" ", at - 50) + 1;
    var part = (from > 0 ? "… " : "") + text.substr(from, 180) + (from + 180 < text.length ? " …" : "");
    var span = element("span", "", parent);
    var low = part.toLowerCase();
    var done = 0;
    while (done < part.length) {
      var next = -1;
      var length = 0;
      for (var i = 0; i < wanted.length; i++) {
        var place = low.indexOf(wanted[i], done);
        if (place >= 0 && (next < 0 || place < next)) {
          next = place;
          length = wanted[i].length;
        }
      }
      if (next < 0) {
        break;
      }
      span.appendChild(document.createTextNode(part.slice(done, next)));
      element("mark", part.slice(next, next + length), span);
      done = next + length;
    }
    span.appendChild(document.createTextNode(part.slice(done)));
  }

  function show(index) {
    var wanted = words(field.value);
    found.textContent = "";
    found.hidden = !wanted.length;
    if (!wanted.length) {
      return;
    }
    var hits = index.map(function (entry) { return { entry: entry, score: score(entry, wanted) }; })
      .filter(function (hit) { return hit.score > 0; })
      .sort(function (a, b) { return b.score - a.score; });
    element("p", hits.length === 0 ? "Nothing has all of these words."
      : hits.length > MOST ? hits.length + " places; the first " + MOST + " are shown."
        : hits.length === 1 ? "One place." : hits.length + " places.", found);
    var list = element("ol", "", found);
    hits.slice(0, MOST).forEach(function (hit) {
      var item = element("li", "", list);
      var link = element("a", hit.entry.p + (hit.entry.h === hit.entry.p ? "" : " › " + hit.entry.h), item);
      link.href = hit.entry.u;
      link.addEventListener("click", function () { found.hidden = true; });
      excerpt(hit.entry, wanted, item);
    });
  }

  if (form && field && found) {
    form.hidden = false;
    field.addEventListener("input", function () { withIndex(show); });
    form.addEventListener("submit", function (event) {
      event.preventDefault();
      withIndex(show);
    });
    field.addEventListener("keydown", function (event) {
      if (event.key === "Escape") {
        field.value = "";
        withIndex(show);
      }
    });
  }

  /* --------------------------------------------------------------- filters */

  var LONG = 25;

  /* Hides the headings under which nothing is left. */
  function headings(items) {
    var within = items[0].parentNode;
    var heading = null;
    Array.prototype.forEach.call(within.children, function (one) {
      if (one.tagName === "H2") {
        heading = one;
        heading.hidden = true;
      } else if (heading && !one.hidden) {
        heading.hidden = false;
      }
    });
  }

  function filter(before, items, what) {
    var box = document.createElement("div");
    box.className = "filter";
    var label = element("label", "Filter " + what + " ", box);
    var input = document.createElement("input");
    input.type = "search";
    label.appendChild(input);
    var count = element("span", items.length + " of " + items.length, box);
    count.setAttribute("role", "status");
    input.addEventListener("input", function () {
      var wanted = words(input.value);
      var left = 0;
      items.forEach(function (item) {
        var text = item.textContent.toLowerCase();
        var fits = wanted.every(function (word) { return text.indexOf(word) >= 0; });
        item.hidden = !fits;
        left += fits ? 1 : 0;
      });
      headings(items);
      count.textContent = left + " of " + items.length;
    });
    before.parentNode.insertBefore(box, before);
  }

  document.querySelectorAll(".wide").forEach(function (wide) {
    var table = wide.querySelector("table");
    if (table.classList.contains("members")) {
      return;
    }
    var rows = Array.prototype.filter.call(table.querySelectorAll("tbody tr"), function (row) {
      return row.querySelector("td");
    });
    if (rows.length > LONG) {
      filter(wide, rows, "these " + rows.length + " rows");
    }
  });
  var questions = Array.prototype.slice.call(document.querySelectorAll(".question"));
  if (questions.length > LONG) {
    filter(document.querySelector(".questions"), questions, "the questions");
  }
  var terms = Array.prototype.slice.call(document.querySelectorAll(".words > div"));
  if (terms.length > LONG) {
    filter(document.querySelector(".words"), terms, "the words");
  }

  /* ------------------------------------------- boxes that need no scrolling */

  function stops() {
    document.querySelectorAll(".wide, pre").forEach(function (box) {
      if (box.scrollWidth > box.clientWidth) {
        box.tabIndex = 0;
      } else {
        box.removeAttribute("tabindex");
      }
    });
  }

  stops();
  window.addEventListener("resize", stops);
})();
