// Keeps the screen awake while one works by it, as far as the browser lets us, and says what is known of that.
const ON = "The screen stays awake while this page is open.";
const MAY_DIM = "Your phone may dim the screen: set it to stay on while you work.";
const FILMED = "A tiny film plays to keep the screen on. If your phone dims it all the same, set it to stay on while you work.";

let lock = null;
let asking = false;
let film = null;

const wanted = () => document.querySelector("[data-awake]");

function say(sentence) {
  const line = wanted();
  if (line && line.textContent !== sentence) line.textContent = sentence;
}

async function hold() {
  if (lock || asking || document.visibilityState !== "visible") return;
  asking = true;
  try {
    const got = await navigator.wakeLock.request("screen");
    if (!wanted()) return void got.release();
    lock = got;
    lock.addEventListener("release", () => {
      lock = null;
      if (document.visibilityState === "visible") say(MAY_DIM);
    });
    say(ON);
  } catch {
    // Refused: some ask for a tap first, others save the battery. The next tap asks again.
    say(MAY_DIM);
  } finally {
    asking = false;
  }
}

// Without a certificate there is no lock to be had; a browser that plays a film in sight leaves the screen on.
// Ours is drawn as it plays: a dot that changes, in a corner, without sound.
async function play() {
  if (film || !HTMLCanvasElement.prototype.captureStream) return;
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = 2;
  const pen = canvas.getContext("2d");
  let light = false;
  const draw = () => {
    light = !light;
    pen.fillStyle = light ? "#888" : "#777";
    pen.fillRect(0, 0, 2, 2);
  };
  draw();
  const video = document.createElement("video");
  Object.assign(video, { muted: true, playsInline: true, className: "awake-film", srcObject: canvas.captureStream(2) });
  video.setAttribute("aria-hidden", "true");
  // Beside the body, since that is what a link swaps.
  document.documentElement.append(video);
  film = { video, timer: setInterval(draw, 500) };
  try {
    await video.play();
    say(FILMED);
  } catch {
    stop();
    say(MAY_DIM);
  }
}

function stop() {
  if (!film) return;
  clearInterval(film.timer);
  film.video.srcObject.getTracks().forEach((track) => track.stop());
  film.video.remove();
  film = null;
}

function look() {
  if (!wanted()) {
    lock?.release();
    lock = null;
    stop();
  } else if (lock) say(ON);
  else if (film) say(FILMED);
  else {
    say(MAY_DIM);
    if (navigator.wakeLock) hold();
  }
}

document.addEventListener("click", () => {
  if (!wanted() || lock) return;
  if (navigator.wakeLock) hold();
  else play();
});
document.addEventListener("visibilitychange", look);
document.addEventListener("htmx:afterSettle", look);
look();
