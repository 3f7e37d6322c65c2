// The stage: projects a frame onto the page. The projection is parallel, so that the scale bar holds for everything that lies
// across the line of sight. The hub is convex and all else is outside it: whatever lies on the far side of the plane that touches
// the hub under it is painted before the hub, the rest after it.
"use strict";
const makeStage = (motion, redraw) => {
  const $ = id => document.getElementById(id);
  const degree = Math.PI / 180;
  const step = 5; // degrees a key press
  const zoomStep = 1.25;
  const smallest = 0.25;
  const largest = 8;
  const edge = 0.05; // cosine of the angle within which a thing counts as beside the hub, neither before nor behind it
  const hub = motion.hub;
  const views = {
    axis: { azimuth: -90, elevation: 90, words: "Along the spin axis" },
    quarter: { azimuth: -60, elevation: 25, words: "Three-quarter view" },
    side: { azimuth: -90, elevation: 0, words: "From the side" },
  };
  const frame = $("stage");
  const scene = $("scene");
  let camera = null;
  let axes = null;
  let size = 380;

  const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const sum = (...terms) => [0, 1, 2].map(i => terms.reduce((all, [factor, v]) => all + factor * v[i], 0));
  const unit = v => { const length = Math.hypot(...v); return length > 0 ? v.map(c => c / length) : v; };
  const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  const set = (id, values) => {
    const element = $(id);
    for (const [name, value] of Object.entries(values)) { element.setAttribute(name, value); }
  };

  // v turned by a unit quaternion (x, y, z, w).
  const turned = ([x, y, z, w], v) => {
    const t = cross([x, y, z], v).map(c => 2 * c);
    return sum([1, v], [w, t], [1, cross([x, y, z], t)]);
  };

  function look({ azimuth, elevation, zoom }) {
    const [a, e] = [azimuth * degree, elevation * degree];
    return {
      azimuth, elevation, zoom,
      scale: size / 2 / motion.view_m * zoom,
      right: [-Math.sin(a), Math.cos(a), 0],
      up: [-Math.sin(e) * Math.cos(a), -Math.sin(e) * Math.sin(a), Math.cos(e)],
      toward: [Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)],
    };
  }

  const project = p => [camera.scale * dot(p, camera.right), -camera.scale * dot(p, camera.up)];
  const text = ([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`;
  const line = points => points.length > 0 ? `M${points.map(p => text(project(p))).join("L")}` : "";

  // A place on or about the hub, in the hub's cylinder coordinates.
  const onHub = (radius, angle, height) => sum(
    [hub.axis_x_m + radius * Math.cos(angle), axes[0]], [hub.axis_y_m + radius * Math.sin(angle), axes[1]], [height, axes[2]]);
  const outward = angle => sum([Math.cos(angle), axes[0]], [Math.sin(angle), axes[1]]);
  const isNear = direction => dot(direction, camera.toward) > -edge;

  function arc(radius, height, from, to) {
    const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / (4 * degree)));
    return Array.from({ length: pieces + 1 }, (_, i) => onHub(radius, from + (to - from) * i / pieces, height));
  }

  // The parts of an arc of the hub's side that face the viewer, or that do not; looking along the axis, all of it is to be seen.
  function halves(from, to) {
    const [x, y] = [dot(axes[0], camera.toward), dot(axes[1], camera.toward)];
    const whole = 2 * Math.PI;
    const until = Math.min(to, from + whole);
    if (Math.hypot(x, y) < 1e-3) { return { near: [[from, until]], far: [] }; }
    const cut = centre => {
      const found = [];
      for (let k = Math.floor((from - centre) / whole); k <= Math.ceil((until - centre) / whole); k++) {
        const low = Math.max(from, centre - whole / 4 + whole * k);
        const high = Math.min(until, centre + whole / 4 + whole * k);
        if (high > low) { found.push([low, high]); }
      }
      return found;
    };
    const facing = Math.atan2(y, x);
    return { near: cut(facing), far: cut(facing + Math.PI) };
  }

  const arcs = (radius, height, spans) => spans.map(([from, to]) => line(arc(radius, height, from, to))).join("");

  function drawHub() {
    const { radius_m: radius, bottom_m: bottom, top_m: top } = hub;
    const side = (from, to) => halves(from, to).near.map(([a, b]) =>
      `${line([...arc(radius, top, a, b), ...arc(radius, bottom, b, a)])}Z`).join("");
    const upper = dot(axes[2], camera.toward) > 0;
    const cap = upper ? top : bottom;
    const sector = (from, to) => `${line([onHub(0, 0, cap), ...arc(radius, cap, from, to)])}Z`;
    const along = Math.hypot(dot(axes[0], camera.toward), dot(axes[1], camera.toward)) < 1e-3;
    set("hub-side", { d: along ? "" : side(0, 2 * Math.PI) });
    set("hub-side-sectors", { d: along ? "" : side(0, Math.PI / 2) + side(Math.PI, 1.5 * Math.PI) });
    set("hub-cap", { d: `${line(arc(radius, cap, 0, 2 * Math.PI))}Z` });
    set("hub-cap-sectors", { d: sector(0, Math.PI / 2) + sector(Math.PI, 1.5 * Math.PI) });
    set("hub-drums", { d: [...new Set(motion.cords.map(c => c.height_m))].map(h => arcs(radius, h, halves(0, 2 * Math.PI).near)).join("") });
    const down = dot(outward(0), camera.toward) > 0 ? [onHub(radius, 0, upper ? bottom : top)] : [];
    set("hub-mark", { d: line([onHub(0, 0, cap), onHub(radius, 0, cap), ...down]) });
  }

  // The circle that the plane across the axis at the start cuts out of the room, with a tick every 30 degrees.
  function drawPlane() {
    const at = (angle, part) => [part * motion.reach_m * Math.cos(angle), part * motion.reach_m * Math.sin(angle), 0];
    const half = centre => {
      let d = line(Array.from({ length: 46 }, (_, i) => at(centre + (i * 4 - 90) * degree, 1)));
      for (let k = -90; k < 90; k += 30) { d += line([at(centre + k * degree, 0.97), at(centre + k * degree, 1.03)]); }
      return d;
    };
    const facing = camera.azimuth * degree;
    set("plane-near", { d: half(facing) });
    set("plane-far", { d: half(facing + Math.PI) });
  }

  function drawDeck() {
    const { radius_m: radius, height_m: height } = motion.deck;
    const { near, far } = halves(0, 2 * Math.PI);
    set("deck-near", { d: arcs(radius, height, near) });
    set("deck-far", { d: arcs(radius, height, far) });
  }

  // The room of a rig stands still about all that moves: its far side is painted first, its near side last.
  function drawRoom() {
    const { bearing_m: bearing, up, floor_m: floor, wall_m: wall, grid_m: spacing, drawn_radius_m: radius, drawn_bottom_m: bottom, drawn_top_m: top } = motion.room;
    const first = unit(cross(Math.abs(up[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0], up));
    const second = cross(up, first);
    const at = (x, y, height) => sum([1, bearing], [x, first], [y, second], [height, up]);
    const round = (from, to, height) => Array.from({ length: 46 }, (_, i) => from + (to - from) * i / 45)
      .map(angle => at(radius * Math.cos(angle), radius * Math.sin(angle), height));
    if (floor !== undefined) {
      let grid = "";
      for (let k = -Math.floor(radius / spacing); k <= radius / spacing; k++) {
        const half = Math.sqrt(Math.max(0, radius * radius - k * k * spacing * spacing));
        grid += line([at(-half, k * spacing, floor), at(half, k * spacing, floor)]) + line([at(k * spacing, -half, floor), at(k * spacing, half, floor)]);
      }
      const above = dot(up, camera.toward) >= 0;
      set("floor-above", { d: above ? `${line(round(0, 2 * Math.PI, floor))}Z` : "" });
      set("floor-grid-above", { d: above ? grid : "" });
      set("floor-grid-below", { d: above ? "" : grid });
    }
    if (wall !== undefined) {
      const half = centre => {
        let d = line(round(centre - Math.PI / 2, centre + Math.PI / 2, top)) + line(round(centre - Math.PI / 2, centre + Math.PI / 2, bottom));
        for (let k = 0; k < 12; k++) {
          const angle = k * 30 * degree;
          if (Math.cos(angle - centre) > 0) { d += line([at(radius * Math.cos(angle), radius * Math.sin(angle), bottom), at(radius * Math.cos(angle), radius * Math.sin(angle), top)]); }
        }
        return d;
      };
      const facing = Math.atan2(dot(second, camera.toward), dot(first, camera.toward));
      set("wall-near", { d: half(facing) });
      set("wall-far", { d: half(facing + Math.PI) });
    }
    motion.room.landings_m.forEach((place, index) => {
      if (place === null) { return; }
      const [[x, y], arm] = [project(place), 5];
      set(`landing-${index + 1}`, { d: `M${text([x - arm, y - arm])}L${text([x + arm, y + arm])}M${text([x - arm, y + arm])}L${text([x + arm, y - arm])}` });
    });
  }

  // At the end of a line, or where the line leaves the stage; on the side where there is room, and not at all where the line is
  // seen from its end.
  function label(id, from, to, side) {
    const [x0, y0] = project(from);
    const [dx, dy] = project(to).map((c, i) => c - [x0, y0][i]);
    const shown = Math.hypot(dx, dy) > 0.12 * size;
    set(id, { visibility: shown ? "visible" : "hidden" });
    if (!shown) { return; }
    const room = size / 2 - 16;
    const part = Math.min(1, ...[[x0, dx], [y0, dy]].map(([c, d]) => d > 0 ? (room - c) / d : d < 0 ? (-room - c) / d : 1));
    const [x, y] = [x0 + part * dx, y0 + part * dy];
    const wide = $(id).getComputedTextLength() + 10;
    const right = x + wide > size / 2 ? false : x - wide < -size / 2 ? true : Math.abs(dx) < Math.abs(dy) / 4 ? side > 0 : dx > 0;
    set(id, { x: (x + (right ? 8 : -8)).toFixed(1), y: (y + 4).toFixed(1), "text-anchor": right ? "start" : "end" });
  }

  // The height of the floor along an upright spin axis; an axis that leans is drawn through it.
  function floorUnderHub() {
    const { floor_m: floor, bearing_m: bearing, up } = motion.room ?? {};
    return floor !== undefined && dot(axes[2], up) > 0.999 ? floor + dot(bearing, up) : -Infinity;
  }

  function drawAxis() {
    const over = 0.35 * motion.reach_m;
    const [top, bottom] = [onHub(0, 0, hub.top_m), onHub(0, 0, hub.bottom_m)];
    const [tip, foot] = [onHub(0, 0, hub.top_m + over), onHub(0, 0, Math.max(hub.bottom_m - over, floorUnderHub()))];
    const [upper, lower] = [line([top, tip]), line([bottom, foot])];
    const topNear = dot(axes[2], camera.toward) > 0;
    set("axis-near", { d: topNear ? upper : lower });
    set("axis-far", { d: topNear ? lower : upper });
    label("axis-label", bottom, foot, 1);
  }

  function drawMomentum({ momentum, share }) {
    const length = Math.max(hub.top_m, -hub.bottom_m) + 0.55 * motion.reach_m;
    const tip = momentum.map(c => c * length);
    const centre = [0, 0, 0];
    set("momentum-line", { d: line([centre, tip]) });
    set("momentum-size", { d: share > 0 ? line([centre, tip.map(c => c * Math.min(1, share))]) : "" });
    const [x, y] = project(tip);
    const seen = Math.hypot(x, y);
    const [ux, uy] = seen > 8 ? [x / seen, y / seen] : [0, 0];
    set("momentum-head", {
      d: seen > 8
        ? `M${text([x, y])}L${text([x - 11 * ux - 4.5 * uy, y - 11 * uy + 4.5 * ux])}L${text([x - 11 * ux + 4.5 * uy, y - 11 * uy - 4.5 * ux])}Z`
        : `M${text([x - 4, y])}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0`,
    });
    label("momentum-label", centre, tip, -1);
  }

  // Away from the hub's axis, square to it: which side of the hub a weight is on.
  const aside = place => unit(sum([1, place], [-hub.axis_x_m, axes[0]], [-hub.axis_y_m, axes[1]], [-dot(place, axes[2]), axes[2]]));

  function drawTrail(number, places) {
    const d = { near: "", far: "" };
    let last = null;
    let before = null;
    for (const place of places) {
      const side = isNear(aside(place)) ? "near" : "far";
      if (side !== last) { d[side] += before === null ? "" : `M${text(project(before))}`; }
      d[side] += `${d[side] === "" ? "M" : "L"}${text(project(place))}`;
      last = side;
      before = place;
    }
    set(`trail-near-${number}`, { d: d.near });
    set(`trail-far-${number}`, { d: d.far });
  }

  function drawCord(cord, number, state, places) {
    const root = onHub(cord.radius_m, state.root, state.height);
    const attached = state.hold !== 0;
    const near = attached && Math.hypot(...sum([1, state.weight], [-1, root])) > 1e-3 * cord.radius_m
      ? isNear(outward(state.root)) : isNear(aside(state.weight));
    const group = $(`flight-${number}`);
    const parent = $(near ? "front" : "behind");
    if (group.parentNode !== parent) { parent.append(group); }
    const depth = Math.max(-1, Math.min(1, dot(state.weight, camera.toward) / motion.reach_m));
    group.setAttribute("opacity", (depth < 0 ? 1 + 0.45 * depth : 1).toFixed(2));
    const joints = state.joints.map(({ share, aside }) => sum([1 - share, root], [share, state.weight], [1, aside]));
    const bent = [root, ...joints, state.weight].map(project);
    const [x, y] = bent.at(-1);
    set(`cord-${number}`, { points: bent.map(([x, y]) => `${x},${y}`).join(" "), visibility: attached ? "visible" : "hidden" });
    $(`cord-${number}`).classList.toggle("slack", state.hold === 2);
    set(`weight-${number}`, { cx: x, cy: y, r: (size / 60 * (1 + 0.25 * depth)).toFixed(2) });
    const wound = attached ? halves(Math.min(state.root, cord.end_rad), Math.max(state.root, cord.end_rad)) : { near: [], far: [] };
    set(`wound-near-${number}`, { d: arcs(cord.radius_m, cord.height_m, wound.near) });
    set(`wound-far-${number}`, { d: arcs(cord.radius_m, cord.height_m, wound.far) });
    drawTrail(number, places);
  }

  // A bar of round length: 1, 2 or 5 times a power of ten, at most a quarter of the stage.
  function drawScale() {
    const wanted = size / 4 / camera.scale;
    const power = 10 ** Math.floor(Math.log10(wanted));
    const leading = wanted / power;
    const length = power * (leading >= 5 ? 5 : leading >= 2 ? 2 : 1);
    const [left, low] = [-size / 2 + 12, size / 2 - 12];
    set("scale-bar", { d: `M${left} ${low - 4}V${low}H${left + length * camera.scale}V${low - 4}` });
    set("scale-length", { x: left, y: low - 9 });
    $("scale-length").textContent = `${Number(length.toPrecision(1))}\u00a0m`;
  }

  function draw(state) {
    axes = [[1, 0, 0], [0, 1, 0], [0, 0, 1]].map(v => turned(state.attitude, v));
    if (motion.room) { drawRoom(); }
    drawPlane();
    if (motion.deck) { drawDeck(); }
    drawHub();
    drawAxis();
    drawMomentum(state);
    motion.cords.forEach((cord, index) => drawCord(cord, index + 1, state.cords[index], state.trails[index]));
    drawScale();
  }

  function turn(change) {
    const next = { ...camera, ...change };
    camera = look({
      azimuth: ((next.azimuth + 180) % 360 + 360) % 360 - 180,
      elevation: Math.max(-90, Math.min(90, next.elevation)),
      zoom: Math.max(smallest, Math.min(largest, next.zoom)),
    });
    Object.assign(frame.dataset, { azimuth: camera.azimuth, elevation: camera.elevation, scale: camera.scale });
    const named = Object.entries(views).find(([, v]) => v.azimuth === camera.azimuth && v.elevation === camera.elevation);
    document.querySelectorAll("[data-view]").forEach(button => button.setAttribute("aria-pressed", String(button.dataset.view === named?.[0])));
    const whole = value => String(Math.round(value)).replace("-", "\u2212");
    const height = camera.elevation < 0 ? "below" : "above";
    $("read-view").textContent = `${named?.[1].words ?? "Turned by hand"}: ${whole(Math.abs(camera.elevation))}\u00b0 ${height} the plane of the ring, ${whole(camera.azimuth)}\u00b0 round it, zoom ${camera.zoom.toFixed(2)}`;
    redraw();
  }

  const standard = () => turn({ ...views[frame.dataset.standard], zoom: 1 });

  const keys = {
    ArrowLeft: () => turn({ azimuth: camera.azimuth - step }),
    ArrowRight: () => turn({ azimuth: camera.azimuth + step }),
    ArrowUp: () => turn({ elevation: camera.elevation + step }),
    ArrowDown: () => turn({ elevation: camera.elevation - step }),
    Home: standard,
    "+": () => turn({ zoom: camera.zoom * zoomStep }),
    "=": () => turn({ zoom: camera.zoom * zoomStep }),
    "-": () => turn({ zoom: camera.zoom / zoomStep }),
  };
  frame.addEventListener("keydown", event => {
    if (keys[event.key] && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      keys[event.key]();
    }
  });

  let hand = null;
  frame.addEventListener("pointerdown", event => {
    if (!event.isPrimary || event.button !== 0) { return; }
    hand = { x: event.clientX, y: event.clientY, azimuth: camera.azimuth, elevation: camera.elevation };
    frame.setPointerCapture(event.pointerId);
  });
  frame.addEventListener("pointermove", event => {
    if (hand === null) { return; }
    const perPixel = 180 / frame.clientWidth;
    turn({
      azimuth: hand.azimuth - (event.clientX - hand.x) * perPixel,
      elevation: hand.elevation + (event.clientY - hand.y) * perPixel,
    });
  });
  for (const end of ["pointerup", "pointercancel"]) { frame.addEventListener(end, () => { hand = null; }); }

  document.querySelectorAll("[data-view]").forEach(button =>
    button.addEventListener("click", () => turn(views[button.dataset.view])));
  $("zoom-in").addEventListener("click", keys["+"]);
  $("zoom-out").addEventListener("click", keys["-"]);

  // One unit of the drawing is one pixel of the page, so that type and strokes keep their size on every screen.
  new ResizeObserver(() => {
    const width = frame.clientWidth;
    if (width > 0 && width !== size) {
      size = width;
      scene.setAttribute("viewBox", `${-size / 2} ${-size / 2} ${size} ${size}`);
      turn({});
    }
  }).observe(frame);
  size = frame.clientWidth || size;
  scene.setAttribute("viewBox", `${-size / 2} ${-size / 2} ${size} ${size}`);
  camera = look({ ...views[frame.dataset.standard], zoom: 1 });
  return { draw, start: standard };
};
