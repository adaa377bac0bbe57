'use strict';
(function () {
  var rows = new Map();
  document.querySelectorAll('tr[data-link]').forEach(function (row) { rows.set(row.dataset.link, row); });
  var builds = Array.from(document.querySelectorAll('#builds tbody tr'));
  // A point is drawn twice: for wide screens and for narrow ones.
  var spots = new Map();
  function each(link, change) { (spots.get(link) || []).forEach(change); }

  function near(figure, spot, tip) {
    var frame = figure.getBoundingClientRect();
    var at = spot.getBoundingClientRect();
    var left = at.left - frame.left + figure.scrollLeft + at.width + 6;
    if (left + tip.offsetWidth > frame.width) { left = Math.max(0, left - at.width - tip.offsetWidth - 12); }
    tip.style.left = left + 'px';
    tip.style.top = Math.max(0, at.top - frame.top - tip.offsetHeight - 4) + 'px';
  }

  document.querySelectorAll('.curve').forEach(function (section) {
    var figure = section.querySelector('figure');
    var tip = document.createElement('div');
    tip.className = 'tip';
    tip.hidden = true;
    tip.setAttribute('aria-hidden', 'true');
    figure.appendChild(tip);

    function show(spot) {
      var row = rows.get(spot.dataset.link);
      spot.classList.add('on');
      if (row) { row.classList.add('on'); }
      tip.textContent = spot.getAttribute('aria-label');
      tip.hidden = false;
      near(figure, spot, tip);
    }
    function hide(spot) {
      var row = rows.get(spot.dataset.link);
      spot.classList.remove('on');
      if (row) { row.classList.remove('on'); }
      tip.hidden = true;
    }
    figure.querySelectorAll('svg').forEach(function (drawing) { enliven(Array.from(drawing.querySelectorAll('.spot[data-link]')), show, hide, tip); });
  });

  function enliven(points, show, hide, tip) {
    // One stop for the tabulator; arrows go from point to point.
    function move(to) {
      points.forEach(function (spot) { spot.setAttribute('tabindex', spot === to ? '0' : '-1'); });
      to.focus();
    }
    points.forEach(function (spot, index) {
      spots.set(spot.dataset.link, (spots.get(spot.dataset.link) || []).concat(spot));
      // The words are shown at once, so the browser's own slow hint is not needed.
      var title = spot.querySelector('title');
      if (title) { title.remove(); }
      spot.setAttribute('tabindex', index === 0 ? '0' : '-1');
      spot.addEventListener('mouseenter', function () { show(spot); });
      spot.addEventListener('mouseleave', function () { hide(spot); });
      spot.addEventListener('focus', function () { show(spot); });
      spot.addEventListener('blur', function () { hide(spot); });
      spot.addEventListener('click', function () {
        var row = rows.get(spot.dataset.link);
        if (row) { row.scrollIntoView({ block: 'center' }); }
      });
      spot.addEventListener('keydown', function (event) {
        var to = { ArrowRight: index + 1, ArrowUp: index + 1, ArrowLeft: index - 1, ArrowDown: index - 1, Home: 0, End: points.length - 1 }[event.key];
        if (event.key === 'Escape') { tip.hidden = true; }
        if (event.key === 'Enter') { spot.dispatchEvent(new MouseEvent('click')); }
        if (to !== undefined) {
          event.preventDefault();
          move(points[Math.max(0, Math.min(points.length - 1, to))]);
        }
      });
    });
  }
  rows.forEach(function (row, link) {
    row.addEventListener('mouseenter', function () { each(link, function (spot) { spot.classList.add('on'); }); });
    row.addEventListener('mouseleave', function () { each(link, function (spot) { spot.classList.remove('on'); }); });
  });

  // Sorting: empty cells last, whichever way.
  function value(row, column) {
    var cell = row.cells[column];
    var text = cell.dataset.sort === undefined ? cell.textContent : cell.dataset.sort;
    return text === '' ? null : isNaN(Number(text)) ? text : Number(text);
  }
  document.querySelectorAll('#tools').forEach(function () {
    document.querySelectorAll('.curve table').forEach(function (table) {
      var heads = Array.from(table.tHead.rows[0].cells);
      heads.forEach(function (head, column) {
        var button = document.createElement('button');
        button.type = 'button';
        button.append.apply(button, Array.from(head.childNodes));
        head.appendChild(button);
        button.addEventListener('click', function () {
          var up = head.getAttribute('aria-sort') !== 'ascending';
          heads.forEach(function (other) { other.removeAttribute('aria-sort'); });
          head.setAttribute('aria-sort', up ? 'ascending' : 'descending');
          var body = table.tBodies[0];
          Array.from(body.rows).sort(function (one, other) {
            var a = value(one, column);
            var b = value(other, column);
            if (a === null || b === null) { return (a === null ? 1 : 0) - (b === null ? 1 : 0); }
            var order = typeof a === 'string' || typeof b === 'string' ? String(a).localeCompare(String(b)) : a - b;
            return up ? order : -order;
          }).forEach(function (row) { body.appendChild(row); });
        });
      });
    });
  });

  // Searching: a point stays if its row and its build hold every word between them, and a build if such a point is its or it holds every word.
  function told(row) { return row.textContent.toLowerCase(); }
  var tools = document.getElementById('tools');
  if (tools) {
    var label = document.createElement('label');
    label.textContent = tools.dataset.search + ' ';
    var field = document.createElement('input');
    field.type = 'search';
    field.placeholder = tools.dataset.hint;
    label.appendChild(field);
    var count = document.createElement('span');
    count.setAttribute('role', 'status');
    tools.append(label, count);
    field.addEventListener('input', function () {
      var words = field.value.toLowerCase().split(/\s+/).filter(function (word) { return word !== '' && word !== 'x'; });
      var left = 0;
      var texts = new Map();
      builds.forEach(function (row) { texts.set(row.id, told(row)); });
      function holds(text) { return words.every(function (word) { return text.includes(word); }); }
      var kept = new Set(builds.filter(function (row) { return holds(texts.get(row.id)); }).map(function (row) { return row.id; }));
      rows.forEach(function (row, link) {
        var build = 'build-' + row.dataset.build;
        var stays = holds(told(row) + ' ' + texts.get(build));
        left += stays ? 1 : 0;
        row.hidden = !stays;
        if (stays) { kept.add(build); }
        each(link, function (spot) { spot.classList.toggle('out', !stays); });
      });
      builds.forEach(function (row) { row.hidden = !kept.has(row.id); });
      var found = [left, rows.size, kept.size, builds.length];
      count.textContent = words.length === 0 ? '' : found.reduce(function (text, number) { return text.replace('%s', number); }, tools.dataset.found);
    });
  }
}());
