const all = name => [...document.querySelectorAll(name)], day = 864e5, soon = SOON, quarter = 15 * 6e4;
const midnight = ms => new Date(ms).setHours(0, 0, 0, 0);
const minutes = ms => {
  const count = Math.ceil(ms / 6e4), hours = Math.floor(count / 60), rest = count % 60;
  return hours ? (rest ? `${hours} h ${rest} min` : `${hours} h`) : `${rest} min`;
};
const clock = (ms, zone) => new Date(ms)
  .toLocaleTimeString(document.documentElement.lang, {hour: "numeric", minute: "2-digit", timeZone: zone}).replace("\u202f", " ");

// The day as it was planned, and as it is with all delays: each has a moment and holds for what was not over then.
const number = text => text === undefined ? undefined : +text;
const planned = all("li[data-from]").map(it => ({
  from: +it.dataset.from, until: +it.dataset.until, due: number(it.dataset.due), shut: number(it.dataset.shut),
  gives: "gives" in it.dataset, words: it.lastElementChild.textContent, zone: it.querySelector("time").dataset.zone,
}));
const delays = () => [...location.hash.matchAll(/(\d+)@(\d+)/g)].map(found => [+found[1] * 6e4, +found[2]]);
const delayed = (steps, late, at) => {
  let next = null;
  return steps.map((step, index) => {
    if (step.until <= at) return step;
    const on = next === null && step.from <= at, length = step.until - step.from;
    const from = next ?? (on ? step.from : step.from + late), after = steps[index + 1];
    next = from + length + (on ? late : 0);
    if (step.gives && after && after.due !== undefined) next = Math.max(from, Math.min(next, after.due));
    if (step.shut !== undefined) next = Math.max(from, Math.min(next, step.shut));
    return {...step, from, until: next};
  });
};
let steps = planned;
const moved = ms => {
  const last = planned.length - 1;
  if (ms < planned[0].from || ms > planned[last].until) return ms;
  if (ms === planned[last].until) return steps[last].until;
  const index = planned.findIndex(step => ms >= step.from && ms < step.until);
  return Math.min(steps[index].from + ms - planned[index].from, steps[index].until);
};
const told = () => {
  const late = delays(), sum = late.reduce((total, [ms]) => total + ms, 0);
  if (!sum) return [];
  const lines = [`${minutes(sum)} late. Home again at ${clock(steps.at(-1).until, steps.at(-1).zone)}.`];
  steps.forEach((step, index) => {
    const at = clock(step.due ?? step.shut, step.zone);
    if (step.due >= late[0][1]) lines.push(step.from > step.due
      ? `${step.words} began at ${at}: you come ${minutes(step.from - step.due)} late.`
      : `${step.words} stays at ${at}.`);
    else if (step.until === step.shut && planned[index].until < step.shut) lines.push(`It closes at ${at}.`);
  });
  return lines;
};

const look = () => {
  const now = Date.now(), begun = it => moved(+it.dataset.from) <= now, over = it => moved(+it.dataset.until) <= now;
  for (const it of all(".stretch")) it.hidden = !begun(it) || over(it);
  for (const it of all("li[data-from]")) {
    it.classList.toggle("on", begun(it) && !over(it));
    it.classList.toggle("over", over(it));
  }
  for (const it of all("[data-left]")) {
    const left = moved(+it.dataset.left) - now, days = Math.round((midnight(now + left) - midnight(now)) / day);
    const ahead = it.dataset.words === "in " && left >= soon && days;
    if (ahead) it.textContent = days > 1 ? it.dataset.days.replace("#", days) : it.dataset.tomorrow;
    else it.textContent = it.dataset.words + minutes(left);
  }
};
const move = () => {
  steps = delays().reduce((known, [late, at]) => delayed(known, late, at), planned);
  for (const it of all("time")) it.textContent = clock(moved(+it.dataset.at), it.dataset.zone);
  document.getElementById("moved").replaceChildren(...told().map(line => {
    const it = document.createElement("p");
    it.textContent = line;
    return it;
  }));
  look();
};
// In the address a delay outlives the page being closed by the phone.
document.getElementById("later").addEventListener("click", () => {
  location.hash = [...delays(), [quarter, Date.now()]].map(([ms, at]) => `${ms / 6e4}@${at}`);
  move();
});
document.getElementById("planned").addEventListener("click", () => {
  location.hash = "";
  move();
});
document.getElementById("late").hidden = false;
move();
setInterval(look, 10000);
document.addEventListener("visibilitychange", look);
