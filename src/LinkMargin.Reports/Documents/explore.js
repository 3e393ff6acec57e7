(() => {
  'use strict';
  const data = JSON.parse(document.getElementById('explore-data').textContent);
  const canvas = document.getElementById('explore-map'), said = document.getElementById('explore-said');
  const spots = document.getElementById('explore-spot'), levels = document.getElementById('explore-level');
  const pen = canvas.getContext('2d');
  const none = -32768, metresPerFoot = 0.3048;

  for (const field of data.fields) {
    const bytes = atob(field.tenths);
    field.values = new Int16Array(bytes.length / 2);
    for (let i = 0; i < field.values.length; i++) {
      field.values[i] = bytes.charCodeAt(2 * i) | (bytes.charCodeAt(2 * i + 1) << 8);
    }
  }

  const fill = (list, items, chosen) => items.forEach((item, i) => {
    const option = document.createElement('option');
    option.value = String(i);
    option.textContent = item.name;
    option.selected = i === chosen;
    list.append(option);
  });
  fill(spots, data.spots, data.spot);
  fill(levels, data.levels, data.level);

  const shown = () => data.fields.find(f => f.spot === Number(spots.value) && f.level === Number(levels.value));
  const colourOf = db => {
    let colour = data.colours[0][1];
    for (const [from, hex] of data.colours) {
      if (db >= from) colour = hex;
    }
    return colour;
  };

  let field, scale, pointed = null;
  const toX = x => (x - field.origin[0]) * scale, toY = y => (field.rows * field.cell - (y - field.origin[1])) * scale;
  const valueAt = (column, row) => column >= 0 && row >= 0 && column < field.columns && row < field.rows
    ? field.values[row * field.columns + column] : none;

  function draw() {
    field = shown();
    if (!field) return;
    const ratio = window.devicePixelRatio || 1;
    const room = canvas.parentElement.clientWidth || 600, high = 640;
    const width = Math.min(room, high * field.columns / field.rows);
    scale = width / (field.columns * field.cell);
    canvas.style.width = width + 'px';
    canvas.width = Math.round(width * ratio);
    canvas.height = Math.round(width * field.rows / field.columns * ratio);
    pen.setTransform(ratio, 0, 0, ratio, 0, 0);
    drawValues();
    drawWalls(data.levels[field.level]);
    drawMarks(data.levels[field.level]);
    say();
  }

  // Fills each cell with its colour; draws a stroke across cells below the margin that most seats require.
  function drawValues() {
    const size = field.cell * scale;
    pen.lineWidth = 0.6;
    pen.strokeStyle = 'rgba(27,32,41,0.45)';
    for (let row = 0; row < field.rows; row++) {
      for (let column = 0; column < field.columns; column++) {
        const tenths = valueAt(column, row);
        if (tenths === none) continue;
        const x = column * size, y = (field.rows - 1 - row) * size;
        pen.fillStyle = colourOf(tenths / 10);
        pen.fillRect(x, y, size + 0.5, size + 0.5);
        if (tenths / 10 < data.requiredDb && (row + column) % 2 === 0) {
          pen.beginPath();
          pen.moveTo(x, y + size);
          pen.lineTo(x + size, y);
          pen.stroke();
        }
      }
    }
  }

  function drawWalls(level) {
    for (const wall of level.walls) {
      const dx = wall.to[0] - wall.from[0], dy = wall.to[1] - wall.from[1], length = Math.hypot(dx, dy);
      const along = m => [toX(wall.from[0] + dx * m / length), toY(wall.from[1] + dy * m / length)];
      const line = (from, to, width, colour, dash) => {
        pen.beginPath();
        pen.setLineDash(dash || []);
        pen.lineWidth = width;
        pen.strokeStyle = colour;
        pen.moveTo(...along(from));
        pen.lineTo(...along(to));
        pen.stroke();
        pen.setLineDash([]);
      };
      const thick = Math.max(1.5, wall.thick * scale);
      line(0, length, thick, wall.full ? '#1B2029' : '#868C96', wall.full ? null : [4, 3]);
      for (const [offset, width, kind] of wall.openings) {
        line(offset, offset + width, thick + 0.5, '#FFFFFF');
        if (kind !== 'open') line(offset, offset + width, kind === 'window' ? 1 : 2, '#1B2029');
      }
    }
  }

  function drawMarks(level) {
    pen.font = '12px sans-serif';
    pen.textBaseline = 'middle';
    for (const seat of level.seats) {
      const x = toX(seat.at[0]), y = toY(seat.at[1]), passes = seat.passes[field.spot];
      if (passes === null) continue;
      pen.beginPath();
      pen.arc(x, y, 6, 0, 2 * Math.PI);
      pen.fillStyle = passes ? '#1B2029' : '#FFFFFF';
      pen.fill();
      pen.lineWidth = 2;
      pen.strokeStyle = passes ? '#FFFFFF' : '#1B2029';
      pen.stroke();
      label(seat.name + (passes ? ': passes' : ': does not pass'), x, y);
    }
    const spot = data.spots[field.spot];
    const x = toX(spot.at[0]), y = toY(spot.at[1]);
    pen.beginPath();
    pen.moveTo(x, y - 8);
    pen.lineTo(x + 8, y);
    pen.lineTo(x, y + 8);
    pen.lineTo(x - 8, y);
    pen.closePath();
    pen.fillStyle = spot.level === field.level ? '#8A1C3B' : '#FFFFFF';
    pen.fill();
    pen.strokeStyle = '#8A1C3B';
    pen.lineWidth = 2;
    pen.stroke();
    label(spot.level === field.level ? spot.name : spot.name + ' (on ' + data.levels[spot.level].name + ')', x, y);
    if (pointed) {
      pen.strokeStyle = '#1B2029';
      pen.lineWidth = 1;
      pen.strokeRect(pointed[0] * field.cell * scale, (field.rows - 1 - pointed[1]) * field.cell * scale, field.cell * scale, field.cell * scale);
    }
  }

  function label(text, x, y) {
    const width = pen.measureText(text).width + 6, wide = canvas.clientWidth || width;
    const left = Math.max(0, Math.min(x + 10, wide - width));
    pen.fillStyle = 'rgba(255,255,255,0.88)';
    pen.fillRect(left, y - 24, width, 16);
    pen.fillStyle = '#1B2029';
    pen.fillText(text, left + 3, y - 16);
  }

  function length(metres) {
    if (!data.inFeet) return metres.toFixed(1) + ' m';
    const inches = Math.round(metres / metresPerFoot * 12);
    return Math.trunc(inches / 12) + 'ft ' + Math.abs(inches % 12) + 'in';
  }

  function say() {
    if (!pointed) {
      said.textContent = 'Point at a place, or press the arrow keys on the map.';
      return;
    }
    const tenths = valueAt(pointed[0], pointed[1]);
    const x = field.origin[0] + (pointed[0] + 0.5) * field.cell, y = field.origin[1] + (pointed[1] + 0.5) * field.cell;
    const place = length(x) + ' east, ' + length(y) + ' north: ';
    said.textContent = tenths === none
      ? place + 'no margin here.'
      : place + (tenths / 10).toFixed(1) + ' dB to count on; most seats require ' + data.requiredDb + ' dB, so a seat here '
        + (tenths / 10 >= data.requiredDb ? 'would pass.' : 'would not pass.');
  }

  function point(column, row) {
    pointed = [Math.max(0, Math.min(field.columns - 1, column)), Math.max(0, Math.min(field.rows - 1, row))];
    draw();
  }

  canvas.addEventListener('pointermove', event => {
    if (!field) return;
    const box = canvas.getBoundingClientRect(), size = box.width / field.columns;
    point(Math.floor((event.clientX - box.left) / size), field.rows - 1 - Math.floor((event.clientY - box.top) / size));
  });
  canvas.addEventListener('keydown', event => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    if (!step || !field) return;
    event.preventDefault();
    const from = pointed || [field.columns >> 1, field.rows >> 1];
    point(from[0] + step[0], from[1] + step[1]);
  });
  spots.addEventListener('change', draw);
  levels.addEventListener('change', () => { pointed = null; draw(); });
  window.addEventListener('resize', draw);
  window.addEventListener('beforeprint', draw);
  draw();
})();
