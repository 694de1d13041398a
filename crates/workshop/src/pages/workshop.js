// Shows the code that holds and the devices that are paired, and forgets those that are lost.

/** How often the code and the devices are asked for again, ms. */
const AGAIN = 4000;
const element = (id) => document.getElementById(id);

async function ask(path, options) {
  const answer = await fetch(`/api/1/${path}`, options);
  if (!answer.ok) throw new Error((await answer.json()).what);
  return answer.status === 204 ? null : answer.json();
}

function showPairing(pairing) {
  element("network").hidden = !pairing.code;
  element("alone").hidden = Boolean(pairing.code);
  if (!pairing.code) return;
  const code = `${pairing.code.slice(0, 4)} ${pairing.code.slice(4)}`;
  // Set only when it changes, so that a screen reader says it once.
  if (element("code").textContent !== code) element("code").textContent = code;
  element("start").textContent = pairing.start;
  element("fingerprint").textContent = pairing.fingerprint;
}

function row(device) {
  const line = document.createElement("p");
  line.className = "device";
  const name = document.createElement("span");
  name.textContent = `${device.name}, since ${new Date(device.paired).toLocaleDateString()}`;
  const button = document.createElement("button");
  button.className = "quiet";
  button.textContent = "Forget";
  button.setAttribute("aria-label", `Forget ${device.name}`);
  button.addEventListener("click", async () => {
    await tell(() => ask(`devices/${device.id}`, { method: "DELETE" }));
    element("said").textContent = `${device.name} is forgotten: it has to be paired again to reach the jobs.`;
    await show();
  });
  line.append(name, button);
  return line;
}

let shown = "";

async function show() {
  await tell(async () => {
    showPairing(await ask("pairing"));
    const devices = await ask("devices");
    // The list is made anew only when it changes, so that a button in use stays where it is.
    const now = JSON.stringify(devices);
    if (now === shown) return;
    shown = now;
    const none = document.createElement("p");
    none.textContent = "None yet.";
    element("devices").replaceChildren(...(devices.length ? devices.map(row) : [none]));
  });
}

async function tell(work) {
  try {
    await work();
  } catch (error) {
    element("said").textContent = `The workshop does not answer: ${error.message}`;
  }
}

show();
setInterval(show, AGAIN);
