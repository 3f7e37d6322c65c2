// The player: moves through the computed frames. Nothing is computed here but the straight line between two neighbouring frames.
(() => {
  const $ = id => document.getElementById(id);
  const frames = JSON.parse($("frames").textContent);
  const times = frames.time_s;
  const end = times[times.length - 1];
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  const stillInterval = 700; // ms between stills for those who asked for less motion
  const stills = 12;
  const slider = $("time");
  const speed = $("speed");
  const play = $("play");
  const cursors = [...document.querySelectorAll(".cursor")].map(line => ({
    line, origin: +line.dataset.origin, scale: +line.dataset.scale, inPlayer: $("player").contains(line),
  }));
  const stage = makeStage(frames, () => draw());
  let now = frames.poster_s;
  let playing = false;
  let untouched = true;
  let before = 0;

  // The frame at or before a time, and how far towards the next.
  function locate(time) {
    let low = 0;
    let high = times.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (times[middle] <= time) { low = middle; } else { high = middle; }
    }
    const span = times[high] - times[low];
    return { low, high, part: span > 0 ? Math.min(1, Math.max(0, (time - times[low]) / span)) : 1 };
  }

  const between = (column, { low, high, part }) => column[low] + (column[high] - column[low]) * part;

  const shown = (value, decimals) => {
    const text = value.toFixed(decimals);
    return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "\u2212");
  };

  const phaseAt = time => frames.phases.findLast(p => p.start_s <= time) ?? frames.phases[0];

  // A unit vector or quaternion between two; a quaternion and its negative are the same attitude.
  function turnBetween(columns, at) {
    const [from, to] = [at.low, at.high].map(i => columns.map(c => c[i]));
    const sign = columns.length === 4 && from.reduce((all, c, i) => all + c * to[i], 0) < 0 ? -1 : 1;
    const mean = from.map((c, i) => c + (sign * to[i] - c) * at.part);
    const length = Math.hypot(...mean);
    return length > 1e-6 ? mean.map(c => c / length) : from;
  }

  function frameAt(at) {
    const placeOf = columns => columns.map(column => between(column, at));
    const place = cord => placeOf(cord.weight_m);
    return {
      attitude: turnBetween(frames.attitude, at),
      momentum: turnBetween(frames.momentum, at),
      share: between(frames.momentum_share, at),
      cords: frames.cords.map(cord => ({
        root: between(cord.root_rad, at),
        height: cord.root_m ? between(cord.root_m, at) : cord.height_m,
        // Where each joint would be on a straight line, as a share of it from the root, and how far off that it is.
        joints: cord.joints.map((aside, j) => ({
          share: Math.max(0, 1 - (cord.joints.length - j) * cord.piece_m / between(cord.free_length_m, at)),
          aside: placeOf(aside).map(c => c * cord.joint_unit_m),
        })),
        weight: place(cord),
        hold: cord.hold[at.low],
      })),
      trails: frames.cords.map(cord =>
        [...Array.from({ length: at.low + 1 }, (_, i) => cord.weight_m.map(column => column[i])), place(cord)]),
    };
  }

  function draw() {
    const at = locate(now);
    stage.draw(frameAt(at));
    for (const { line, origin, scale, inPlayer } of cursors) {
      if (untouched && !inPlayer) { continue; } // a line nobody asked for would puzzle a reader of the pictures
      line.setAttribute("x1", origin + scale * now);
      line.setAttribute("x2", origin + scale * now);
    }
    const phase = phaseAt(now);
    const time = shown(now, frames.decimals.time);
    const spin = shown(between(frames.spin, at), frames.decimals.spin);
    $("read-time").textContent = time;
    $("read-spin").textContent = spin;
    $("read-phase").textContent = phase.name;
    if (frames.nutation_deg) {
      $("read-transverse").textContent = shown(between(frames.transverse_rate, at), frames.decimals.transverse);
      $("read-nutation").textContent = shown(between(frames.nutation_deg, at), frames.decimals.nutation);
    }
    frames.cords.slice(0, frames.cords_alike ? 1 : undefined).forEach((cord, index) => {
      const hold = cord.hold[at.low];
      $(`read-length-${index + 1}`).textContent = hold === 0 ? "\u2013" : shown(between(cord.free_length_m, at), frames.decimals.length);
      $(`read-tension-${index + 1}`).textContent = hold === 0 ? "gone" : hold === 2 ? "slack" : shown(between(cord.tension_n, at), frames.decimals.tension);
    });
    slider.value = now;
    slider.setAttribute("aria-valuetext", `${time} seconds, ${phase.name}, ${spin} ${frames.spin_unit}`);
    document.querySelectorAll("#phases button").forEach((button, index) =>
      button.setAttribute("aria-current", String(frames.phases[index] === phase)));
  }

  function goTo(time) {
    untouched = false;
    now = Math.min(end, Math.max(0, time));
    draw();
  }

  function tick(stamp) {
    if (!playing) { return; }
    const elapsed = stamp - before;
    if (!still.matches) {
      before = stamp;
      goTo(now + elapsed / 1000 * Number(speed.value));
    } else if (elapsed >= stillInterval) {
      before = stamp;
      goTo(now + end / stills);
    }
    if (now >= end) { stop(); } else { requestAnimationFrame(tick); }
  }

  function start() {
    if (untouched || now >= end) { goTo(0); }
    playing = true;
    before = performance.now();
    play.textContent = "Pause";
    requestAnimationFrame(tick);
  }

  function stop() {
    playing = false;
    play.textContent = "Play";
  }

  const toggle = () => playing ? stop() : start();

  slider.max = end;
  slider.step = end / 400;
  slider.addEventListener("input", () => { stop(); goTo(Number(slider.value)); });
  play.addEventListener("click", toggle);
  $("player").addEventListener("keydown", event => {
    const ownsSpace = ["BUTTON", "SELECT"].includes(event.target.tagName);
    if (event.key === " " && !ownsSpace) {
      event.preventDefault();
      toggle();
    }
  });

  // The fastest speed at which the whole takes six seconds or more.
  const speeds = [...speed.options].map(option => Number(option.value));
  speed.value = String(speeds.find(s => end / s >= 6) ?? speeds[speeds.length - 1]);

  frames.phases.forEach((phase, index) => {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = phase.name;
    button.addEventListener("click", () => { stop(); goTo(phase.start_s); });
    const item = document.createElement("li");
    item.append(button);
    $("phases").append(item);
    const next = frames.phases[index + 1]?.start_s ?? end;
    const segment = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    segment.setAttribute("x", 1000 * phase.start_s / end);
    segment.setAttribute("width", Math.max(0, 1000 * (next - phase.start_s) / end - 2));
    segment.setAttribute("height", 6);
    segment.setAttribute("class", `phase-${index % 2}`);
    $("ribbon").append(segment);
  });

  stage.start();
})();
